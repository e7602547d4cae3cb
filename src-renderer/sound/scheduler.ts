import { countIn } from "../../src-shared/score/countIn.ts";
import {
  endOf,
  loopWithin,
  type Run,
  type Slice,
  slicesOf,
  songTickAt,
} from "../../src-shared/score/loop.ts";
import type { Hit, Note, Part, Score } from "../../src-shared/score/score.ts";
import { ticksPerBar } from "../../src-shared/score/tempo.ts";
import { startingIn } from "../../src-shared/score/window.ts";
import { type Seconds, seconds, type Tick, tick } from "../../src-shared/units.ts";
import type { Clock } from "./clock.ts";
import type { Instrument, Voice } from "./instrument.ts";
import { type Moment, momentsOfHit, momentsOfNote } from "./moments.ts";

/** Everyone who plays. */
export type Band = { readonly banjo: Instrument<Note> } & Readonly<Record<Part, Instrument<Hit>>>;

/** How far ahead of the present everything is handed out: what the main thread may sleep. */
export const LOOK_AHEAD: Seconds = seconds(0.2);
/** A stroke at most this late is played at once; a later one is left out, for it would mislead. */
export const LATE: Seconds = seconds(0.03);

/** A run, and the unrolled position from which on it is the one that is played. */
type Passage = { readonly from: Tick; readonly run: Run };
/** Something that is to happen to a voice, at an unrolled position. */
type Due = { readonly at: Tick; readonly moment: Moment; readonly voice: Voice };

/**
 * Hands each stroke to its instrument with its exact time, a little ahead; and what happens to a
 * note afterwards (bends, its end) only when that is near too, so that a change of tempo moves it
 * along. Positions are unrolled and whole ticks: everything before the horizon is handed out.
 */
export class Scheduler {
  readonly #clock: Clock;
  readonly #band: Band;
  #score: Score;
  #passages: readonly [Passage, ...Passage[]];
  #clicks: readonly Hit[] = [];
  #due: readonly Due[] = [];
  #horizon: Tick;

  /** Starts at once: the clock stands at the start of the run, or of the count-in before it. */
  constructor(clock: Clock, band: Band, score: Score, run: Run, countInBars: number) {
    this.#clock = clock;
    this.#band = band;
    this.#score = score;
    this.#clicks = countIn(score.meter, countInBars);
    this.#passages = [{ from: tick(0), run }];
    this.#horizon = tick(-countInBars * ticksPerBar(score.meter));
  }

  /** The first position that is not handed out; only from here on can anything be changed. */
  get horizon(): Tick {
    return this.#horizon;
  }

  songTickAt(unrolled: Tick): Tick {
    const passage = this.#passageAt(unrolled);
    return songTickAt(passage.run, tick(unrolled - passage.from));
  }

  /** Where all is over, or null. */
  end(): Tick | null {
    const { from, run } = this.#lastPassage();
    const length = endOf(run);
    return length === null ? null : tick(from + length);
  }

  /** Another score or loop from the horizon on; the place in the song is kept. */
  change(score: Score, loop: Run["loop"]): void {
    const from = tick(Math.max(0, this.#horizon));
    const lastBar = score.bars.at(-1)?.start ?? tick(0);
    const here = this.songTickAt(from);
    const start = here < score.length ? here : lastBar;
    const passage = { from, run: { start, loop, end: score.length } };
    const heard = this.#clock.heard();
    const kept = this.#passages.filter(
      (each, index) => each.from < from && (this.#passages[index + 1]?.from ?? from) > heard,
    );
    const [first, ...rest] = [...kept, passage];
    this.#passages = [first ?? passage, ...rest];
    this.#score = score;
  }

  /** Hands out all that falls due within the look-ahead. Call it often. */
  advance(): void {
    const now = this.#clock.now();
    const to = tick(Math.floor(this.#clock.tickAt(seconds(now + LOOK_AHEAD))));
    if (to <= this.#horizon) {
      return;
    }
    const from = this.#horizon;
    this.#horizon = to;
    this.#strike(startingIn(this.#clicks, { start: from, end: to }), this.#band.click, tick(0));
    const passage = this.#lastPassage();
    const start = tick(from - passage.from);
    for (const slice of slicesOf(passage.run, start, tick(to - passage.from))) {
      this.#playSlice({ ...slice, offset: tick(slice.offset + passage.from) }, passage.run);
    }
    this.#meet(to);
  }

  silence(time: Seconds): void {
    this.#due = [];
    for (const instrument of Object.values(this.#band)) {
      instrument.silence(time);
    }
  }

  #playSlice(slice: Slice, run: Run): void {
    const span = { start: slice.from, end: slice.to };
    const last = loopWithin(run.loop, run.end)?.end ?? run.end;
    for (const note of startingIn(this.#score.notes, span)) {
      this.#strikeOne(this.#band.banjo, note, slice.offset, momentsOfNote(note, last));
    }
    for (const hit of startingIn(this.#score.hits, span)) {
      this.#strike([hit], this.#band[hit.part], slice.offset);
    }
  }

  #strike(hits: readonly Hit[], instrument: Instrument<Hit>, offset: Tick): void {
    for (const hit of hits) {
      this.#strikeOne(instrument, hit, offset, momentsOfHit(hit));
    }
  }

  #strikeOne<Stroke extends Note | Hit>(
    instrument: Instrument<Stroke>,
    stroke: Stroke,
    offset: Tick,
    moments: readonly Moment[],
  ): void {
    const now = this.#clock.now();
    const time = this.#clock.timeOf(tick(stroke.tick + offset));
    if (time < now - LATE) {
      return;
    }
    const voice = instrument.strike(stroke, seconds(Math.max(time, now)));
    const due = moments.map((moment) => ({
      at: tick(moment.tick + offset),
      moment,
      voice,
    }));
    this.#due = [...this.#due, ...due];
  }

  /** Does what falls due before a position; what is late, at once. */
  #meet(to: Tick): void {
    for (const { at, moment, voice } of this.#due.filter((each) => each.at < to)) {
      const time = seconds(Math.max(this.#clock.timeOf(at), this.#clock.now()));
      if (moment.kind === "bend") {
        voice.bend(moment.semitones, time);
      } else {
        voice.stop(time);
      }
    }
    this.#due = this.#due.filter((each) => each.at >= to);
  }

  #lastPassage(): Passage {
    return this.#passages.at(-1) ?? this.#passages[0];
  }

  #passageAt(unrolled: Tick): Passage {
    return this.#passages.findLast((each) => each.from <= unrolled) ?? this.#passages[0];
  }
}
