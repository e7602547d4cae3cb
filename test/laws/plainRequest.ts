import { plainPicking } from "../../src-shared/roll/picking.ts";
import { handTable } from "../../src-shared/route/handTable.ts";
import type { PlanRequest } from "../../src-shared/route/problem.ts";
import { fret, milliseconds } from "../../src-shared/units.ts";
import { chordByTonal } from "./anyHeldSong.ts";

/** A plain request up to a fret: ease, all shapes, once through, an eighth of 150 ms. */
export const plainRequest = (highest: number): PlanRequest => ({
  aim: "ease",
  shapes: ["F", "D", "barre"],
  range: { low: fret(1), high: fret(highest) },
  strings: "3-2-1",
  goesRound: false,
  perChord: 1,
  hand: handTable.default,
  eighth: milliseconds(150),
  alike: false,
  pins: [],
  picking: plainPicking,
  patterns: [],
});

/** A major or minor triad by its letter name, with tonal's tones. */
export const chordNamed = (name: string): ReturnType<typeof chordByTonal> =>
  chordByTonal(name.replace("m", ""), name.endsWith("m") ? "m" : "");
