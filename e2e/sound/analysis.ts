import { YIN } from "pitchfinder";

/** Sound with the time of its first sample. */
export type Sound = {
  readonly start: number;
  readonly sampleRate: number;
  readonly samples: Float32Array;
};

/** How long before an onset it must have been quieter, and how long after it is listened to. */
const BEFORE = 0.012;
const AFTER = 0.003;
/** How many times the energy must rise. */
const RISE = 3;
/** No two onsets are nearer. */
const APART = 0.04;

/** The loudest of a stretch of one signal, and its energy by running sum. */
const energies = (signal: Float32Array): Float64Array => {
  const sums = new Float64Array(signal.length + 1);
  signal.forEach((x, index) => {
    sums[index + 1] = (sums[index] ?? 0) + x * x;
  });
  return sums;
};

/**
 * Times at which a plucked sound sets in: where the energy of the second difference (which hears the
 * pick and hardly the ringing string) in 3 ms is three times that of any 3 ms of the 12 ms before.
 */
export const onsetsOf = ({ start, sampleRate, samples }: Sound): readonly number[] => {
  const edges = samples.map(
    (x, index) => x - 2 * (samples[index - 1] ?? 0) + (samples[index - 2] ?? 0),
  );
  const sums = energies(edges);
  const window = Math.round(AFTER * sampleRate);
  const history = Math.round(BEFORE * sampleRate);
  const hop = Math.round(sampleRate / 4000);
  const energy = (from: number): number =>
    (sums[Math.min(edges.length, from + window)] ?? 0) - (sums[Math.max(0, from)] ?? 0);
  const floor = 1e-7 * window;
  const onsets: number[] = [];
  for (let at = 0; at + window < edges.length; at += hop) {
    let before = floor;
    for (let back = at - window; back >= at - history; back -= hop) {
      before = Math.max(before, energy(Math.max(0, back)));
    }
    const last = onsets.at(-1) ?? Number.NEGATIVE_INFINITY;
    if (energy(at) > RISE * before && start + at / sampleRate > last + APART) {
      const quiet = edges.subarray(Math.max(0, at - history), at);
      const loudest = quiet.reduce(
        (most, x) => Math.max(most, Math.abs(x)),
        Math.sqrt(floor / window),
      );
      const first = edges.subarray(at, at + window).findIndex((x) => Math.abs(x) > 1.5 * loudest);
      onsets.push(start + (at + Math.max(0, first)) / sampleRate);
    }
  }
  return onsets;
};

/**
 * The pitch of a stretch of sound in MIDI numbers, by YIN; NaN where it hears none. The stretch is
 * made loud first: pitchfinder's YIN adds 1 to a running sum of squares, and so mishears soft sound.
 */
export const pitchAt = (sound: Sound, time: number, length: number): number => {
  const from = Math.round((time - sound.start) * sound.sampleRate);
  const piece = sound.samples.slice(from, from + Math.round(length * sound.sampleRate));
  const peak = piece.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const loud = piece.map((x) => (1000 * x) / peak);
  const hz = YIN({ sampleRate: sound.sampleRate, threshold: 0.1 })(loud);
  return hz === null || hz < 0 ? Number.NaN : 69 + 12 * Math.log2(hz / 440);
};

const stretch = (sound: Sound, from: number, to: number): Float32Array =>
  sound.samples.subarray(
    Math.max(0, Math.round((from - sound.start) * sound.sampleRate)),
    Math.max(0, Math.round((to - sound.start) * sound.sampleRate)),
  );

/** The largest sample of a stretch, without sign. */
export const peakOf = (sound: Sound, from: number, to: number): number =>
  stretch(sound, from, to).reduce((most, x) => Math.max(most, Math.abs(x)), 0);

/** Root mean square of a stretch, in decibels below full scale. */
export const levelOf = (sound: Sound, from: number, to: number): number => {
  const piece = stretch(sound, from, to);
  return 10 * Math.log10(piece.reduce((sum, x) => sum + x * x, 0) / piece.length);
};

/** Level of the second difference of a stretch, in decibels: the high end of what is heard. */
export const edgeOf = (sound: Sound, from: number, to: number): number => {
  const { samples } = sound;
  const edges = samples.map(
    (x, index) => x - 2 * (samples[index - 1] ?? 0) + (samples[index - 2] ?? 0),
  );
  return levelOf({ ...sound, samples: edges }, from, to);
};

/** Power at one frequency in a stretch, seen through a raised cosine. */
export const powerAt = (sound: Sound, from: number, to: number, hz: number): number => {
  const piece = stretch(sound, from, to);
  let [real, imaginary] = [0, 0];
  piece.forEach((x, index) => {
    const seen = x * (0.5 - 0.5 * Math.cos((2 * Math.PI * index) / piece.length));
    const phase = (2 * Math.PI * hz * index) / sound.sampleRate;
    real += seen * Math.cos(phase);
    imaginary += seen * Math.sin(phase);
  });
  return (real ** 2 + imaginary ** 2) / piece.length ** 2;
};
