import type { Practice } from "../../src-shared/score/band.ts";
import { countIn } from "../../src-shared/score/countIn.ts";
import {
  countInsOf,
  countsInTo,
  endOf,
  loopWithin,
  type Run,
  roundAt,
  type Slice,
  slicesOf,
  songTickAt,
} from "../../src-shared/score/loop.ts";
import type { Hit, Note, Part, Score } from "../../src-shared/score/score.ts";
import { silentRounds } from "../../src-shared/score/silentBars.ts";
import { ticksPerBar } from "../../src-shared/score/tempo.ts";
import { startingIn } from "../../src-shared/score/window.ts";
import { type Seconds, seconds, type Tick, tick } from "../../src-shared/units.ts";
import type { Clock } from "./clock.ts";
import type { Instrument } from "./instrument.ts";
import { type Moment, momentsOfHit, momentsOfNote } from "./moments.ts";
import { Pending } from "./pending.ts";
import { type Seam, seamOf } from "./seam.ts";

/** Everyone who plays; whoever counts in has a place of their own in the mix. */
export type Band = {
  readonly banjo: Instrument<Note>;
  readonly countIn: Instrument<Hit>;
} & Readonly<Record<Part, Instrument<Hit>>>;

/** How far ahead of the present everything is handed out: what the main thread may sleep. */
export const LOOK_AHEAD: Seconds = seconds(0.5);
/**
 * What is handed out nearer to the present than this stays: the sound card has it, or soon will.
 * Less than an eighth at 320 quarters a minute, which lasts 94 ms.
 */
export const SETTLED: Seconds = seconds(0.05);
/** A stroke at most this late is played at once; a later one is left out, for it would mislead. */
export const LATE: Seconds = seconds(0.03);

/** From `since` on this run is played; its own position 0 is at `zero`, after so many rounds. */
type Passage = {
  readonly since: Tick;
  readonly zero: Tick;
  readonly run: Run;
  readonly rounds: number;
};

/** What is to be played, and how it goes round. */
export type Plan = {
  readonly score: Score;
  /** Counted on from round to round. */
  readonly silentBars: Practice["silentBars"];
  readonly loop: Run["loop"];
  /** Bars of clicks before each further round. */
  readonly countInEachRound: number;
};

const runOf = ({ score, loop, countInEachRound }: Plan, start: Tick): Run => ({
  start,
  loop,
  end: score.length,
  countIn: tick(countInEachRound * ticksPerBar(score.meter)),
});

/** Enough for the count-in at the start and those between rounds. */
const clicksOf = ({ score, countInEachRound }: Plan, bars: number): readonly Hit[] =>
  countIn(score.meter, Math.max(bars, countInEachRound));

/**
 * Hands each stroke to its instrument with its exact time, ahead of the present; and what happens to
 * a note afterwards (bends, its end) only when that is near too. A change takes back what is not
 * settled yet. Positions are unrolled and whole ticks: everything before the horizon is handed out.
 */
export class Scheduler {
  readonly #clock: Clock;
  readonly #band: Band;
  readonly #pending = new Pending();
  readonly #countInBars: number;
  /** The score of each round. */
  #scoreIn: (round: number) => Score;
  #seam: Seam | null = null;
  #passages: readonly [Passage, ...Passage[]];
  #clicks: readonly Hit[];
  #horizon: Tick;

  /** Starts at once: the clock stands at `start`, or at the beginning of the count-in before it. */
  constructor(clock: Clock, band: Band, plan: Plan, start: Tick, countInBars: number) {
    this.#clock = clock;
    this.#band = band;
    this.#scoreIn = silentRounds(plan.score, plan.silentBars, plan.loop);
    this.#countInBars = countInBars;
    this.#clicks = clicksOf(plan, countInBars);
    this.#horizon = tick(-countInBars * ticksPerBar(plan.score.meter));
    this.#passages = [{ since: this.#horizon, zero: tick(0), run: runOf(plan, start), rounds: 0 }];
  }

  /** The first position that is not handed out. */
  get horizon(): Tick {
    return this.#horizon;
  }

  /** Bends and ends that are remembered. */
  get pending(): number {
    return this.#pending.size;
  }

  songTickAt(unrolled: Tick): Tick {
    const { run, zero } = this.#passageAt(unrolled);
    return songTickAt(run, tick(unrolled - zero));
  }

  /** Where the count-in leads that is at a position; null outside a count-in. */
  countsInTo(unrolled: Tick): Tick | null {
    const { run, zero } = this.#passageAt(unrolled);
    return countsInTo(run, tick(unrolled - zero));
  }

  /** Where all is over, or null. */
  end(): Tick | null {
    const { zero, run } = this.#lastPassage();
    const length = endOf(run);
    return length === null ? null : tick(zero + length);
  }

  /** Takes back all that is not settled; the position from which on anything can be changed. */
  recall(): Tick {
    const now = this.#clock.now();
    const settled = Math.ceil(this.#clock.tickAt(seconds(now + SETTLED)));
    if (settled < this.#horizon) {
      const cut = tick(settled);
      const from = this.#clock.timeOf(cut);
      for (const instrument of Object.values(this.#band)) {
        instrument.recall(from);
      }
      this.#pending.recall(cut);
      this.#horizon = cut;
    }
    return this.#horizon;
  }

  /** Another score or loop as soon as can be; the place in the song is kept, a count-in goes on. */
  change(plan: Plan): void {
    const since = this.recall();
    const { score } = plan;
    const here = this.songTickAt(since);
    const leadsTo = this.countsInTo(since);
    const place = leadsTo ?? here;
    const lastBar = score.bars.at(-1)?.start ?? tick(0);
    const start = place < score.length ? place : lastBar;
    const zero = tick(since + (place - here));
    const heard = this.#clock.heard();
    const kept = this.#passages.filter(
      (each, index) => each.since < since && (this.#passages[index + 1]?.since ?? since) > heard,
    );
    const before = this.#lastPassage();
    const round = before.rounds + roundAt(before.run, tick(since - before.zero));
    const run = runOf(plan, start);
    const isSameLoop =
      run.loop?.start === before.run.loop?.start && run.loop?.end === before.run.loop?.end;
    const passage = { since, zero, run, rounds: isSameLoop ? round : 0 };
    const scoreIn = silentRounds(score, plan.silentBars, plan.loop);
    const [first, ...rest] = [...kept, passage];
    this.#passages = [first ?? passage, ...rest];
    if (leadsTo === null) {
      const taken = { score: this.#scoreIn(round), seam: this.#seam };
      this.#seam = seamOf(taken, scoreIn(passage.rounds), start, tick(since - start));
    }
    this.#scoreIn = scoreIn;
    this.#clicks = clicksOf(plan, this.#countInBars);
  }

  /** Hands out all that falls due in the time ahead. Call it often. */
  advance(ahead: Seconds = LOOK_AHEAD): void {
    const now = this.#clock.now();
    const to = tick(Math.floor(this.#clock.tickAt(seconds(now + ahead))));
    if (to <= this.#horizon) {
      return;
    }
    const { zero, run, rounds } = this.#lastPassage();
    const [from, till] = [tick(this.#horizon - zero), tick(to - zero)];
    this.#makeUp(this.#horizon, to, run);
    this.#horizon = to;
    for (const slice of countInsOf(run, from, till)) {
      this.#playClicks({ ...slice, offset: tick(slice.offset + zero) });
    }
    for (const slice of slicesOf(run, from, till)) {
      const [offset, round] = [tick(slice.offset + zero), slice.round + rounds];
      this.#playSlice({ ...slice, offset, round }, run);
    }
    this.#pending.meet(to, this.#clock);
  }

  silence(time: Seconds): void {
    this.#pending.clear();
    for (const instrument of Object.values(this.#band)) {
      instrument.silence(time);
    }
  }

  #playClicks({ from, to, offset }: Slice): void {
    for (const hit of startingIn(this.#clicks, { start: from, end: to })) {
      this.#strike(this.#band.countIn, hit, offset, momentsOfHit(hit, tick(0)));
    }
  }

  #playSlice({ from, to, offset, round }: Slice, run: Run): void {
    const score = this.#scoreIn(round);
    const span = { start: from, end: to };
    const done = this.#seam?.offset === offset ? this.#seam.done : null;
    for (const stroke of [...startingIn(score.notes, span), ...startingIn(score.hits, span)]) {
      if (!done?.has(stroke)) {
        this.#play(stroke, offset, run);
      }
    }
  }

  #play(stroke: Note | Hit, offset: Tick, run: Run): void {
    const last = loopWithin(run.loop, run.end)?.end ?? run.end;
    if ("part" in stroke) {
      this.#strike(this.#band[stroke.part], stroke, offset, momentsOfHit(stroke, last));
    } else {
      this.#strike(this.#band.banjo, stroke, offset, momentsOfNote(stroke, last));
    }
  }

  /** What another score has a little earlier is struck at the seam. */
  #makeUp(from: Tick, to: Tick, run: Run): void {
    const at = this.#seam ? tick(this.#seam.cut + this.#seam.offset) : to;
    if (this.#seam && at >= from && at < to) {
      for (const stroke of this.#seam.late) {
        this.#play(stroke, tick(at - stroke.tick), run);
      }
    }
  }

  #strike<Stroke extends Note | Hit>(
    instrument: Instrument<Stroke>,
    stroke: Stroke,
    offset: Tick,
    moments: readonly Moment[],
  ): void {
    const now = this.#clock.now();
    const struck = tick(stroke.tick + offset);
    const time = this.#clock.timeOf(struck);
    if (time < now - LATE) {
      return;
    }
    const voice = instrument.strike(stroke, seconds(Math.max(time, now)));
    this.#pending.add(struck, voice, moments, offset);
  }

  #lastPassage(): Passage {
    return this.#passages.at(-1) ?? this.#passages[0];
  }

  #passageAt(unrolled: Tick): Passage {
    return this.#passages.findLast(({ since }) => since <= unrolled) ?? this.#passages[0];
  }
}
