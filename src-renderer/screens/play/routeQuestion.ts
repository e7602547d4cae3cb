import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import type { Picking } from "../../../src-shared/roll/picking.ts";
import type { Hand } from "../../../src-shared/route/movement.ts";
import type { Route } from "../../../src-shared/route/route.ts";
import type { PlanSettings } from "../../../src-shared/settings.ts";
import { holdsEverything } from "../../parts/sayPins.ts";

/** What other routes are looked for with. */
export type RouteQuestion = {
  readonly text: string;
  readonly plan: PlanSettings;
  readonly playTempo: number | null;
  readonly picking: Picking;
  readonly patterns: readonly Pattern[];
  /** The hand that the player has accepted as theirs, or null. */
  readonly ownHand: Hand | null;
};

/** What the search has found so far, the best first; `more` while it still looks. */
export type RouteFinds = { readonly routes: readonly Route[]; readonly more: boolean };

/** As many routes as stand side by side. */
export const MOST_ROUTES = 5;

/** The settings to look with: pins that hold the whole song would leave no choice, and are left out. */
export const planToSearch = (plan: PlanSettings, walk: Pick<Walk, "slots">): PlanSettings =>
  holdsEverything(plan.pins, walk.slots) ? { ...plan, pins: [] } : plan;
