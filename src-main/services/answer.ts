import type { Answer, Problem } from "../../src-shared/host.ts";

/** An answer that gives what was asked for. */
export const given = <T>(value: T): Answer<T> => ({ ok: true, value });

/** An answer that says why not. */
export const failed = (code: Problem["code"], says: string, tryThis: string): Answer<never> => ({
  ok: false,
  problem: { code, says, try: tryThis },
});
