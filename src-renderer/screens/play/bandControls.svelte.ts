import {
  type Feel,
  type Practice,
  type PracticeMix,
  practiceMixes,
} from "../../../src-shared/score/band.ts";
import { perform } from "../../../src-shared/score/perform.ts";
import type { Score } from "../../../src-shared/score/score.ts";
import type { Level, MixPart } from "../../../src-shared/settings.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";

/** Who plays, how, and what of it is heard. */
export class BandControls {
  readonly feel: Feel;
  readonly practice: Practice;
  /** The score as it is to sound, from what is written. */
  readonly heard: Score;
  readonly #song: OpenSong;
  readonly #preferences: PreferencesState;
  readonly #countedFrom: number;

  /** `firstBar` says where silent bars are counted from: the loop's first bar, 0-based. */
  constructor(song: OpenSong, preferences: PreferencesState, firstBar: () => number) {
    this.#song = song;
    this.#preferences = preferences;
    this.feel = $derived(song.settings.feel);
    this.practice = $derived(song.settings.practice);
    this.#countedFrom = $derived(this.practice.silentBars ? firstBar() : 0);
    this.heard = $derived(this.heardIn(this.practice.mix));
  }

  /** The score as it would sound in another practice mix. */
  heardIn(mix: PracticeMix): Score {
    const practice = { ...this.practice, mix };
    return perform(this.#song.walk.score, { feel: this.feel, practice }, this.#countedFrom);
  }

  /** The score as a practice mix sounds it, without silent bars; null is as it is heard now. */
  scoreFor(mix: PracticeMix | null): Score {
    const practice = { mix: mix ?? "all", silentBars: null };
    return mix === null
      ? this.heard
      : perform(this.#song.walk.score, { feel: this.feel, practice });
  }

  setFeel(part: Partial<Feel>): void {
    this.#song.change({ feel: { ...this.feel, ...part } });
  }

  setPractice(part: Partial<Practice>): void {
    this.#song.change({ practice: { ...this.practice, ...part } });
  }

  setMix(mix: PracticeMix): void {
    this.setPractice({ mix });
  }

  /** To the mix after this one, and from the last back to the first. */
  nextMix(): void {
    const at = practiceMixes.indexOf(this.practice.mix);
    this.setMix(practiceMixes[(at + 1) % practiceMixes.length] ?? "all");
  }

  /** Takes the banjo out of the band; from any other mix than all, everyone comes back. */
  toggleBanjo(): void {
    this.setMix(this.practice.mix === "all" ? "without-banjo" : "all");
  }

  setLevel(part: MixPart, level: Level): void {
    const { mix } = this.#preferences.value;
    this.#preferences.change({ mix: { ...mix, [part]: level } });
  }
}
