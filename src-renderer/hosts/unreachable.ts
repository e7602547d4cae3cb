import type { Answer } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";

/** The answer where the machine cannot be asked at all. */
export const unreachable = (tryThis: string): Answer<never> => ({
  ok: false,
  problem: { code: "unreachable", says: words.host.noAnswer, try: tryThis },
});
