import type { Walk } from "../chartToScore.ts";
import type { PaperName } from "./paper.ts";

/** What can stand on a hand-out, in the order it stands there. */
export type HandOutPart = "notes" | "shapes" | "road" | "trouble" | "tablature" | "changes";

/**
 * How much of a song: `overview` all on one page where that can be, `full` with the tablature,
 * `practice` its hard changes with their drills.
 */
export type HandOutLayout = "overview" | "full" | "practice";

/** What a hand-out is to be like. */
export type HandOutOptions = {
  readonly paper: PaperName;
  readonly layout: HandOutLayout;
  /** Parts that are left off, of those that the layout has. */
  readonly without: readonly HandOutPart[];
};

/** A song to hand out. */
export type HandOutSong = {
  readonly walk: Walk;
  /** What the teacher says to it; "" is nothing. */
  readonly notes: string;
};

/** All layouts, the usual one first. */
export const handOutLayouts: readonly HandOutLayout[] = ["full", "overview", "practice"];

/** The parts that each layout has. */
export const partsOf: Readonly<Record<HandOutLayout, readonly HandOutPart[]>> = {
  full: ["notes", "shapes", "trouble", "tablature", "changes"],
  overview: ["notes", "shapes", "road", "trouble"],
  practice: ["notes", "trouble"],
};

/** A hand-out as it usually is, on this paper. */
export const usualHandOut = (paper: PaperName): HandOutOptions => ({
  paper,
  layout: "full",
  without: [],
});
