import type { BaseContext } from "tone";
import type { Midi } from "../../src-shared/units.ts";
import { midiToHz } from "./midiToHz.ts";
import { pluckedString, type Timbre } from "./pluckedString.ts";

/** More than the 35 pitches of a whole neck; about 20 MB of banjo. */
const MOST = 64;

/** The plucked notes of one instrument, each made once; the one not used for longest goes first. */
export class Recordings {
  readonly #context: BaseContext;
  readonly #timbre: Timbre;
  readonly #made = new Map<Midi, AudioBuffer>();

  constructor(context: BaseContext, timbre: Timbre) {
    this.#context = context;
    this.#timbre = timbre;
  }

  of(pitch: Midi): AudioBuffer {
    const buffer = this.#made.get(pitch) ?? this.#make(pitch);
    this.#made.delete(pitch);
    this.#made.set(pitch, buffer);
    return buffer;
  }

  prepare(pitches: Iterable<Midi>): void {
    for (const pitch of new Set(pitches)) {
      this.of(pitch);
    }
  }

  forget(): void {
    this.#made.clear();
  }

  #make(pitch: Midi): AudioBuffer {
    const [oldest] = this.#made.keys();
    if (oldest !== undefined && this.#made.size >= MOST) {
      this.#made.delete(oldest);
    }
    const { sampleRate } = this.#context;
    const sound = pluckedString(midiToHz(pitch), sampleRate, this.#timbre);
    const buffer = this.#context.createBuffer(1, sound.length, sampleRate);
    buffer.copyToChannel(sound, 0);
    return buffer;
  }
}
