import {
  practiceRange,
  steppedTempo,
  type TempoRange,
} from "../../../src-shared/score/practiceTempo.ts";
import { quartersPerMinute } from "../../../src-shared/score/tempo.ts";
import { bpm } from "../../../src-shared/units.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";

/** Nearer than this two tempi differ by rounding alone. */
const SAME_TEMPO = 1e-6;

/** The tempo to play at: in beats of the song's meter a minute, shown in these or in quarters. */
export class TempoControls {
  readonly #song: OpenSong;
  readonly #preferences: PreferencesState;

  constructor(song: OpenSong, preferences: PreferencesState) {
    this.#song = song;
    this.#preferences = preferences;
  }

  get now(): number {
    return this.#song.settings.playTempo ?? this.#song.walk.song.tempo;
  }

  /** Slowest and fastest tempo that can be set here. */
  get range(): TempoRange {
    const { meter, tempo } = this.#song.walk.song;
    return practiceRange(meter, tempo);
  }

  get inQuarters(): boolean {
    return this.#preferences.value.tempoIn === "quarters";
  }

  /** A tempo in what is shown. */
  shown(tempo: number): number {
    return tempo * this.#perBeat;
  }

  setShown(tempo: number): void {
    this.set(tempo / this.#perBeat);
  }

  /** To the nearest whole number of what is shown. */
  set(tempo: number): void {
    const { low, high } = this.range;
    const own = this.#song.walk.song.tempo;
    const whole = Math.round(this.shown(tempo)) / this.#perBeat;
    const within = Math.min(high, Math.max(low, whole));
    const asWritten = within === own || Math.abs(tempo - own) < SAME_TEMPO;
    this.#song.change({ playTempo: asWritten ? null : bpm(within) });
  }

  /** To the next multiple of 5 % of the chart's own tempo. */
  step(by: -1 | 1): void {
    this.set(steppedTempo(this.now, this.#song.walk.song.tempo, by));
  }

  toggleUnit(): void {
    this.#preferences.change({ tempoIn: this.inQuarters ? "beats" : "quarters" });
  }

  get #perBeat(): number {
    return this.inQuarters ? quartersPerMinute(this.#song.walk.song.meter, bpm(1)) : 1;
  }
}
