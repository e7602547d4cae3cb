import type { Practice } from "../../src-shared/score/band.ts";
import type { Score, Span } from "../../src-shared/score/score.ts";
import { silentRounds } from "../../src-shared/score/silentBars.ts";
import { ticksPerBar, ticksToSeconds } from "../../src-shared/score/tempo.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { type Bpm, seconds, tick } from "../../src-shared/units.ts";
import { words } from "../../src-shared/wordTable.ts";
import { Clock } from "./clock.ts";
import { Ensemble } from "./ensemble.ts";
import type { Onlooker } from "./onlooker.ts";
import { type Plan, Scheduler } from "./scheduler.ts";

/** What to render. */
export type Rendering = {
  readonly score: Score;
  /** Counted from the first bar that is played. */
  readonly silentBars?: Practice["silentBars"];
  readonly tempo: Bpm;
  readonly mix: Preferences["mix"];
  /** What of the song is played; nothing rings in from before it. */
  readonly range: Span;
  /** Bars of clicks before it. */
  readonly countInBars: number;
  readonly sampleRate: number;
};

/** Before the first stroke: longer than the rise from silence. */
export const RENDER_LEAD_IN = 0.08;
/** For the last strings to die away. */
const TAIL = 0.5;
/** Frames that a context renders at a time. */
const QUANTUM = 128;

/**
 * A stretch of the score as stereo sound, played by the same band as live, as fast as the machine
 * can: the first stroke, of the count-in or the song, is RENDER_LEAD_IN seconds in. A second is
 * handed out at a time, so that only what sounds has nodes; between the seconds the signal's abort
 * is heeded, and its reason thrown.
 */
export const renderOffline = async (
  rendering: Rendering,
  onlooker: Onlooker,
): Promise<AudioBuffer> => {
  const { tempo, mix, range, countInBars, sampleRate } = rendering;
  const score = silentRounds(rendering.score, rendering.silentBars ?? null, range)(0);
  const { meter } = score;
  const lead = tick(-countInBars * ticksPerBar(meter));
  const played = ticksToSeconds(tick(range.end - range.start - lead), meter, tempo);
  const length = Math.ceil((RENDER_LEAD_IN + played + TAIL) * sampleRate);
  const offline = new OfflineAudioContext(2, length, sampleRate);
  if (!("suspend" in offline)) {
    throw new Error(words.wav.cannotWrite);
  }
  const now = (): ReturnType<typeof seconds> => seconds(offline.currentTime);
  const ensemble = new Ensemble(offline, offline.destination);
  ensemble.mixer.set(mix);
  ensemble.mixer.rise(seconds(0));
  const clock = new Clock({ now, heard: now }, { meter, tempo });
  clock.start(seconds(RENDER_LEAD_IN), lead, { meter, tempo });
  const plan: Plan = {
    score: { ...score, length: range.end },
    silentBars: null,
    loop: null,
    countInEachRound: 0,
  };
  const scheduler = new Scheduler(clock, ensemble.band, plan, range.start, countInBars);
  const step = QUANTUM * Math.ceil(sampleRate / QUANTUM);
  const ahead = seconds((2 * step) / sampleRate);

  const stopped = new Promise<never>((_, reject) => {
    const goOn = (frame: number): void => {
      if (onlooker.signal?.aborted) {
        reject(onlooker.signal.reason);
        ensemble.dispose();
      } else {
        scheduler.advance(ahead);
        onlooker.progress(frame / length);
        if (frame + step < length) {
          waitFor(frame + step);
        }
      }
    };
    const waitFor = (frame: number): void => {
      offline
        .suspend(frame / sampleRate)
        .then(() => {
          goOn(frame);
          return offline.resume();
        })
        .catch(reject);
    };
    goOn(0);
  });
  const sound = await Promise.race([offline.startRendering(), stopped]);
  ensemble.dispose();
  onlooker.progress(1);
  return sound;
};
