import type { Score } from "../../src-shared/score/score.ts";
import { type Bpm, bpm, tick } from "../../src-shared/units.ts";

/** The score before there is one. */
export const silence: Score = {
  meter: { beats: 4, unit: 4 },
  length: tick(0),
  bars: [],
  notes: [],
  hits: [],
};

/** The tempo before one is set. */
export const usualTempo: Bpm = bpm(100);
