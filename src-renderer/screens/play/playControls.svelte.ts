import type { Span } from "../../../src-shared/score/score.ts";
import type { Level, MixPart } from "../../../src-shared/settings.ts";
import { bpm, tick } from "../../../src-shared/units.ts";
import { type BarRange, barRange } from "../../geometry/barCells.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";
import type { WhyQuestion } from "./whyQuestion.ts";

/** Usual slowest and fastest practice tempo, beats a minute. */
export const TEMPO_RANGE: { readonly low: number; readonly high: number } = { low: 30, high: 240 };
const MOST_TEMPO = 320;
const TEMPO_STEP = 0.05;
/** Nearer than this two tempi differ by rounding alone. */
const SAME_TEMPO = 1e-6;

/** What the player can do on the Play screen, and what that comes to. */
export class PlayControls {
  /** The caution about loudness and strain is on the screen. */
  cautionOpen: boolean = $state(false);
  /** The placement of which the reasons are on the screen; null is none. */
  whyOf: number | null = $state(null);
  /** Other places are shown, while the music plays and while it does not. */
  #others = $state.raw({ playing: false, still: false });
  /** The other routes are on the screen. */
  routesOpen: boolean = $state(false);
  /** The keys and pedals are on the screen. */
  keysOpen: boolean = $state(false);
  /** The screen shows chord and shape alone, to be read from afar. */
  largeType: boolean = $state(false);
  readonly #song: OpenSong;
  readonly #player: Player;
  readonly #preferences: PreferencesState;

  constructor(song: OpenSong, player: Player, preferences: PreferencesState) {
    this.#song = song;
    this.#player = player;
    this.#preferences = preferences;
  }

  /** The tempo to play at. */
  get tempo(): number {
    return this.#song.settings.playTempo ?? this.#song.walk.song.tempo;
  }

  /** Slowest and fastest tempo that can be set here: the usual range, with room round the chart's own. */
  get tempoRange(): { readonly low: number; readonly high: number } {
    const own = this.#song.walk.song.tempo;
    return {
      low: Math.min(TEMPO_RANGE.low, own),
      high: Math.min(MOST_TEMPO, Math.max(TEMPO_RANGE.high, Math.round(own * 1.2))),
    };
  }

  /** The bars that are looped, as far as the song has them; null without a loop. */
  get loop(): BarRange | null {
    const { loop } = this.#song.settings;
    const last = this.#song.walk.timeline.bars.length - 1;
    if (!loop || loop.firstBar > last) return null;
    return { firstBar: loop.firstBar, lastBar: Math.min(last, loop.lastBar) };
  }

  /** What starts over at its end: the loop, or the whole song where it goes round. */
  get round(): Span | null {
    const { bars, length } = this.#song.walk.timeline;
    const { loop } = this;
    const first = loop && bars[loop.firstBar];
    const last = loop && bars[loop.lastBar];
    if (first && last) return { start: first.start, end: tick(last.start + last.length) };
    return this.#song.settings.plan.goesRound && length > 0
      ? { start: tick(0), end: length }
      : null;
  }

  /** Plays or pauses; before the first note ever the caution comes first. */
  async playPause(): Promise<void> {
    if (this.#song.walk.timeline.bars.length === 0) return;
    if (this.#preferences.value.cautionRead) await this.#player.playPause();
    else this.cautionOpen = true;
  }

  async cautionRead(): Promise<void> {
    this.cautionOpen = false;
    this.#preferences.change({ cautionRead: true });
    await this.#player.playPause();
  }

  goToBar(index: number): void {
    const bar = this.#song.walk.timeline.bars[index];
    if (bar) this.#player.seek(bar.start);
  }

  setTempo(tempo: number): void {
    const { low, high } = this.tempoRange;
    const within = Math.min(high, Math.max(low, Math.round(tempo)));
    const own = this.#song.walk.song.tempo;
    const asWritten = within === own || Math.abs(tempo - own) < SAME_TEMPO;
    this.#song.change({ playTempo: asWritten ? null : bpm(within) });
  }

  /** To the next multiple of 5 % of the chart's own tempo. */
  stepTempo(by: -1 | 1): void {
    const step = this.#song.walk.song.tempo * TEMPO_STEP;
    const at = this.tempo / step;
    const near = Math.abs(at - Math.round(at)) < 0.5 / step ? Math.round(at) : at;
    this.setTempo(step * (by > 0 ? Math.floor(near) + 1 : Math.ceil(near) - 1));
  }

  setLoop(loop: BarRange | null): void {
    this.#song.change({ loop });
  }

  /** Loops the bar that is played, or clears the loop. */
  loopHere(): void {
    const { bar } = this.#player;
    this.setLoop(this.loop ? null : barRange(bar, bar));
  }

  get #moves(): "playing" | "still" {
    const { state } = this.#player;
    return state === "playing" || state === "countingIn" ? "playing" : "still";
  }

  /** Other places of the chord are shown; playing starts without them. */
  get othersShown(): boolean {
    return this.#others[this.#moves];
  }

  toggleOthers(): void {
    this.#others = { ...this.#others, [this.#moves]: !this.othersShown };
  }

  /** Shows why the hand is where it is now, or puts that away. */
  toggleWhy(): void {
    const { placement } = this.#player;
    const placements = this.#song.walk.route?.placements ?? [];
    const shown = this.whyOf !== null && placements[this.whyOf] !== undefined;
    this.whyOf = !shown && placements[placement] ? placement : null;
  }

  /** What is to be weighed for the reasons on the screen; null without any. */
  get whyQuestion(): WhyQuestion | null {
    const { text, settings } = this.#song;
    const { plan, playTempo } = settings;
    return this.whyOf === null ? null : { text, plan, playTempo, placement: this.whyOf };
  }

  setLevel(part: MixPart, level: Level): void {
    const { mix } = this.#preferences.value;
    this.#preferences.change({ mix: { ...mix, [part]: level } });
  }

  /** Takes the banjo out of the band, or back in. */
  banjo(): void {
    const { banjo } = this.#preferences.value.mix;
    this.setLevel("banjo", { ...banjo, muted: !banjo.muted });
  }

  /** The next count-in of none, one or two bars. */
  nextCountIn(): void {
    const { countInBars } = this.#song.settings;
    this.#song.change({ countInBars: countInBars === 2 ? 0 : countInBars === 1 ? 2 : 1 });
  }
}
