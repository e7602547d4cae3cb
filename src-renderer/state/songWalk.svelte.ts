import { banjoWalk, type Walk, withFeel } from "../../src-shared/chartToScore.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import type { Picking } from "../../src-shared/roll/picking.ts";
import type { Hand } from "../../src-shared/route/movement.ts";
import type { PlanSettings, SongSettings } from "../../src-shared/settings.ts";

/** What a song's walk hangs on. */
export type WalkSources = {
  readonly text: () => string;
  readonly settings: () => SongSettings;
  readonly patterns: () => readonly Pattern[];
  readonly ownHand: () => Hand | null;
};

/** A song's walk, worked out anew only where something that it hangs on has changed. */
export class SongWalk {
  readonly now: Walk;
  readonly #plan: PlanSettings;
  readonly #picking: Picking;
  readonly #playTempo: number | null;
  readonly #planned: Walk;
  readonly #dynamics: boolean;
  readonly #walkUps: boolean;
  readonly #fills: boolean;

  constructor({ text, settings, patterns, ownHand }: WalkSources) {
    // Apart from the settings, so that a new loop or count-in does not plan the route again.
    this.#plan = $derived(settings().plan);
    this.#playTempo = $derived(settings().playTempo);
    this.#picking = $derived(settings().picking);
    this.#planned = $derived(
      banjoWalk(text(), this.#plan, this.#playTempo, this.#picking, patterns(), ownHand()),
    );
    this.#dynamics = $derived(settings().feel.dynamics);
    this.#walkUps = $derived(settings().feel.walkUps);
    this.#fills = $derived(settings().feel.fills);
    this.now = $derived(
      withFeel(this.#planned, {
        dynamics: this.#dynamics,
        walkUps: this.#walkUps,
        fills: this.#fills,
      }),
    );
  }
}
