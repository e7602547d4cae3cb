import { AudioSample, AudioSampleSource, BufferTarget, Output, WavOutputFormat } from "mediabunny";
import { words } from "../../src-shared/wordTable.ts";
import { type Noise, noiseSource } from "./noise.ts";
import type { Onlooker } from "./onlooker.ts";

/** Bits of one sample. */
export type Bits = 16 | 24;

/** Sound as an audio buffer has it: one list of samples for each side. */
export type Planar = {
  readonly sampleRate: number;
  readonly channels: readonly Float32Array[];
};

/**
 * One step of a 16-bit sample. Noise of two dice of a step each makes rounding inaudible as
 * distortion (Lipshitz, Wannamaker and Vanderkooy, J. Audio Eng. Soc. 40(5), 1992); 24 bits need none.
 */
const STEP = 2 ** -15;

const interleaved = (
  { channels }: Planar,
  from: number,
  to: number,
  dither: Noise | null,
): Float32Array<ArrayBuffer> => {
  const count = channels.length;
  const out = new Float32Array((to - from) * count);
  channels.forEach((channel, side) => {
    for (let frame = from; frame < to; frame += 1) {
      const soft = dither ? ((dither() + dither()) * STEP) / 2 : 0;
      out[(frame - from) * count + side] = (channel[frame] ?? 0) + soft;
    }
  });
  return out;
};

/** The bytes of a WAV file. Between the seconds the signal's abort is heeded, and its reason thrown. */
export const writeWav = async (
  sound: Planar,
  bits: Bits,
  { progress, signal }: Onlooker,
): Promise<ArrayBuffer> => {
  const { sampleRate, channels } = sound;
  const length = channels[0]?.length ?? 0;
  const target = new BufferTarget();
  const output = new Output({ format: new WavOutputFormat(), target });
  const source = new AudioSampleSource({ codec: bits === 16 ? "pcm-s16" : "pcm-s24" });
  output.addAudioTrack(source);
  await output.start();
  const dither = bits === 16 ? noiseSource() : null;
  for (let from = 0; from < length; from += sampleRate) {
    if (signal?.aborted) {
      await output.cancel();
      throw signal.reason;
    }
    const sample = new AudioSample({
      data: interleaved(sound, from, Math.min(length, from + sampleRate), dither),
      format: "f32",
      numberOfChannels: channels.length,
      sampleRate,
      timestamp: from / sampleRate,
    });
    await source.add(sample);
    sample.close();
    progress(from / length);
  }
  await output.finalize();
  progress(1);
  if (!target.buffer) {
    throw new Error(words.wav.noFile);
  }
  return target.buffer;
};
