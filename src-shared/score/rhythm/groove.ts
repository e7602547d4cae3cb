import type { TimedBar } from "../../chart/song.ts";
import { TICKS_PER_EIGHTH, TICKS_PER_QUARTER, type Tick, tick } from "../../units.ts";

/** Where in a bar the rhythm section plays, in ticks from the bar line, each list in order. */
export type Groove = {
  readonly bass: readonly Tick[];
  readonly chop: readonly Tick[];
  /** The light strokes back of the guitar. */
  readonly back: readonly Tick[];
  /** The notes of a bass run through the bar's end; the last two of them are a short walk-up. */
  readonly run: readonly Tick[];
  /** The chop of a bar that leads into a new section. */
  readonly fill: readonly Tick[];
};

const inEighths = (
  places: {
    readonly [Part in keyof Groove]: readonly number[];
  },
): Groove => {
  const ticks = (eighths: readonly number[]): readonly Tick[] =>
    eighths.map((eighth) => tick(eighth * TICKS_PER_EIGHTH));
  return {
    bass: ticks(places.bass),
    chop: ticks(places.chop),
    back: ticks(places.back),
    run: ticks(places.run),
    fill: ticks(places.fill),
  };
};

const four = inEighths({
  bass: [0, 4],
  chop: [2, 6],
  back: [3, 7],
  run: [2, 4, 6],
  fill: [2, 5, 6, 7],
});
const waltz = inEighths({ bass: [0], chop: [2, 4], back: [5], run: [2, 4], fill: [2, 4, 5] });
const two = inEighths({ bass: [0], chop: [2], back: [3], run: [0, 2], fill: [2, 3] });
const jig = inEighths({ bass: [0, 3], chop: [2, 5], back: [], run: [3, 4, 5], fill: [2, 4, 5] });
const slip = inEighths({
  bass: [0],
  chop: [3, 6],
  back: [5, 8],
  run: [3, 6],
  fill: [3, 6, 7, 8],
});

/** Any other bar: bass and chop in turn, a quarter each. */
const inTurn = (length: Tick): Groove => {
  const beats = Array.from({ length: Math.floor(length / TICKS_PER_QUARTER) }, (_, beat) => beat);
  return inEighths({
    bass: beats.filter((beat) => beat % 2 === 0).map((beat) => 2 * beat),
    chop: beats.filter((beat) => beat % 2 === 1).map((beat) => 2 * beat),
    back: [],
    run: beats.slice(-2).map((beat) => 2 * beat),
    fill: beats.filter((beat) => beat % 2 === 1).map((beat) => 2 * beat),
  });
};

/**
 * The groove of a bar. 4/4 and 2/2: bass on quarters 1 and 3, chop on 2 and 4. 3/4: bass on 1, chop
 * on 2 and 3. 2/4: bass on 1, chop on 2. 6/8: bass on eighths 1 and 4, chop on 3 and 6. 9/8, like
 * 3/4: bass on the first dotted quarter, chop on the others. Common practice, no published source.
 * @example grooveOf({ length: 1440 }, 8).bass // => [0, 720]
 */
export const grooveOf = (bar: Pick<TimedBar, "length">, unit: number): Groove => {
  if (unit === 8 && bar.length === 6 * TICKS_PER_EIGHTH) {
    return jig;
  }
  if (unit === 8 && bar.length === 9 * TICKS_PER_EIGHTH) {
    return slip;
  }
  switch (bar.length / TICKS_PER_QUARTER) {
    case 4:
      return four;
    case 3:
      return waltz;
    case 2:
      return two;
    default:
      return inTurn(bar.length);
  }
};
