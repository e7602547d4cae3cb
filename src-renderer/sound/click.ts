import type { Hit } from "../../src-shared/score/score.ts";
import { seconds } from "../../src-shared/units.ts";
import type { Samples } from "./recordings.ts";
import type { Made } from "./sounder.ts";

const ACCENT_HZ = 1760;
const BEAT_HZ = 1175;
const LENGTH = 0.08;
/** Time constant of its decay, in seconds. */
const DECAY = 0.012;
const PEAK = 0.7;

const click = (hz: number, sampleRate: number): Samples =>
  Float32Array.from({ length: Math.round(LENGTH * sampleRate) }, (_, index) => {
    const time = (index + 1) / sampleRate;
    return PEAK * Math.sin(2 * Math.PI * hz * time) * Math.exp(-time / DECAY);
  });

/** A soft tick, higher on the first beat of a bar. */
export const clickStroke = (hit: Hit): Made => {
  const hz = hit.accent ? ACCENT_HZ : BEAT_HZ;
  const recording = { name: `${hz}`, make: (sampleRate: number) => click(hz, sampleRate) };
  return { line: 0, sounds: [{ recording, after: seconds(0), level: hit.level, soft: false }] };
};
