import type { Answer } from "../../src-shared/host.ts";

/** The answer where the machine cannot be asked at all. */
export const unreachable = (tryThis: string): Answer<never> => ({
  ok: false,
  problem: { code: "unreachable", says: "Shortslide itself does not answer.", try: tryThis },
});
