import fc from "fast-check";
import { chartToScore, type Walk } from "../../src-shared/chartToScore.ts";
import { aims, handNames, wholeNeckPlan } from "../../src-shared/settings.ts";

const chord = fc
  .tuple(fc.constantFrom("C", "D", "Eb", "F#", "G", "A", "Bb"), fc.constantFrom("", "m", "7", "m7"))
  .map((parts) => parts.join(""));

const bar = fc.array(fc.oneof({ weight: 6, arbitrary: chord }, fc.constant("N.C.")), {
  minLength: 1,
  maxLength: 2,
});

/** A song of whole and half bars that has a route, in any meter, by any aim and hand. */
export const anyPlanned: fc.Arbitrary<Walk> = fc
  .record({
    time: fc.constantFrom("4/4", "3/4", "2/2", "2/4", "6/8", "9/8"),
    tempo: fc.integer({ min: 40, max: 160 }),
    bars: fc.array(bar, { minLength: 2, maxLength: 9 }),
    aim: fc.constantFrom(...aims),
    hand: fc.constantFrom(...handNames),
    perChord: fc.constantFrom(1 as const, 2 as const),
    goesRound: fc.boolean(),
  })
  .map(({ time, tempo, bars, ...plan }) => {
    const text = `Time: ${time}  Tempo: ${tempo}\n| ${bars.map((all) => all.join(" ")).join(" | ")} |`;
    return chartToScore(text, { ...wholeNeckPlan, ...plan }, null);
  })
  .filter((walk) => (walk.route?.placements.length ?? 0) > 1);
