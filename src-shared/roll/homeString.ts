import type { StringNumber } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { PatternPick, PatternStroke, VoicedString } from "./pattern.ts";

/** Which of a voicing's own strings is meant: where there are only three, the lowest is the third. */
const ownString = (on: 1 | 2 | 3 | 4, { frets }: Voicing): StringNumber => {
  const [first, , , fourth] = frets;
  if (first !== null && fourth !== null) {
    return on;
  }
  const ofThree = on === 4 ? 3 : on;
  return first === null ? ((ofThree + 1) as StringNumber) : ofThree;
};

/**
 * The string that a pattern means in a voicing. Patterns are written for strings 3-2-1 and, where
 * there are four, 4; on 4-3-2 each finger lies one string lower. Common practice, no published
 * source.
 */
export const homeString = (on: VoicedString, voicing: Voicing): StringNumber =>
  on === "fifth" ? 5 : ownString(on, voicing);

/** A pick, and the string that it strikes. */
export type Struck = { readonly pick: PatternPick; readonly string: StringNumber };

/**
 * What a stroke strikes in a voicing, each string once: where a pick falls from the fourth string to
 * the third of a voicing that has only three, and another is there already, the other stands.
 */
export const struckBy = (stroke: PatternStroke, voicing: Voicing): readonly Struck[] => {
  const { picks } = stroke;
  const striking = new Map<StringNumber, PatternPick>();
  const fallenLast = [...picks.filter(({ on }) => on !== 4), ...picks.filter(({ on }) => on === 4)];
  for (const pick of fallenLast) {
    const string = homeString(pick.on, voicing);
    striking.set(string, striking.get(string) ?? pick);
  }
  return picks
    .map((pick) => ({ pick, string: homeString(pick.on, voicing) }))
    .filter(({ pick, string }) => striking.get(string) === pick);
};
