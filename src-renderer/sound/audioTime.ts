import { type Seconds, seconds } from "../../src-shared/units.ts";

/** Where the sound is, in audio time. */
export type AudioTime = {
  /** What is being made; nothing can be scheduled before it. */
  now(): Seconds;
  /** What leaves the speaker at this moment: behind `now` by the output's latency. */
  heard(): Seconds;
};

/** How far the output's own account may be from the plain one before it is not believed. */
const BELIEVED = 0.1;

/**
 * The audio time of a live context. Its clock moves in jumps of a buffer; the output's time stamp,
 * carried on by the system's clock, moves evenly, and is used wherever it makes sense.
 */
export const audioTimeOf = (context: AudioContext): AudioTime => ({
  now: () => seconds(context.currentTime),
  heard: () => {
    const plain = Math.max(0, context.currentTime - (context.outputLatency || 0));
    const stamp = context.getOutputTimestamp();
    if (context.state !== "running" || !stamp.contextTime || !stamp.performanceTime) {
      return seconds(plain);
    }
    const even = stamp.contextTime + (performance.now() - stamp.performanceTime) / 1000;
    return seconds(Math.abs(even - plain) < BELIEVED ? even : plain);
  },
});
