import type { AudioTime } from "../../../src-renderer/sound/audioTime.ts";
import type { Instrument, Voice } from "../../../src-renderer/sound/instrument.ts";
import type { Band } from "../../../src-renderer/sound/scheduler.ts";
import type { Hit, Note } from "../../../src-shared/score/score.ts";
import { seconds } from "../../../src-shared/units.ts";

/** An audio clock that goes where it is put. */
export class FakeTime implements AudioTime {
  time: number;
  readonly latency: number;

  constructor(time: number, latency = 0) {
    this.time = time;
    this.latency = latency;
  }

  now(): ReturnType<typeof seconds> {
    return seconds(this.time);
  }

  heard(): ReturnType<typeof seconds> {
    return seconds(this.time - this.latency);
  }
}

/** One thing an instrument was told, and when in audio time it is to happen. */
export type Told =
  | {
      readonly kind: "strike";
      readonly stroke: Note | Hit;
      readonly time: number;
      readonly told: number;
    }
  | {
      readonly kind: "bend";
      readonly stroke: Note | Hit;
      readonly time: number;
      readonly semitones: number;
    }
  | { readonly kind: "stop"; readonly stroke: Note | Hit; readonly time: number }
  | { readonly kind: "silence"; readonly time: number }
  | { readonly kind: "recall"; readonly time: number };

/** A band that writes down what it is told. */
export class PaperBand {
  readonly told: Told[] = [];
  readonly #time: FakeTime;
  readonly band: Band;

  constructor(time: FakeTime) {
    this.#time = time;
    this.band = {
      banjo: this.#player<Note>(),
      bass: this.#player<Hit>(),
      guitar: this.#player<Hit>(),
      chop: this.#player<Hit>(),
      click: this.#player<Hit>(),
      countIn: this.#player<Hit>(),
    };
  }

  /** The strokes that sound: those that were not taken back, in order of time. */
  get strikes(): readonly Extract<Told, { kind: "strike" }>[] {
    return this.#standing.filter((each) => each.kind === "strike");
  }

  /** Bends and ends that were not taken back. */
  get bendsAndStops(): readonly Extract<Told, { kind: "bend" | "stop" }>[] {
    return this.#standing.filter((each) => each.kind === "bend" || each.kind === "stop");
  }

  get #standing(): readonly Told[] {
    const recalls = this.told.flatMap((each, index) =>
      each.kind === "recall" ? [{ index, from: each.time }] : [],
    );
    return this.told
      .filter(
        (each, index) =>
          !recalls.some((recall) => recall.index > index && each.time >= recall.from),
      )
      .toSorted((a, b) => a.time - b.time);
  }

  #player<Stroke extends Note | Hit>(): Instrument<Stroke> {
    const { told } = this;
    const silence = (time: number): void => {
      told.push({ kind: "silence", time });
    };
    return {
      prepare: () => undefined,
      strike: (stroke, time): Voice => {
        told.push({ kind: "strike", stroke, time, told: this.#time.time });
        return {
          start: time,
          recall: () => undefined,
          cancel: () => undefined,
          bend: (semitones, when) => {
            told.push({ kind: "bend", stroke, time: when, semitones });
          },
          stop: (when) => {
            told.push({ kind: "stop", stroke, time: when });
          },
        };
      },
      // The paper keeps one list for all, so that one entry says it for the whole band.
      recall: (from) => {
        const last = told.at(-1);
        if (last?.kind !== "recall" || last.time !== from) {
          told.push({ kind: "recall", time: from });
        }
      },
      silence,
      dispose: () => undefined,
    };
  }
}
