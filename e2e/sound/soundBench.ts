import {
  Context,
  getTransport,
  OfflineContext,
  PluckSynth,
  setContext,
  start,
  Midi as ToneMidi,
} from "tone";
import { makeEngine } from "../../src-renderer/sound/engine.ts";
import type { Onlooker } from "../../src-renderer/sound/onlooker.ts";
import { renderOffline } from "../../src-renderer/sound/renderOffline.ts";
import type { Score } from "../../src-shared/score/score.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { bpm, tick } from "../../src-shared/units.ts";
import { onsetsOf, pitchAt } from "./analysis.ts";
import { Recorder } from "./recorder.ts";

/** How the onsets of an even roll came out. */
export type Timing = {
  readonly written: number;
  readonly heard: number;
  /** More than a millisecond off. */
  readonly late: number;
  /** Places between the first and the last that is heard where there is none. */
  readonly holes: number;
  readonly p99Ms: number;
  readonly worstMs: number;
};

/** Who plays: the engine, or the library's own transport and pluck as its examples use them. */
type Who = "engine" | "plain";

const quiet: Onlooker = { progress: () => undefined, signal: null };
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

const only = (): Preferences["mix"] => {
  const level = { volume: 1, muted: true, solo: false, pan: 0 };
  return {
    banjo: { ...level, muted: false },
    bass: level,
    guitar: level,
    chop: level,
    click: level,
  };
};

const timingOf = (onsets: readonly number[], written: number, step: number): Timing => {
  const offsets = onsets.map((time, index) => time - index * step).toSorted((a, b) => a - b);
  // Few are late, so that most agree where the first one belongs.
  const begun = onsets[0] ?? 0;
  const grid = onsets.map((time) => Math.round((time - begun) / step));
  const base =
    onsets
      .map((time, index) => time - (grid[index] ?? 0) * step)
      .toSorted((a, b) => a - b)
      .at(Math.floor(offsets.length / 2)) ?? 0;
  const off = onsets.map((time, index) => Math.abs(time - base - (grid[index] ?? 0) * step));
  const sorted = off.toSorted((a, b) => a - b);
  return {
    written,
    heard: onsets.length,
    holes: 1 + (grid.at(-1) ?? 0) - new Set(grid).size,
    late: off.filter((each) => each > 0.001).length,
    p99Ms: 1000 * (sorted[Math.floor(sorted.length * 0.99)] ?? Number.NaN),
    worstMs: 1000 * (sorted.at(-1) ?? Number.NaN),
  };
};

/** Holds the main thread for 100 ms of every second. */
const labour = async (over: () => boolean): Promise<void> => {
  while (!over()) {
    await pause(900);
    const held = performance.now();
    while (performance.now() < held + 100) {
      // busy
    }
  }
};

const playEngine = async (
  native: AudioContext,
  output: AudioNode,
  score: Score,
  seconds: number,
  quarters: number,
): Promise<void> => {
  const engine = makeEngine(native, output);
  engine.setMix(only());
  engine.load(score, bpm(quarters / 2));
  engine.setLoop({ start: tick(0), end: score.length });
  await engine.wake();
  engine.play(tick(0), 0);
  await pause(1000 * seconds);
  engine.pause();
};

const playPlain = async (
  native: AudioContext,
  output: AudioNode,
  score: Score,
  seconds: number,
  quarters: number,
): Promise<void> => {
  setContext(new Context(native), true);
  await start();
  const synth = new PluckSynth();
  synth.connect(output);
  await pause(500);
  const transport = getTransport();
  transport.bpm.value = quarters;
  let next = 0;
  transport.scheduleRepeat((time) => {
    const note = score.notes[next % score.notes.length];
    next += 1;
    synth.triggerAttack(ToneMidi(note?.midi ?? 60).toFrequency(), time);
  }, "8n");
  transport.start("+0.1");
  await pause(1000 * seconds);
  transport.stop();
  transport.cancel();
};

const playing = { engine: playEngine, plain: playPlain };

const offlinePlain = async (
  score: Score,
  step: number,
  sampleRate: number,
): Promise<Float32Array> => {
  const context = new OfflineContext(2, score.notes.length * step + 1, sampleRate);
  setContext(context);
  const synth = new PluckSynth({ context }).toDestination();
  for (const [index, note] of score.notes.entries()) {
    synth.triggerAttack(ToneMidi(note.midi).toFrequency(), index * step);
  }
  const buffer = await context.render();
  return new Float32Array(buffer.getChannelData(0));
};

const offlineEngine = async (
  score: Score,
  step: number,
  sampleRate: number,
): Promise<Float32Array> => {
  const range = { start: tick(0), end: score.length };
  const tempo = bpm(15 / step);
  const rendering = { score, tempo, mix: only(), range, countInBars: 0, sampleRate };
  return (await renderOffline(rendering, quiet)).getChannelData(0);
};

const offline = { engine: offlineEngine, plain: offlinePlain };

/** What the bench asks of a page. Each page plays live once. */
export const soundBench = {
  /** Plays a roll round and round for so many seconds with the main thread held again and again. */
  live: async (
    who: Who,
    score: Score,
    seconds: number,
    quarters: number,
    held: boolean,
  ): Promise<Timing> => {
    const native = new AudioContext();
    const output = native.createGain();
    output.connect(native.destination);
    const recorder = await Recorder.on(native);
    output.connect(recorder.node);
    let over = false;
    const work = held ? labour(() => over) : Promise.resolve();
    await playing[who](native, output, score, seconds, quarters);
    over = true;
    await work;
    const { start: first, samples } = recorder.take();
    const onsets = onsetsOf({ start: first, sampleRate: native.sampleRate, samples });
    const step = 30 / quarters;
    return timingOf(onsets, Math.floor(seconds / step), step);
  },

  /** Plays for so long without recording, for what it costs. */
  alone: async (who: Who, score: Score, seconds: number, quarters: number): Promise<void> => {
    const native = new AudioContext();
    await playing[who](native, native.destination, score, seconds, quarters);
  },

  /** How many times faster than it lasts a score is rendered. */
  speed: async (who: Who, score: Score, step: number): Promise<number> => {
    const begun = performance.now();
    const samples = await offline[who](score, step, 48_000);
    return samples.length / 48 / (performance.now() - begun);
  },

  /** How far from equal temperament (A4 = 440 Hz) notes are that are `step` seconds apart, in cents. */
  cents: async (who: Who, score: Score, step: number, rate: number): Promise<readonly number[]> => {
    const samples = await offline[who](score, step, rate);
    const lead = who === "engine" ? 0.08 : 0;
    return score.notes.map(({ midi }, index) =>
      Math.abs(
        100 *
          (pitchAt({ start: 0, sampleRate: rate, samples }, lead + index * step + 0.05, 0.15) -
            midi),
      ),
    );
  },
};
