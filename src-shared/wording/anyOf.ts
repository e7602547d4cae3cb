/**
 * Words to choose from: "1", "1 or 2", "1, 2 or 3"; "" for none.
 * @example anyOf(["F shape", "D shape", "barre"]) // => "F shape, D shape or barre"
 */
export const anyOf = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
