import { words } from "../wordTable.ts";

/**
 * Words to choose from: "1", "1 or 2", "1, 2 or 3"; "" for none.
 * @example anyOf(["F shape", "D shape", "barre"]) // => "F shape, D shape or barre"
 */
export const anyOf = (choices: readonly string[]): string =>
  choices.length < 2
    ? choices.join("")
    : words.say.or(choices.slice(0, -1).join(", "), choices.at(-1) ?? "");
