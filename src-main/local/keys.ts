import { bearsToken, makeToken } from "./token.ts";

/** How long the address that is given to the browser can be used. */
export const LAUNCH_MS = 120_000;

/** What comes of a launch code: a token for the tab, or why there is none. */
export type Redeemed =
  | { readonly kind: "token"; readonly token: string }
  | { readonly kind: "unknown" | "expired" | "used" };

type Launch = { readonly untilMs: number; token: string | null };

/**
 * The secrets of one start. The printed address bears the first token, and only the terminal shows it.
 * The address that is given to the browser stands on a command line, which every user of the machine
 * can read: it bears a code that is exchanged once for a token of the tab's own. A code that comes
 * a second time was seen by someone else, so the token it gave is taken back: as the OAuth 2.0
 * framework does with its authorization codes (RFC 6749, section 4.1.2).
 */
export type Keys = {
  readonly token: string;
  readonly makeCode: () => string;
  readonly redeem: (code: string) => Redeemed;
  /** Whether an Authorization header bears a token that is good now. */
  readonly open: (header: string | undefined) => boolean;
};

/** New secrets. */
export const makeKeys = (nowMs: () => number = Date.now): Keys => {
  const token = makeToken();
  const tokens = new Set([token]);
  const launches = new Map<string, Launch>();
  return {
    token,
    makeCode: () => {
      const code = makeToken();
      launches.set(code, { untilMs: nowMs() + LAUNCH_MS, token: null });
      return code;
    },
    redeem: (code) => {
      // A map compares by equality, not in constant time: the codes have 256 bits and one use.
      const launch = launches.get(code);
      if (launch === undefined) {
        return { kind: "unknown" };
      }
      if (launch.token !== null) {
        tokens.delete(launch.token);
        return { kind: "used" };
      }
      if (nowMs() > launch.untilMs) {
        return { kind: "expired" };
      }
      launch.token = makeToken();
      tokens.add(launch.token);
      return { kind: "token", token: launch.token };
    },
    open: (header) => [...tokens].map((one) => bearsToken(header, one)).includes(true),
  };
};
