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
  /** The score as it is to sound, from what is written; silent bars come on top. */
  readonly heard: Score;
  readonly silentBars: Practice["silentBars"];
  readonly #song: OpenSong;
  readonly #preferences: PreferencesState;

  constructor(song: OpenSong, preferences: PreferencesState) {
    this.#song = song;
    this.#preferences = preferences;
    this.feel = $derived(song.settings.feel);
    this.practice = $derived(song.settings.practice);
    this.silentBars = $derived(this.practice.silentBars);
    this.heard = $derived(this.heardIn(this.practice.mix));
  }

  /** The score as it would sound in another practice mix. */
  heardIn(mix: PracticeMix): Score {
    return perform(this.#song.walk.score, { feel: this.feel, practice: { mix } });
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
