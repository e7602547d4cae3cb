import type { Tuning } from "../../src-shared/neck/neck.ts";
import type { Change } from "../../src-shared/practice/practice.ts";
import type { Trouble } from "../../src-shared/practice/troubleList.ts";
import { sayLeg } from "../../src-shared/wording/sayLeg.ts";
import { sayChange } from "../../src-shared/wording/sayPractice.ts";
import { words } from "../../src-shared/wordTable.ts";

/** A change of the trouble list, as it is shown. */
export type TroubleFact = {
  readonly change: Change;
  /** "G to C" */
  readonly chords: string;
  /** "Up 5 to the D shape" */
  readonly says: string;
  /** "needs 345 of 375 ms" */
  readonly needs: string;
  /** How much of the time it takes, 0 to 100. */
  readonly share: number;
  readonly tooFast: boolean;
  /** "long slide, notes let go"; "" where nothing is to be said. */
  readonly why: string;
  /** "bars 2, 4" */
  readonly where: string;
  /** "3 of 4 clean"; "" without marks. */
  readonly marks: string;
};

/** So many bars are named; of more the rest is counted. */
const MOST_BARS = 6;
const say = words.rehearsal;

const whereOf = ({ places }: Trouble): string => {
  const bars = places.map(({ bar }) => bar + 1);
  const more = bars.length - MOST_BARS;
  return more > 0 ? say.moreBars(bars.slice(0, MOST_BARS), more) : say.bars(bars);
};

/** A trouble list as it is shown, in its order. */
export const troubleFacts = (
  troubles: readonly Trouble[],
  tuning: Tuning,
): readonly TroubleFact[] =>
  troubles.map((trouble): TroubleFact => {
    const { change, hardest, load, marks, why } = trouble;
    const clean = marks.filter((mark) => mark === "clean").length;
    return {
      change,
      chords: sayChange(change),
      says: sayLeg(hardest.leg, hardest.to, tuning),
      needs: say.needs(hardest.leg.need, hardest.leg.window),
      share: Math.min(100, 100 * load),
      tooFast: hardest.leg.way === "too-fast",
      why: why.map((code) => say.why[code]).join(", "),
      where: whereOf(trouble),
      marks: marks.length > 0 ? say.marksSaid(clean, marks.length) : "",
    };
  });
