import { words } from "../../src-shared/wordTable.ts";
import { usualTempo } from "../sound/silence.ts";
import type { Whereabouts } from "./whereabouts.ts";

/** What is said where the system stopped the sound by itself, and where it then went on. */
export const HELD_BACK: string = words.sound.stoppedPlay;
export const RECOVERED: string = words.sound.recovered;

export type PlayerState = "stopped" | "countingIn" | "playing" | "paused";

/** All of the player that a screen shows. */
type Shown = Whereabouts & {
  readonly state: PlayerState;
  readonly problem: string | null;
  readonly quartersPerMinute: number;
};

const nothingYet: Shown = {
  state: "stopped",
  bar: 0,
  beat: 0,
  placement: -1,
  problem: null,
  quartersPerMinute: usualTempo,
};

/**
 * The player's reactive side. Only these fields are reactive: the player itself looks at `is`, so
 * that an effect which tells the player something does not come to depend on where it is.
 */
export class PlayerShown {
  /** Called when what is played has been heard to its end. */
  onHeardOut: (() => void) | null = null;
  #shown = $state.raw(nothingYet);
  protected is: Shown = nothingYet;

  readonly state: PlayerState = $derived(this.#shown.state);
  /** 0-based; in the count-in the bar that comes. */
  readonly bar: number = $derived(this.#shown.bar);
  /** 0-based, of the meter; counts in the count-in too. */
  readonly beat: number = $derived(this.#shown.beat);
  /** Index of the placement that is held; in the count-in the one that comes. -1 is none. */
  readonly placement: number = $derived(this.#shown.placement);
  /** Why there is no sound, in words. */
  readonly problem: string | null = $derived(this.#shown.problem);
  readonly quartersPerMinute: number = $derived(this.#shown.quartersPerMinute);

  /** Rests where it has been heard to its end, and says so. */
  protected heardOut(rest: () => void): void {
    rest();
    this.onHeardOut?.();
  }

  /** Shows what changed; where nothing did, nobody need look again. */
  protected show(part: Partial<Shown>): void {
    const next = { ...this.is, ...part };
    const before = new Map<string, unknown>(Object.entries(this.is));
    if (Object.entries(next).some(([name, value]) => value !== before.get(name))) {
      this.is = next;
      this.#shown = next;
    }
  }
}
