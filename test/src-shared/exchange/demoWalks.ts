import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import { demoSongTable } from "../../../src-shared/demo/demoSongTable.ts";
import { type PlanSettings, wholeNeckPlan } from "../../../src-shared/settings.ts";

/** Settings that differ in all that a file shows: capo and key, strings, shapes, two places a chord. */
export const manyPlans: readonly (readonly [string, PlanSettings])[] = [
  ["as written", wholeNeckPlan],
  ["in E flat, climbing", { ...wholeNeckPlan, playKey: "Eb", aim: "climb" }],
  [
    "four strings, two places a chord",
    { ...wholeNeckPlan, strings: "4-3-2-1", perChord: 2, playKey: "F#" },
  ],
  ["without a route", { ...wholeNeckPlan, fretLow: 22, shapes: ["D"] }],
];

/** Every demo song under every plan, with a name for the test. */
export const demoWalks: readonly (readonly [string, Walk])[] = demoSongTable.flatMap(
  ({ id, text }) =>
    manyPlans.map(
      ([plan, settings]) => [`${id}, ${plan}`, chartToScore(text, settings, null)] as const,
    ),
);
