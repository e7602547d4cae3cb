import type { ActionName } from "../../../src-shared/control/actionTable.ts";
import type { DegreeChord } from "../../../src-shared/harmony/degree.ts";
import type { Calls } from "../../../src-shared/jam/call.ts";
import { practiceRange } from "../../../src-shared/score/practiceTempo.ts";
import { bpm, tick } from "../../../src-shared/units.ts";
import { CautionFirst } from "../../state/cautionFirst.svelte.ts";
import type { Jam } from "../../state/jam.svelte.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";

const TEMPO_STEP = 5;

/** What the player can do while calling the changes. */
export class JamControls {
  readonly caution: CautionFirst;
  keysOpen: boolean = $state(false);
  largeType: boolean = $state(false);
  readonly #jam: Jam;
  readonly #player: Player;
  readonly #preferences: PreferencesState;

  constructor(jam: Jam, player: Player, preferences: PreferencesState) {
    this.#jam = jam;
    this.#player = player;
    this.#preferences = preferences;
    this.caution = new CautionFirst(preferences);
  }

  get playing(): boolean {
    const { state } = this.#player;
    return state === "playing" || state === "countingIn";
  }

  /** The 0-based bar from which on the next call holds: the next, or the first before it is played. */
  get nextBar(): number {
    const { state, bar } = this.#player;
    return this.#jam.begun && state !== "countingIn" ? bar + 1 : bar;
  }

  async playPause(): Promise<void> {
    await this.caution.before(() => this.#player.playPause());
  }

  call(call: DegreeChord): void {
    this.#jam.call(call, this.nextBar);
  }

  callNothing(): void {
    this.#jam.call(null, this.nextBar);
  }

  flatten(): void {
    this.#jam.flatten(this.nextBar);
  }

  stepTempo(by: -1 | 1): void {
    const steps = this.#jam.setting.tempo / TEMPO_STEP;
    const next = TEMPO_STEP * (by > 0 ? Math.floor(steps) + 1 : Math.ceil(steps) - 1);
    const { meter, tempo: now } = this.#jam.setting;
    const { low, high } = practiceRange(meter, now);
    const tempo = Math.min(high, Math.max(low, next));
    this.#jam.change({ tempo: bpm(tempo) });
  }

  nextCountIn(): void {
    const { countInBars } = this.#jam;
    this.#jam.countInBars = countInBars === 2 ? 0 : countInBars === 1 ? 2 : 1;
  }

  banjo(): void {
    const { mix } = this.#preferences.value;
    const banjo = { ...mix.banjo, muted: !mix.banjo.muted };
    this.#preferences.change({ mix: { ...mix, banjo } });
  }

  /** Clears what was called, and says what that was. */
  startOver(): Calls {
    this.#player.stop();
    this.#player.seek(tick(0));
    return this.#jam.startOver();
  }

  /** Does what a key, a pedal or a switch asks for; what a song is needed for does nothing. */
  async act(action: ActionName, shifted: boolean): Promise<void> {
    const figure = /^call([1-7])$/.exec(action)?.[1];
    if (figure !== undefined) this.#jam.callDegree(Number(figure), shifted, this.nextBar);
    switch (action) {
      case "playPause":
        return this.playPause();
      case "stop":
        if (this.playing) await this.#player.playPause();
        return;
      case "slower":
        return this.stepTempo(-1);
      case "faster":
        return this.stepTempo(1);
      case "countIn":
        return this.nextCountIn();
      case "banjo":
        return this.banjo();
      case "flat":
        return this.flatten();
      case "noChord":
        return this.callNothing();
      case "takeBack":
        return this.#jam.takeBack();
      case "largeType":
        this.largeType = !this.largeType;
        return;
      case "announce":
        return this.#preferences.change({ announce: !this.#preferences.value.announce });
      case "keys":
        this.keysOpen = true;
        return;
      default:
        return;
    }
  }
}
