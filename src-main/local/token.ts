import { createHash, randomBytes, timingSafeEqual } from "node:crypto";

/** A new secret of 256 bits, in letters that an address may hold. */
export const makeToken = (): string => randomBytes(32).toString("base64url");

const digest = (text: string): Uint8Array => createHash("sha256").update(text).digest();

/** Whether an Authorization header bears the token; takes as long whatever it says. */
export const bearsToken = (header: string | undefined, token: string): boolean =>
  timingSafeEqual(digest(header ?? ""), digest(`Bearer ${token}`));
