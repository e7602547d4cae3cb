import type { ViewAction } from "../../../src-shared/control/actionTable.ts";
import type { NeckLook } from "../../../src-shared/neck/neckLook.ts";
import { zoomStep } from "../../geometry/laneGeometry.ts";
import { LaneLook } from "../../parts/laneLook.svelte.ts";
import { later } from "../../state/later.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";

/** How the player looks at the neck and the lanes. */
export class PlayView {
  readonly look: LaneLook = new LaneLook(later);
  readonly #preferences: PreferencesState;
  readonly #actions: Readonly<Record<ViewAction, () => void>>;

  /** `barTicks` says how long a bar of the song is. */
  constructor(preferences: PreferencesState, barTicks: () => number) {
    this.#preferences = preferences;
    this.#actions = {
      lookBack: () => this.look.by(-barTicks()),
      lookOn: () => this.look.by(barTicks()),
      backToNow: () => this.look.backToNow(),
      moreBars: () => this.zoomBy(-1),
      fewerBars: () => this.zoomBy(1),
      roots: () => this.lookAt({ roots: !this.neck.roots }),
      noteNames: () => this.lookAt({ noteNames: !this.neck.noteNames }),
    };
  }

  get neck(): NeckLook {
    return this.#preferences.value.neckLook;
  }

  get zoom(): number {
    return this.#preferences.value.laneZoom;
  }

  lookAt(part: Partial<NeckLook>): void {
    this.#preferences.change({ neckLook: { ...this.neck, ...part } });
  }

  /** More bars on the lanes (-1), or fewer (1). */
  zoomBy(by: -1 | 1): void {
    const laneZoom = zoomStep(this.zoom, by);
    if (laneZoom !== this.zoom) this.#preferences.change({ laneZoom });
  }

  /** Does what a key asks for. */
  act(action: ViewAction): void {
    this.#actions[action]();
  }
}
