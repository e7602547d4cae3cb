/** What a score says about where playing goes on. Names tell several signs of a kind apart; "" is any. */
export type Jump =
  | { readonly kind: "segno" | "coda" | "toCoda"; readonly name: string }
  /** A coda's sign alone: where one leaves for it, or where it starts. */
  | { readonly kind: "codaSign" }
  | { readonly kind: "fine" }
  | {
      readonly kind: "back";
      /** Da capo, or dal segno. */
      readonly to: "start" | "segno";
      readonly name: string;
      /** Where the way back ends, as far as the words say it. */
      readonly until: "fine" | "coda" | null;
    };

/** A jump with its place among the pieces: `n` is the line before piece n. */
export type PlacedJump = {
  readonly jump: Jump;
  /** Where playing enters, if this is where it goes on. */
  readonly enters: number;
  /** Where playing leaves, if this is where it stops or goes away. */
  readonly leaves: number;
};

const LONGEST_WORDS = 60;

const untilIn = (words: string): "fine" | "coda" | null => {
  if (/\bfine\b/.test(words)) {
    return "fine";
  }
  return /\bcoda\b|[⊕𝄌]/u.test(words) ? "coda" : null;
};

/**
 * What words over a staff say of a jump: "D.C. al Fine", "To Coda", "Fine"; null where they say none.
 * @example jumpInWords("D.S. al Coda") // => { kind: "back", to: "segno", name: "", until: "coda" }
 */
export const jumpInWords = (text: string): Jump | null => {
  const words = text.trim().toLowerCase().replace(/\s+/g, " ");
  if (words.length > LONGEST_WORDS) {
    return null;
  }
  if (/^(?:d\. ?c\b|dc(?: al\b|$)|da ?capo\b)/.test(words)) {
    return { kind: "back", to: "start", name: "", until: untilIn(words) };
  }
  if (/^(?:d\. ?s\b|ds(?: al\b|$)|dal? ?segno\b)/.test(words)) {
    return { kind: "back", to: "segno", name: "", until: untilIn(words) };
  }
  if (/^(?:to|al|alla|da) ?(?:coda\b|[⊕𝄌])/u.test(words)) {
    return { kind: "toCoda", name: "" };
  }
  if (/^\(?fine\)?[.:]?$/.test(words)) {
    return { kind: "fine" };
  }
  if (/^segno$|^𝄋$/u.test(words)) {
    return { kind: "segno", name: "" };
  }
  return /^coda[.:]?$|^[⊕𝄌]$/u.test(words) ? { kind: "codaSign" } : null;
};
