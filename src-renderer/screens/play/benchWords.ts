import {
  MOST_FILE_CHARACTERS,
  type PatternFileReading,
  readPatternFile,
  type TakenIn,
} from "../../../src-shared/exchange/patternFile.ts";
import { eighthsOfMeter } from "../../../src-shared/roll/beats.ts";
import { rest } from "../../../src-shared/roll/editPattern.ts";
import { mended } from "../../../src-shared/roll/mend.ts";
import type { Pattern, PatternMeter } from "../../../src-shared/roll/pattern.ts";
import { styleNames } from "../../../src-shared/roll/picking.ts";
import { breachesOf } from "../../../src-shared/roll/rollRules.ts";
import { patternsOf } from "../../../src-shared/roll/rollTable.ts";
import { sayBreach, sayMend } from "../../../src-shared/wording/sayBreach.ts";
import { sayStyle } from "../../../src-shared/wording/sayPicking.ts";
import { words } from "../../../src-shared/wordTable.ts";

/** Patterns to start from, under one name. */
export type Starts = { readonly name: string; readonly patterns: readonly Pattern[] };

/** What a new pattern may start from in a meter: nothing, or any that is there already. */
export const startsIn = (meter: PatternMeter): readonly Starts[] => {
  const strokes = Array.from({ length: eighthsOfMeter[meter] }, () => rest);
  const empty: Pattern = { name: words.bench.empty, meter, strokes };
  return [
    { name: words.bench.nothing, patterns: [empty] },
    ...styleNames.map((style) => ({
      name: sayStyle(style).name,
      patterns: patternsOf(style, meter),
    })),
  ];
};

/** A new pattern's first name, after what it starts from. */
export const nameOfNew = ({ name, strokes }: Pattern): string =>
  strokes.every(({ picks }) => picks.length === 0)
    ? words.bench.firstName
    : `${name.charAt(0).toUpperCase()}${name.slice(1)}`;

/** A breach in words, with what mending it does. */
export type BreachWords = {
  readonly eighth: number;
  readonly says: string;
  readonly mend: string;
  readonly mended: Pattern;
};

/** The breaches of a pattern in words, in the order of its eighths. */
export const breachWords = (pattern: Pattern): readonly BreachWords[] =>
  breachesOf(pattern).flatMap((breach) => {
    const after = mended(pattern, breach);
    return after
      ? [
          {
            eighth: breach.eighth,
            says: sayBreach(breach, pattern),
            mend: sayMend(pattern, after),
            mended: after,
          },
        ]
      : [];
  });

/** Reads a file that the player chose or dropped. */
export const readFile = async (file: File): Promise<PatternFileReading> => {
  // What is too large need not be read whole to be refused.
  return readPatternFile(await file.slice(0, 4 * MOST_FILE_CHARACTERS).text());
};

/** What has come of an import. */
export const sayTakenIn = ({ patterns, renamed, known }: TakenIn, before: number): string => {
  const count = patterns.length - before;
  return [
    count === 0 ? words.bench.nothingNew : words.bench.imported(count),
    ...(known > 0 ? [words.bench.alreadyHad(known)] : []),
    ...renamed.map(({ from, to }) => words.bench.renamed(from, to)),
  ].join(" ");
};
