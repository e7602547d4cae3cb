import type { Song } from "../../src-shared/chart/song.ts";
import { writeChart } from "../../src-shared/chart/writeChart.ts";
import { chartToScore, type Walk } from "../../src-shared/chartToScore.ts";
import { keyName } from "../../src-shared/harmony/readKey.ts";
import {
  type Calls,
  callDegree,
  calledAt,
  flatten,
  takeBack,
  withCall,
} from "../../src-shared/jam/call.ts";
import { calledPins } from "../../src-shared/jam/calledPins.ts";
import { calledSong, type JamSetting } from "../../src-shared/jam/calledSong.ts";
import { neckFor } from "../../src-shared/neck/neckFor.ts";
import { tunings } from "../../src-shared/neck/tuningTable.ts";
import { plainPicking } from "../../src-shared/roll/picking.ts";
import type { Hand } from "../../src-shared/route/movement.ts";
import type { Pin } from "../../src-shared/route/pins.ts";
import { newSongSettings } from "../../src-shared/settings.ts";
import { bpm, fret } from "../../src-shared/units.ts";
import { words } from "../../src-shared/wordTable.ts";

/** Bars that are always there to be played ahead: a hidden page does not see the bars go by. */
const AHEAD = 32;
/** The score grows by so many bars at once, so that it is not made anew in every bar. */
const GROWS_BY = 16;

const usual: JamSetting = {
  key: { tonic: "G", mode: "major" },
  meter: { beats: 4, unit: 4 },
  tempo: bpm(100),
};

const { plan } = newSongSettings;
const neck = neckFor(tunings[0], fret(0));
const range = { low: fret(plan.fretLow), high: fret(plan.fretHigh) };

/** A jam without a chart: what has been called, and the score that grows from it. */
export class Jam {
  setting: JamSetting = $state.raw(usual);
  calls: Calls = $state.raw([]);
  countInBars: 0 | 1 | 2 = $state(1);
  #length: number = $state(AHEAD + GROWS_BY);
  #begun: boolean = $state(false);
  #left = 0;
  readonly #ownHand: () => Hand | null;
  /** The bar of the first call that is still of use to ear and eye; the bars before fall silent. */
  readonly #first: number = $derived(
    calledAt(this.calls, this.#length - AHEAD - 2 * GROWS_BY)?.bar ?? 0,
  );
  readonly #pins: readonly Pin[] = $derived(
    calledPins(this.calls, this.setting.key, neck, { ...plan, range, pins: [] }),
  );
  readonly #text: string = $derived.by(() => {
    const calls = this.calls.filter(({ bar }) => bar >= this.#first);
    return writeChart(calledSong(calls, this.setting, words.jam.songTitle, 0, this.#length));
  });
  /**
   * What the called bars come to, with the present chord going on after the last of them. However
   * long the jam, a call is planned as soon as in its first minutes: what was played long ago is
   * left out, from a call on, so that the roll of what sounds now goes on as it was.
   */
  readonly walk: Walk = $derived.by(() => {
    const pins = this.#pins.filter(({ bar }) => bar >= this.#first);
    const asked = { ...plan, goesRound: false, pins };
    const walk = chartToScore(this.#text, asked, null, plainPicking, [], this.#ownHand());
    // The pins are ours, not the player's.
    return { ...walk, request: { ...walk.request, pins: [] } };
  });

  /** `ownHand` is the hand that the player has accepted as theirs, or null; asked anew when it changes. */
  constructor(ownHand: () => Hand | null = () => null) {
    this.#ownHand = ownHand;
  }

  /** Nothing has been called yet. */
  get isNew(): boolean {
    return this.calls.length === 0;
  }

  change(part: Partial<JamSetting>): void {
    this.setting = { ...this.setting, ...part };
  }

  /** A song's key, metre and tempo, where nothing has been called yet. */
  agreeOn({ key, meter, tempo }: Song): void {
    if (this.isNew) this.setting = { key, meter, tempo };
  }

  /** The 0-based bar in which it was left, to go on from there. */
  get bar(): number {
    return this.#left;
  }

  /** Something has been played: a call now is for a later bar. */
  get begun(): boolean {
    return this.#begun;
  }

  leave(bar: number): void {
    this.#left = bar;
  }

  /** The music has come to a bar: there are always bars ahead of it. */
  reach(bar: number): void {
    this.#begun = true;
    const needed = Math.ceil((bar + AHEAD) / GROWS_BY) * GROWS_BY;
    if (needed > this.#length) this.#length = needed;
  }

  callDegree(number: number, minor: boolean, bar: number): void {
    this.calls = callDegree(this.calls, number, minor, bar);
  }

  /** A chord of the pad, whole. */
  call(call: Parameters<typeof withCall>[1], bar: number): void {
    this.calls = withCall(this.calls, call, bar);
  }

  flatten(bar: number): void {
    this.calls = flatten(this.calls, bar);
  }

  takeBack(): void {
    this.calls = takeBack(this.calls);
  }

  startOver(): Calls {
    const { calls } = this;
    this.calls = [];
    this.#begun = false;
    this.#left = 0;
    this.#length = AHEAD + GROWS_BY;
    return calls;
  }

  /**
   * What was called as a song, from the first call up to a bar (not included), the bar of the last
   * call at least; null before the first call.
   */
  toKeep(bar: number): { readonly title: string; readonly text: string } | null {
    const [first] = this.calls;
    const last = this.calls.at(-1);
    if (!first || !last) return null;
    const title = words.jam.keptTitle(keyName(this.setting.key));
    const end = Math.max(bar, last.bar + 1);
    return {
      title,
      text: writeChart(calledSong(this.calls, this.setting, title, first.bar, end)),
    };
  }
}
