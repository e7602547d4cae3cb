import type { Elsewhere } from "../../../src-shared/route/explain.ts";
import type { PlanSettings } from "../../../src-shared/settings.ts";

/** Which placement's other places are to be weighed. */
export type WhyQuestion = {
  readonly text: string;
  readonly plan: PlanSettings;
  readonly playTempo: number | null;
  readonly placement: number;
};

/** What the other places cost, the least costly first. */
export type WhyAnswer = readonly Elsewhere[];
