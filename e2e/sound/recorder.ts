/** Frames in a block. */
const LENGTH = 128;

type Block = { readonly frame: number; readonly samples: Float32Array };

/** Sound, and the audio time of its first sample. */
export type Recording = { readonly start: number; readonly samples: Float32Array };

/** Writes down, sample by sample, what goes through a node, whatever the main thread does. */
export class Recorder {
  readonly node: AudioWorkletNode;
  readonly #context: AudioContext;
  readonly #blocks: Block[] = [];

  private constructor(context: AudioContext) {
    this.#context = context;
    this.node = new AudioWorkletNode(context, "recorder", {
      channelCount: 1,
      channelCountMode: "explicit",
    });
    this.node.port.onmessage = ({ data }: MessageEvent<Block>): void => {
      this.#blocks.push(data);
    };
  }

  static async on(context: AudioContext): Promise<Recorder> {
    await context.audioWorklet.addModule(new URL("recorderProcessor.js", import.meta.url).href);
    return new Recorder(context);
  }

  /**
   * All so far, each block where it was sounded, and silence where there was none, as before the
   * first notes. On a busy machine Chromium numbers some blocks a little too low, for a while; those
   * follow the block before.
   */
  take(): Recording {
    const first = this.#blocks[0]?.frame ?? 0;
    let ahead = 0;
    const places = this.#blocks.map(({ frame }, index) => {
      ahead = Math.max(ahead, frame - first - index * LENGTH);
      return ahead + index * LENGTH;
    });
    const samples = new Float32Array((places.at(-1) ?? 0) + LENGTH);
    this.#blocks.forEach((block, index) => {
      samples.set(block.samples, places[index] ?? 0);
    });
    return { start: first / this.#context.sampleRate, samples };
  }
}
