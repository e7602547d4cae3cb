/** Samples from -1 to 1. */
export type Samples = Float32Array<ArrayBuffer>;

/** A sound that can be made ready: two of the same name are the same. */
export type Recording = {
  readonly name: string;
  readonly make: (sampleRate: number) => Samples;
};

/** More than a song needs of one instrument; about 40 MB of banjo. */
const MOST = 128;

/** The sounds of one instrument, each made once; the one not used for longest goes first. */
export class Recordings {
  readonly #context: BaseAudioContext;
  readonly #made = new Map<string, AudioBuffer>();

  constructor(context: BaseAudioContext) {
    this.#context = context;
  }

  of(recording: Recording): AudioBuffer {
    const buffer = this.#made.get(recording.name) ?? this.#make(recording);
    this.#made.delete(recording.name);
    this.#made.set(recording.name, buffer);
    return buffer;
  }

  forget(): void {
    this.#made.clear();
  }

  #make({ make }: Recording): AudioBuffer {
    const [oldest] = this.#made.keys();
    if (oldest !== undefined && this.#made.size >= MOST) {
      this.#made.delete(oldest);
    }
    const { sampleRate } = this.#context;
    const samples = make(sampleRate);
    const buffer = this.#context.createBuffer(1, samples.length, sampleRate);
    buffer.copyToChannel(samples, 0);
    return buffer;
  }
}
