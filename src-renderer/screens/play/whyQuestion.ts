import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import type { Picking } from "../../../src-shared/roll/picking.ts";
import type { Elsewhere } from "../../../src-shared/route/explain.ts";
import type { Hand } from "../../../src-shared/route/movement.ts";
import type { PlanSettings } from "../../../src-shared/settings.ts";

/** Which placement's other places are to be weighed. */
export type WhyQuestion = {
  readonly text: string;
  readonly plan: PlanSettings;
  readonly playTempo: number | null;
  readonly picking: Picking;
  readonly patterns: readonly Pattern[];
  /** The hand that the player has accepted as theirs, or null. */
  readonly ownHand: Hand | null;
  readonly placement: number;
};

/** What the other places cost, the least costly first. */
export type WhyAnswer = readonly Elsewhere[];
