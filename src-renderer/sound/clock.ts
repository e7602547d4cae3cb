import type { Meter } from "../../src-shared/chart/song.ts";
import { secondsToTicks, ticksToSeconds } from "../../src-shared/score/tempo.ts";
import { type Bpm, type Seconds, seconds, type Tick, tick } from "../../src-shared/units.ts";
import type { AudioTime } from "./audioTime.ts";

/** How fast it goes: `tempo` counts beats of the meter. */
export type Pace = { readonly meter: Meter; readonly tempo: Bpm };

type Anchor = { readonly time: Seconds; readonly at: Tick; readonly pace: Pace };

/** Anchors older than this are not asked for any more. */
const REMEMBERED = 5;

/**
 * Audio time and unrolled position (ticks that count on evenly through every repeat), each from the
 * other. A change of pace takes hold at a position and moves nothing before it.
 */
export class Clock {
  readonly #audio: AudioTime;
  #anchors: readonly [Anchor, ...Anchor[]];

  constructor(audio: AudioTime, pace: Pace) {
    this.#audio = audio;
    this.#anchors = [{ time: audio.now(), at: tick(0), pace }];
  }

  now(): Seconds {
    return this.#audio.now();
  }

  /** The position that leaves the speaker at this moment; before the start, the start. */
  heard(): Tick {
    return tick(Math.max(this.#anchors[0].at, this.tickAt(this.#audio.heard())));
  }

  /** Forgets everything before: position `at` is at `time`. */
  start(time: Seconds, at: Tick, pace: Pace): void {
    this.#anchors = [{ time, at, pace }];
  }

  /** Goes on at another pace from a position on. */
  changePace(at: Tick, pace: Pace): void {
    const anchor = { time: this.timeOf(at), at, pace };
    const recent = this.now() - REMEMBERED;
    const kept = this.#anchors.filter(
      (older, index) =>
        older.at < at && (this.#anchors[index + 1]?.time ?? Number.POSITIVE_INFINITY) > recent,
    );
    const [first, ...rest] = [...kept, anchor];
    this.#anchors = [first ?? anchor, ...rest];
  }

  timeOf(at: Tick): Seconds {
    const anchor = this.#anchors.findLast((each) => each.at <= at) ?? this.#anchors[0];
    const { meter, tempo } = anchor.pace;
    return seconds(anchor.time + ticksToSeconds(tick(at - anchor.at), meter, tempo));
  }

  /** Not rounded to whole ticks. */
  tickAt(time: Seconds): Tick {
    const anchor = this.#anchors.findLast((each) => each.time <= time) ?? this.#anchors[0];
    const { meter, tempo } = anchor.pace;
    return tick(anchor.at + secondsToTicks(seconds(time - anchor.time), meter, tempo));
  }
}
