import type { BaseContext, Gain } from "tone";
import type { StringNumber } from "../../src-shared/neck/neck.ts";
import type { Note } from "../../src-shared/score/score.ts";
import type { Seconds } from "../../src-shared/units.ts";
import type { Instrument, Voice } from "./instrument.ts";
import { Recordings } from "./recordings.ts";
import { banjoTimbre } from "./timbreTable.ts";
import { Voices } from "./voices.ts";

/** A string that the left hand has already let go of answers the pick more quietly. From memory. */
const LET_GO_LEVEL = 0.6;

/** Five strings: picking one again damps what it sounded before. */
export class Banjo implements Instrument<Note> {
  readonly #voices: Voices;
  readonly #recordings: Recordings;
  readonly #ringing = new Map<StringNumber, Voice>();

  constructor(context: BaseContext, output: Gain) {
    this.#voices = new Voices(context, output);
    this.#recordings = new Recordings(context, banjoTimbre);
  }

  get voices(): number {
    return this.#voices.count;
  }

  prepare(notes: readonly Note[]): void {
    this.#recordings.prepare(notes.map((note) => note.midi));
  }

  strike(note: Note, time: Seconds): Voice {
    this.#ringing.get(note.string)?.stop(time);
    const attack = { level: note.letGo ? LET_GO_LEVEL : 1, soft: note.slideInto };
    const voice = this.#voices.play(this.#recordings.of(note.midi), time, attack);
    this.#ringing.set(note.string, voice);
    return voice;
  }

  silence(time: Seconds): void {
    this.#voices.silence(time);
    this.#ringing.clear();
  }

  dispose(): void {
    this.#voices.dispose();
    this.#recordings.forget();
    this.#ringing.clear();
  }
}
