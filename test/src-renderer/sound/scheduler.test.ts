import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { handMadeScore, type Pluck, rhythm, roll } from "../../../e2e/sound/handMadeScore.ts";
import { Clock } from "../../../src-renderer/sound/clock.ts";
import {
  LATE,
  LOOK_AHEAD,
  type Plan,
  Scheduler,
  SETTLED,
} from "../../../src-renderer/sound/scheduler.ts";
import { perform } from "../../../src-shared/score/perform.ts";
import type { Hit, Note, Score, Span } from "../../../src-shared/score/score.ts";
import { bpm, seconds, tick } from "../../../src-shared/units.ts";
import { FakeTime, PaperBand } from "./fakeAudio.ts";

/** Of tick 0, once everything is set up. */
const START = 1;
/** At 100 half notes a minute. */
const TICK = 0.000625;
const EIGHTH = 240 * TICK;

const planOf = (
  score: Score,
  loop: Span | null = null,
  countInEachRound = 0,
  silentBars: Plan["silentBars"] = null,
): Plan => ({
  score,
  silentBars,
  loop,
  countInEachRound,
});

const playing = (
  score: Score,
  loop: Span | null = null,
  from = 0,
  countInBars = 0,
  countInEachRound = 0,
  silentBars: Plan["silentBars"] = null,
) => {
  const audio = new FakeTime(START - countInBars * 1920 * TICK);
  const paper = new PaperBand(audio);
  const pace = (tempo: number) => ({ meter: score.meter, tempo: bpm(tempo) });
  const clock = new Clock(audio, pace(100));
  clock.start(seconds(audio.time), tick(-countInBars * 1920), pace(100));
  const plan = planOf(score, loop, countInEachRound, silentBars);
  const scheduler = new Scheduler(clock, paper.band, plan, tick(from), countInBars);
  const goOn = (steps: readonly number[]): void => {
    for (const step of steps) {
      audio.time += step;
      scheduler.advance();
    }
  };
  scheduler.advance();
  return {
    audio,
    paper,
    clock,
    scheduler,
    goOn,
    setTempo: (tempo: number) => {
      clock.changePace(scheduler.recall(), pace(tempo));
      scheduler.advance();
    },
  };
};

const steady = (time: number): readonly number[] =>
  Array.from({ length: Math.round(time / 0.02) }, () => 0.02);
const span = (start: number, end: number): Span => ({ start: tick(start), end: tick(end) });

/** Times between looks ahead: mostly short, now and then a main thread held for 0.19 s. */
const anySteps = fc.array(fc.double({ min: 0.001, max: 0.19, noNaN: true }), {
  minLength: 30,
  maxLength: 120,
});

describe("the scheduler", () => {
  test("hands out every note once, in time, at its exact time, however unevenly it is called", () => {
    fc.assert(
      fc.property(anySteps, fc.integer({ min: 0, max: 1919 }), (steps, from) => {
        const score = handMadeScore(40, roll(40, 7), rhythm(40));
        const { audio, paper, goOn } = playing(score, null, from);
        goOn(steps);
        const due = [...score.notes, ...score.hits].filter(
          (stroke) =>
            stroke.tick >= from &&
            START + (stroke.tick - from) * TICK < audio.time + LOOK_AHEAD - TICK,
        );
        expect(paper.strikes.length).toBeGreaterThanOrEqual(due.length);
        expect(new Set(paper.strikes.map(({ stroke }) => stroke)).size).toBe(paper.strikes.length);
        for (const { stroke, time, told } of paper.strikes) {
          expect(Math.abs(time - (START + (stroke.tick - from) * TICK))).toBeLessThan(1e-9);
          expect(time).toBeGreaterThanOrEqual(told);
        }
      }),
    );
  });

  test("a change of tempo neither skips nor repeats a note, and each gap is of a tempo or between two", () => {
    const anyTempos = fc.array(fc.tuple(anySteps, fc.integer({ min: 40, max: 200 })), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(anyTempos, (changes) => {
        const score = handMadeScore(80, roll(80, 7));
        const { paper, goOn, setTempo } = playing(score);
        for (const [steps, tempo] of changes) {
          goOn(steps);
          setTempo(tempo);
        }
        goOn(steady(1));
        const { strikes } = paper;
        expect(strikes.map(({ stroke }) => stroke)).toEqual(score.notes.slice(0, strikes.length));
        const tempos = [100, ...changes.map(([, tempo]) => tempo)];
        const [least, most] = [15 / Math.max(...tempos), 15 / Math.min(...tempos)];
        strikes.slice(1).forEach(({ time }, index) => {
          const gap = time - (strikes[index]?.time ?? 0);
          expect(gap).toBeGreaterThan(least - 1e-9);
          expect(gap).toBeLessThan(most + 1e-9);
        });
      }),
      { numRuns: 30 },
    );
  });

  test("a loop's seam is an eighth like any other, and nothing is doubled or lost in it", () => {
    fc.assert(
      fc.property(
        anySteps,
        fc.integer({ min: 0, max: 15 }),
        fc.integer({ min: 1, max: 16 }),
        (steps, first, length) => {
          const score = handMadeScore(4, roll(4, 7));
          const loop = span(first * 240, (first + length) * 240);
          const { paper, goOn } = playing(score, loop, loop.start);
          goOn(steps);
          const round = score.notes.filter(({ tick: at }) => at >= loop.start && at < loop.end);
          paper.strikes.forEach(({ stroke, time }, index) => {
            expect(stroke).toBe(round[index % round.length]);
            expect(Math.abs(time - (START + index * EIGHTH))).toBeLessThan(1e-9);
          });
          expect(paper.strikes.length).toBeGreaterThanOrEqual(1);
        },
      ),
    );
  });

  test("a note that rings over a loop's end is damped there", () => {
    const score = handMadeScore(2, [{ at: 6, string: 3, fret: 5, lasts: 8 }]);
    const { paper, goOn } = playing(score, span(0, 1920));
    goOn(steady(2));
    const stops = paper.told.filter((each) => each.kind === "stop").map(({ time }) => time);
    expect(stops[0]).toBeCloseTo(START + 1920 * TICK, 9);
  });

  test("the clicks of a count-in come before the first note, which comes on its beat", () => {
    const score = handMadeScore(2, roll(2, 7));
    const { paper, goOn } = playing(score, null, 1920, 1);
    goOn(steady(2));
    const [click, second, note] = paper.strikes;
    expect([click?.stroke, second?.stroke]).toMatchObject([
      { part: "click", accent: true },
      { part: "click", accent: false },
    ]);
    expect([click?.time, second?.time, note?.time]).toEqual(
      [START - 1.2, START - 0.6, START].map((time) => expect.closeTo(time, 9)),
    );
    expect(note?.stroke).toBe(score.notes[8]);
  });

  test("the end of a note and every fret of its slide keep to a tempo that changed after it was struck", () => {
    const pluck: Pluck = {
      at: 0,
      string: 2,
      fret: 5,
      lasts: 7,
      glide: { from: 4, to: 6, toFret: 9 },
    };
    const { paper, goOn, setTempo, clock } = playing(handMadeScore(2, [pluck]));
    goOn(steady(0.1));
    setTempo(60);
    goOn(steady(3));
    const bends = paper.bendsAndStops.filter((each) => each.kind === "bend");
    const stop = paper.bendsAndStops.find((each) => each.kind === "stop");
    expect(bends.map(({ semitones }) => semitones)).toEqual([1, 2, 3, 4]);
    expect(bends.at(-1)?.time).toBeCloseTo(clock.timeOf(tick(1440)), 9);
    expect(stop?.time).toBeCloseTo(clock.timeOf(tick(1680)), 9);
    expect(stop?.time).toBeGreaterThan(START + 1680 * TICK + 0.3);
  });

  test("after a main thread that was held for longer than is handed out ahead, strokes a little late sound at once and others not at all", () => {
    const score = handMadeScore(4, roll(4, 7));
    const { audio, paper, goOn } = playing(score);
    goOn(steady(0.3));
    const before = paper.strikes.length;
    const held = 1.5 + EIGHTH / 10;
    goOn([held]);
    const after = paper.strikes.slice(before);
    const meant = after.map(({ stroke }) => START + stroke.tick * TICK);
    expect(after.map(({ time }) => time)).toEqual(
      meant.map((time) => expect.closeTo(Math.max(time, audio.time), 9)),
    );
    expect(Math.min(...meant)).toBeGreaterThanOrEqual(audio.time - LATE);
    const missed = score.notes.filter(
      ({ tick: at }) => START + at * TICK < audio.time - LATE,
    ).length;
    expect(missed - before).toBeGreaterThan(3);
    goOn(steady(4));
    expect(paper.strikes).toHaveLength(score.notes.length - (missed - before));
  });

  test("silence takes back what was to happen to the notes that sounded", () => {
    const { audio, paper, goOn, scheduler } = playing(
      handMadeScore(2, [{ at: 0, string: 3, fret: 5, lasts: 6 }]),
    );
    goOn(steady(0.1));
    scheduler.silence(seconds(audio.time));
    goOn(steady(2));
    expect(paper.told.filter((each) => each.kind === "silence")).toHaveLength(6);
    expect(paper.told.filter((each) => each.kind === "stop")).toEqual([]);
  });

  test("another score goes on at the same place as soon as can be, a shorter one at its last bar", () => {
    const score = handMadeScore(4, roll(4, 7));
    const moved = handMadeScore(4, roll(4, 9));
    const { paper, goOn, scheduler, clock } = playing(score);
    goOn(steady(1.5));
    scheduler.change(planOf(moved, null));
    const cut = scheduler.horizon;
    goOn(steady(0.6));
    const expected = [
      ...score.notes.filter(({ tick: at }) => at < cut),
      ...moved.notes.filter(({ tick: at }) => at >= cut),
    ];
    expect(paper.strikes.map(({ stroke }) => stroke)).toEqual(
      expected.slice(0, paper.strikes.length),
    );
    const short = handMadeScore(1, roll(1, 3));
    scheduler.change(planOf(short, null));
    const known = paper.strikes.filter(({ time }) => time < clock.timeOf(scheduler.horizon)).length;
    goOn(steady(0.5));
    expect(paper.strikes.slice(known).map(({ stroke }) => stroke)).toEqual(
      short.notes.slice(0, paper.strikes.length - known),
    );
    expect(paper.strikes.length).toBeGreaterThan(known);
  });

  test("a loop let go plays on to the end of the song, and then it is over", () => {
    const score = handMadeScore(2, roll(2, 7));
    const { paper, goOn, scheduler } = playing(score, span(0, 960));
    goOn(steady(1.3));
    expect(scheduler.end()).toBeNull();
    scheduler.change(planOf(score, null));
    goOn(steady(4));
    const ticks = paper.strikes.map(({ stroke }) => stroke.tick);
    expect(ticks).toEqual([
      0,
      240,
      480,
      720,
      0,
      240,
      480,
      720,
      ...score.notes.map((note) => note.tick),
    ]);
    expect(scheduler.songTickAt(scheduler.end() ?? tick(-1))).toBe(score.length);
  });

  test("what is shown follows the loop that was heard, not the one that comes", () => {
    const score = handMadeScore(4, roll(4, 7));
    const { goOn, scheduler, clock, audio } = playing(score, span(0, 1920));
    goOn(steady(1));
    const heard = clock.tickAt(seconds(audio.time));
    scheduler.change(planOf(score, span(0, 960)));
    expect(scheduler.songTickAt(heard)).toBeCloseTo(heard, 9);
  });

  test("a change of tempo is in effect within an eighth, also at 320 quarters a minute, and makes no leap", () => {
    const fast = fc.integer({ min: 100, max: 160 });
    fc.assert(
      fc.property(anySteps, fc.integer({ min: 10, max: 160 }), fast, (steps, tempo, before) => {
        const score = handMadeScore(200, roll(200, 7), rhythm(200));
        const { audio, paper, goOn, setTempo, clock, scheduler } = playing(score);
        setTempo(before);
        goOn(steps);
        const asked = audio.time;
        const place = clock.tickAt(seconds(asked));
        setTempo(tempo);
        expect(clock.tickAt(seconds(asked))).toBe(place);
        goOn(steady(1));
        const eighth = 15 / before;
        expect(SETTLED).toBeLessThan(eighth);
        const perTick = 60 / (tempo * 960);
        const later = paper.strikes.filter(({ time }) => time >= asked + eighth);
        for (const { stroke, time } of later) {
          const since = clock.tickAt(seconds(asked + eighth));
          expect(time - (asked + eighth)).toBeCloseTo((stroke.tick - since) * perTick, 9);
        }
        const strokes = [...score.notes, ...score.hits].filter(
          ({ tick: at }) => at < scheduler.horizon,
        );
        expect(paper.strikes).toHaveLength(strokes.length);
        expect(new Set(paper.strikes.map(({ stroke }) => stroke)).size).toBe(strokes.length);
      }),
      { numRuns: 40 },
    );
  });

  test("a slide and an end that were told already move along with a new tempo", () => {
    const glide = { from: 2, to: 3, toFret: 9 };
    const pluck: Pluck = { at: 0, string: 2, fret: 5, lasts: 5, glide };
    const { paper, goOn, setTempo, clock } = playing(handMadeScore(2, [pluck]));
    goOn(steady(0.2));
    expect(paper.bendsAndStops.length).toBeGreaterThan(3);
    setTempo(50);
    goOn(steady(3));
    const [bends, stops] = [
      paper.bendsAndStops.filter((each) => each.kind === "bend"),
      paper.bendsAndStops.filter((each) => each.kind === "stop"),
    ];
    expect(bends.map(({ semitones }) => semitones)).toEqual([1, 2, 3, 4]);
    expect(bends.at(-1)?.time).toBeCloseTo(clock.timeOf(tick(720)), 9);
    expect(stops.map(({ time }) => time)).toEqual([expect.closeTo(clock.timeOf(tick(1200)), 9)]);
  });

  test("a count-in before each round clicks on the beat, and is followed by the loop on its beat", () => {
    const score = handMadeScore(4, roll(4, 7));
    const { paper, goOn, scheduler } = playing(score, span(1920, 2880), 1920, 1, 1);
    goOn(steady(6));
    const inTicks = paper.strikes.map(({ stroke, time }) => [
      "part" in stroke ? stroke.part : "banjo",
      Math.round((time - START) / TICK),
    ]);
    const round = (from: number) => [
      ["click", from - 1920],
      ["click", from - 960],
      ...[0, 240, 480, 720].map((at) => ["banjo", from + at]),
    ];
    const rounds = [round(0), round(960 + 1920), round(2 * 2880)].flat();
    expect(inTicks.slice(0, rounds.length)).toEqual(rounds);
    expect(scheduler.countsInTo(tick(1000))).toBe(1920);
    expect(scheduler.songTickAt(tick(1000))).toBe(1920 - 1880);
    expect(scheduler.countsInTo(tick(2880))).toBeNull();
  });

  test("a new score in a count-in between rounds leaves the clicks and the place where it leads as they are", () => {
    const score = handMadeScore(4, roll(4, 7));
    const loop = span(1920, 2880);
    const { paper, goOn, scheduler, audio, clock } = playing(score, loop, 1920, 0, 1);
    goOn(steady(1));
    expect(scheduler.countsInTo(tick(clock.tickAt(seconds(audio.time))))).toBe(1920);
    scheduler.change(planOf(handMadeScore(4, roll(4, 9)), loop, 1));
    goOn(steady(1.2));
    const ticks = paper.strikes.map(({ time }) => Math.round((time - START) / TICK));
    expect(ticks.slice(0, 10)).toEqual([0, 240, 480, 720, 960, 1920, 2880, 3120, 3360, 3600]);
  });

  test("silent bars are counted on from round to round, also over a new score in mid-round", () => {
    const score = handMadeScore(6, roll(6, 7), rhythm(6));
    const loop = span(1920, 3 * 1920);
    for (const changes of [false, true]) {
      const { paper, goOn, scheduler } = playing(score, loop, 1920, 0, 0, { play: 2, rest: 3 });
      for (let step = 0; step < 16; step += 1) {
        goOn(steady(0.75));
        if (changes) {
          scheduler.change(planOf(score, loop, 0, { play: 2, rest: 3 }));
        }
      }
      const bars = new Set(
        paper.strikes.map(({ time }) => Math.floor((time - START) / (1920 * TICK) + 1e-6)),
      );
      // Two bars with the band, three without, for the ten bars and a bit that were handed out.
      expect([...bars].toSorted((a, b) => a - b)).toEqual([0, 1, 5, 6, 10]);
    }
  });

  test("another loop counts its silent bars anew", () => {
    const score = handMadeScore(6, roll(6, 7));
    const silent = { play: 1, rest: 1 };
    const { paper, goOn, scheduler } = playing(score, span(0, 1920), 0, 0, 0, silent);
    goOn(steady(1.3));
    scheduler.change(planOf(score, span(1920, 3840), 0, silent));
    const cut = scheduler.horizon;
    goOn(steady(4));
    const later = paper.strikes.filter(({ time }) => (time - START) / TICK > cut - 1e-6);
    expect(later.length).toBeGreaterThan(8);
    expect(later.every(({ stroke }) => stroke.tick >= 1920 && stroke.tick < 3840)).toBe(true);
  });

  test("a feel that is changed again and again while it plays neither loses nor doubles a stroke", () => {
    const amount = fc.double({ min: 0, max: 1, noNaN: true });
    const anyChanges = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 12 }), fc.record({ bounce: amount, human: amount })),
      { minLength: 1, maxLength: 60 },
    );
    const written = handMadeScore(24, roll(24, 7), rhythm(24));
    const playerOf = (stroke: Note | Hit) => ("part" in stroke ? stroke.part : "banjo");
    fc.assert(
      fc.property(anyChanges, (changes) => {
        const number = new Map<Note | Hit, number>();
        const felt = (feel: { readonly bounce: number; readonly human: number }) => {
          const score = perform(written, { feel, practice: { mix: "all" } });
          const count = new Map<string, number>();
          for (const stroke of [...score.notes, ...score.hits]) {
            const next = count.get(playerOf(stroke)) ?? 0;
            number.set(stroke, next);
            count.set(playerOf(stroke), next + 1);
          }
          return score;
        };
        const { paper, goOn, scheduler, setTempo } = playing(felt({ bounce: 0, human: 0 }));
        for (const [steps, feel] of changes) {
          goOn(Array.from({ length: steps }, () => 0.02));
          scheduler.change(planOf(felt(feel)));
          setTempo(100);
        }
        goOn(steady(1));
        for (const player of ["banjo", "bass", "guitar", "chop"]) {
          const struck = paper.strikes
            .map(({ stroke }) => stroke)
            .filter((stroke) => playerOf(stroke) === player)
            .map((stroke) => number.get(stroke));
          expect(struck.length).toBeGreaterThan(0);
          expect(struck).toEqual(struck.map((_, index) => index));
        }
      }),
    );
  });

  test("an hour of play drifts by nothing, and remembers no more at its end than at its beginning", () => {
    const score = handMadeScore(12, roll(12, 7), rhythm(12));
    const { audio, paper, goOn, scheduler } = playing(score, span(0, score.length));
    const strokes = score.notes.length + score.hits.length;
    let [heard, most, worst] = [0, 0, 0];
    for (let step = 0; audio.time < START + 3600; step += 1) {
      goOn([0.013 + (0.15 * (step % 7)) / 7]);
      const round = Math.floor(heard / strokes);
      for (const each of paper.strikes) {
        const at = Math.round((each.time - START) / TICK);
        worst = Math.max(worst, Math.abs(each.time - (START + at * TICK)));
        expect((at - each.stroke.tick) % score.length).toBe(0);
      }
      heard += paper.strikes.length;
      expect(Math.floor(heard / strokes) - round).toBeLessThanOrEqual(1);
      paper.told.length = 0;
      most = Math.max(most, scheduler.pending);
    }
    // 3600 s and the half second ahead, at 1600 ticks a second.
    const rounds = (3600.5 * 1600) / score.length;
    expect(Math.abs(heard / strokes - rounds)).toBeLessThan(0.1);
    expect(worst).toBeLessThan(1e-6);
    expect(most).toBeLessThan(80);
  });

  test("a day of play is as the hour was: nothing is lost, doubled or piled up", () => {
    const score = handMadeScore(12, roll(12, 7), rhythm(12));
    const { audio, paper, goOn, scheduler } = playing(score, span(0, score.length));
    const strokes = score.notes.length + score.hits.length;
    const DAY = 24 * 3600;
    let heard = 0;
    const most = [0, 0];
    while (audio.time < START + DAY) {
      // A step as long as it may be: a page in the background is called less often.
      goOn([0.4]);
      heard += paper.strikes.length;
      paper.told.length = 0;
      const half = audio.time < START + DAY / 2 ? 0 : 1;
      most[half] = Math.max(most[half] ?? 0, scheduler.pending);
    }
    const rounds = ((DAY + 0.5) * 1600) / score.length;
    expect(Math.abs(heard / strokes - rounds)).toBeLessThan(0.2);
    expect(most[1]).toBeLessThanOrEqual(most[0] ?? 0);
  });
});
