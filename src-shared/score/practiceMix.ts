import { tick } from "../units.ts";
import type { PracticeMix } from "./band.ts";
import type { Hit, Score } from "./score.ts";
import { beatsPerBar, ticksPerBeat } from "./tempo.ts";

/** A click on every beat of every bar, the first of each bar accented. */
const clicksOf = (score: Score): readonly Hit[] => {
  const beat = ticksPerBeat(score.meter);
  return score.bars.flatMap((bar) =>
    Array.from({ length: beatsPerBar(score.meter) }, (_, index) => ({
      part: "click" as const,
      tick: tick(bar.start + index * beat),
      ticks: beat,
      pitches: [],
      accent: index === 0,
      level: 1,
    })),
  );
};

const inOrder = (hits: readonly Hit[]): readonly Hit[] =>
  hits.toSorted((one, other) => one.tick - other.tick);

/** The score with only those who play in a practice mix; a click on each beat comes in with it. */
export const inMix = (score: Score, mix: PracticeMix): Score => {
  switch (mix) {
    case "all":
      return score;
    case "without-banjo":
      return { ...score, notes: [] };
    case "bass-and-click": {
      const bass = score.hits.filter((hit) => hit.part === "bass");
      return { ...score, notes: [], hits: inOrder([...clicksOf(score), ...bass]) };
    }
    case "banjo-only":
      return { ...score, hits: [] };
  }
};
