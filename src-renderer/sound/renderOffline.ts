import { OfflineContext } from "tone";
import type { Score } from "../../src-shared/score/score.ts";
import { ticksToSeconds } from "../../src-shared/score/tempo.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { type Bpm, seconds, tick } from "../../src-shared/units.ts";
import { Engine, LEAD_IN } from "./engine.ts";

/** What to render. */
export type Rendering = {
  readonly score: Score;
  readonly tempo: Bpm;
  readonly mix: Preferences["mix"];
  readonly sampleRate: number;
};

/** For the last strings to die away. */
const TAIL = 0.5;

/**
 * The whole score as sound, played by the same band as live: the first tick of the song is LEAD_IN
 * seconds in.
 */
export const renderOffline = async (rendering: Rendering): Promise<AudioBuffer> => {
  const { score, tempo, mix, sampleRate } = rendering;
  const length = LEAD_IN + ticksToSeconds(score.length, score.meter, tempo) + TAIL;
  const offline = new OfflineAudioContext(2, Math.ceil(length * sampleRate), sampleRate);
  const context = new OfflineContext(offline);
  const now = (): ReturnType<typeof seconds> => seconds(context.currentTime);
  const engine = new Engine(context, offline.destination, { now, heard: now });
  engine.setMix(mix);
  engine.load(score, tempo);
  engine.play(tick(0), 0);
  const buffer = (await context.render()).get();
  engine.dispose();
  if (!buffer) {
    throw new Error("the audio context rendered nothing");
  }
  return buffer;
};
