/** Why a symbol could not be read, in words for the player. */
export type Refusal = {
  readonly ok: false;
  /** What is wrong, in one sentence. */
  readonly says: string;
  /** What to do about it, in one sentence. */
  readonly try: string;
};

/**
 * A refusal in words.
 * @example refuse("X is no chord.", "Write C.").try // => "Write C."
 */
export const refuse = (says: string, advice: string): Refusal => ({
  ok: false,
  says,
  try: advice,
});
