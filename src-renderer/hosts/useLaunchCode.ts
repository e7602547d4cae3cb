import * as v from "valibot";
import { KEPT_AS, type TokenPlaces } from "./takeToken.ts";

const FRAGMENT = /^#launch=([A-Za-z0-9_-]+)$/u;

const answerSchema = v.variant("ok", [
  v.object({ ok: v.literal(true), value: v.string() }),
  v.object({
    ok: v.literal(false),
    problem: v.object({ says: v.string(), try: v.string() }),
  }),
]);

/** Why a launch code was not taken, in words. */
export type NotLaunched = { readonly says: string; readonly advice: string };

/**
 * The address that the browser was opened with bears a code that is good once: it is exchanged for
 * the tab's own token, and taken out of the address. null where that went well or there is no code.
 */
export const useLaunchCode = async ({
  location,
  history,
  sessionStorage,
  fetch,
}: TokenPlaces & { readonly fetch: typeof globalThis.fetch }): Promise<NotLaunched | null> => {
  const code = FRAGMENT.exec(location.hash)?.[1];
  if (code === undefined) {
    return null;
  }
  history.replaceState(null, "", `${location.pathname}${location.search}`);
  const response = await fetch("/launch", {
    method: "POST",
    headers: { Authorization: `Launch ${code}` },
  });
  const answer = v.parse(answerSchema, await response.json());
  if (!answer.ok) {
    return { says: answer.problem.says, advice: answer.problem.try };
  }
  sessionStorage.setItem(KEPT_AS, answer.value);
  return null;
};
