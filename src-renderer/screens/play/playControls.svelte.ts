import type { Span } from "../../../src-shared/score/score.ts";
import { ticksPerBar } from "../../../src-shared/score/tempo.ts";
import { tick } from "../../../src-shared/units.ts";
import { type BarRange, barRange } from "../../geometry/barCells.ts";
import { CautionFirst } from "../../state/cautionFirst.svelte.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";
import { BandControls } from "./bandControls.svelte.ts";
import { PlayPanels } from "./playPanels.svelte.ts";
import { PlayView } from "./playView.ts";
import { TempoControls } from "./tempoControls.ts";
import type { WhyQuestion } from "./whyQuestion.ts";

/** What the player can do on the Play screen, and what that comes to. */
export class PlayControls {
  readonly caution: CautionFirst;
  /** The placement of which the reasons are on the screen; null is none. */
  whyOf: number | null = $state(null);
  /** Other places are shown, while the music plays and while it does not. */
  #others = $state.raw({ playing: false, still: false });
  /** The other routes are on the screen. */
  routesOpen: boolean = $state(false);
  readonly panels: PlayPanels = new PlayPanels();
  /** Who plays, and how. */
  readonly band: BandControls;
  readonly tempo: TempoControls;
  /** How the pictures are looked at. */
  readonly view: PlayView;
  /** The keys and pedals are on the screen. */
  keysOpen: boolean = $state(false);
  /** The screen shows chord and shape alone, to be read from afar. */
  largeType: boolean = $state(false);
  /** In a set list: whether the whole song goes round once more; null as the song itself says. */
  goesRound: boolean | null = $state(null);
  readonly #song: OpenSong;
  readonly #player: Player;

  constructor(song: OpenSong, player: Player, preferences: PreferencesState) {
    this.#song = song;
    this.#player = player;
    this.caution = new CautionFirst(preferences);
    this.tempo = new TempoControls(song, preferences);
    this.band = new BandControls(song, preferences);
    this.view = new PlayView(preferences, () => ticksPerBar(song.walk.timeline.meter));
  }

  /** The bars that are looped, as far as the song has them; null without a loop. */
  get loop(): BarRange | null {
    const { loop } = this.#song.settings;
    const last = this.#song.walk.timeline.bars.length - 1;
    if (!loop || loop.firstBar > last || this.goesRound !== null) return null;
    return { firstBar: loop.firstBar, lastBar: Math.min(last, loop.lastBar) };
  }

  /** What starts over at its end: the loop, or the whole song where it goes round. */
  get round(): Span | null {
    const { bars, length } = this.#song.walk.timeline;
    const { loop } = this;
    const first = loop && bars[loop.firstBar];
    const last = loop && bars[loop.lastBar];
    if (first && last) return { start: first.start, end: tick(last.start + last.length) };
    return (this.goesRound ?? this.#song.settings.plan.goesRound) && length > 0
      ? { start: tick(0), end: length }
      : null;
  }

  /** Plays or pauses; before the first note ever the caution comes first. */
  async playPause(): Promise<void> {
    if (this.#song.walk.timeline.bars.length === 0) return;
    await this.caution.before(() => this.#player.playPause());
  }

  goToBar(index: number): void {
    const bar = this.#song.walk.timeline.bars[index];
    this.view.look.backToNow();
    if (bar) this.#player.seek(bar.start);
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
    const { text, settings, patterns, ownHand } = this.#song;
    const { plan, playTempo, picking } = settings;
    const placement = this.whyOf;
    if (placement === null) return null;
    return { text, plan, playTempo, picking, patterns, ownHand, placement };
  }

  /** The next count-in of none, one or two bars. */
  nextCountIn(): void {
    const { countInBars } = this.#song.settings;
    this.#song.change({ countInBars: countInBars === 2 ? 0 : countInBars === 1 ? 2 : 1 });
  }
}
