import type { Seconds } from "../../src-shared/units.ts";
import { noiseSource } from "./noise.ts";

/** A resonance of the body: a peak added to the string's own sound. */
export type Resonance = {
  readonly hz: number;
  /** Centre over width; above 0. */
  readonly q: number;
  /** How loud beside the string; 0 is not at all. */
  readonly amount: number;
};

/** What makes one plucked instrument sound unlike another. */
export type Timbre = {
  /** How long the rendered sound is; its last hundredth of a second fades out. */
  readonly length: Seconds;
  /** Time in which the fundamental falls by 60 dB. */
  readonly ring: Seconds;
  /** Time in which what sounds at 5 kHz falls by 60 dB; shorter is darker. */
  readonly brightRing: Seconds;
  /** Where it is picked, as a share of the string from the bridge, 0 to 0.5. */
  readonly pickedAt: number;
  /** Width of the pick's pulse; narrower is brighter. */
  readonly pick: Seconds;
  /** Share of noise in the pick, 0 to 1; smooths the wave, roughens the attack. */
  readonly noise: number;
  readonly body: readonly Resonance[];
  readonly scrape: Scrape | null;
};

/** Unpitched noise of pick, finger or winding at the start. */
export type Scrape = {
  /** Its peak beside the string's own. */
  readonly amount: number;
  /** About where it lies. */
  readonly hz: number;
  /** In which it falls by 60 dB. */
  readonly lasts: Seconds;
};

/** Level of the loudest tenth of a second, so that every pitch is as loud as its neighbour. */
const LEVEL = 0.1;
const FADE = 0.01;
const BRIGHT_HZ = 5000;

const lossPerRound = (hz: number, ring: Seconds): number => 10 ** (-3 / (hz * ring));

type LoopFilter = { readonly pole: number; readonly gain: number };

/**
 * The one-pole low-pass of the loop, such that the fundamental and 5 kHz die away in their times.
 * With H = g (1-p)/(1-p/z), the ratio of the two losses gives a quadratic for p.
 */
const loopFilterFor = (hz: number, sampleRate: number, timbre: Timbre): LoopFilter => {
  const low = (2 * Math.PI * hz) / sampleRate;
  const high = (2 * Math.PI * BRIGHT_HZ) / sampleRate;
  const wanted = lossPerRound(hz, timbre.ring);
  const ratio = Math.min(lossPerRound(hz, timbre.brightRing) / wanted, 0.9999) ** 2;
  const b = (Math.cos(low) - ratio * Math.cos(high)) / (1 - ratio);
  const pole = b - Math.sqrt(Math.max(0, b * b - 1));
  const magnitude = (1 - pole) / Math.sqrt(1 - 2 * pole * Math.cos(low) + pole * pole);
  return { pole, gain: Math.min(0.99999, wanted / magnitude) };
};

/**
 * What the pick gives the string in its first period: a short pulse and, softer, noise all through
 * it; then the same again from the bridge, upside down, which takes out the harmonics that have a
 * node where it is picked.
 */
const pluck = (period: number, sampleRate: number, timbre: Timbre): Float32Array => {
  const width = Math.max(2, Math.round(timbre.pick * sampleRate));
  const length = Math.max(width, Math.round(period));
  const echo = Math.max(1, Math.round(timbre.pickedAt * period));
  const noise = noiseSource();
  const burst = new Float32Array(length + echo);
  for (let index = 0; index < length; index += 1) {
    const pulse = index < width ? Math.sin((Math.PI * (index + 1)) / (width + 1)) : 0;
    const value = (1 - timbre.noise) * pulse + timbre.noise * noise();
    burst[index] = (burst[index] ?? 0) + value;
    burst[index + echo] = (burst[index + echo] ?? 0) - value;
  }
  return burst;
};

/**
 * The vibrating string (Karplus and Strong, Computer Music Journal 7(2), 1983, tuned as Jaffe and
 * Smith do in the same issue): a delay of whole samples, and a first-order all-pass whose delay at
 * the fundamental makes up exactly what the low-pass and the whole samples leave of the period.
 */
const vibrate = (out: Float32Array, hz: number, sampleRate: number, timbre: Timbre): void => {
  const w = (2 * Math.PI * hz) / sampleRate;
  const { pole, gain } = loopFilterFor(hz, sampleRate, timbre);
  const filterDelay = Math.atan2(pole * Math.sin(w), 1 - pole * Math.cos(w)) / w;
  const rest = sampleRate / hz - filterDelay;
  const whole = Math.floor(rest - 0.1);
  const part = rest - whole;
  const allPass = Math.sin((w * (1 - part)) / 2) / Math.sin((w * (1 + part)) / 2);
  const burst = pluck(sampleRate / hz, sampleRate, timbre);
  let filtered = 0;
  let passedIn = 0;
  let passedOut = 0;
  for (let index = 0; index < out.length; index += 1) {
    const back = index >= whole ? (out[index - whole] ?? 0) : 0;
    filtered = gain * (1 - pole) * back + pole * filtered;
    passedOut = allPass * (filtered - passedOut) + passedIn;
    passedIn = filtered;
    out[index] = (burst[index] ?? 0) + passedOut;
  }
};

/** Adds one resonance, a band-pass of unit height, beside the string. */
const resonate = (
  string: Float32Array,
  out: Float32Array,
  sampleRate: number,
  { hz, q, amount }: Resonance,
): void => {
  const w = (2 * Math.PI * hz) / sampleRate;
  const alpha = Math.sin(w) / (2 * q);
  const scale = 1 / (1 + alpha);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let index = 0; index < string.length; index += 1) {
    const x = string[index] ?? 0;
    const y = scale * (alpha * (x - x2) + 2 * Math.cos(w) * y1 - (1 - alpha) * y2);
    [x2, x1, y2, y1] = [x1, x, y1, y];
    out[index] = (out[index] ?? 0) + amount * y;
  }
};

/** Noise through a resonance, dying away. */
const addScrape = (out: Float32Array, sampleRate: number, scrape: Scrape): void => {
  const noise = noiseSource();
  const raw = Float32Array.from(
    { length: Math.min(out.length, Math.ceil(scrape.lasts * sampleRate)) },
    (_, index) => noise() * 10 ** ((-3 * index) / (scrape.lasts * sampleRate)),
  );
  const peak = out.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const amount = scrape.amount * peak;
  resonate(raw, out, sampleRate, { hz: scrape.hz, q: 0.7, amount });
};

/** Root mean square of the loudest stretch of a tenth of a second, in steps of half of one. */
const loudest = (sound: Float32Array, sampleRate: number): number => {
  const size = Math.round(sampleRate / 10);
  let most = 0;
  for (let from = 0; from < sound.length; from += size / 2) {
    const square = sound.subarray(from, from + size).reduce((sum, x) => sum + x * x, 0);
    most = Math.max(most, Math.sqrt(square / size));
  }
  return most;
};

/**
 * One picked note, the same each time, with its first sample already sounding. `hz` may be anything
 * from about 20 Hz to an eighth of the sample rate; its pitch is exact at the fundamental.
 */
export const pluckedString = (
  hz: number,
  sampleRate: number,
  timbre: Timbre,
): Float32Array<ArrayBuffer> => {
  if (!(hz >= 20 && hz <= sampleRate / 8)) {
    throw new RangeError(`a string of ${hz} Hz is not between 20 Hz and ${sampleRate / 8} Hz`);
  }
  const string = new Float32Array(Math.round(timbre.length * sampleRate));
  vibrate(string, hz, sampleRate, timbre);
  const out = Float32Array.from(string);
  for (const resonance of timbre.body) {
    resonate(string, out, sampleRate, resonance);
  }
  if (timbre.scrape) {
    addScrape(out, sampleRate, timbre.scrape);
  }
  const scale = LEVEL / loudest(out, sampleRate);
  const fade = Math.round(FADE * sampleRate);
  return out.map((x, index) => x * scale * Math.min(1, (out.length - index) / fade));
};
