import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  countInsOf,
  countsInTo,
  endOf,
  loopWithin,
  type Run,
  type Slice,
  slicesOf,
  songTickAt,
} from "../../../src-shared/score/loop.ts";
import { type Tick, tick } from "../../../src-shared/units.ts";

const anyRun: fc.Arbitrary<Run> = fc
  .record({
    end: fc.integer({ min: 1, max: 60 }),
    start: fc.integer({ min: 0, max: 70 }),
    loop: fc.option(fc.tuple(fc.integer({ min: -5, max: 70 }), fc.integer({ min: -5, max: 70 }))),
    countIn: fc.constantFrom(0, 0, 1, 7, 20),
  })
  .map(({ end, start, loop, countIn }) => ({
    countIn: tick(countIn),
    end: tick(end),
    start: tick(start),
    loop: loop && { start: tick(loop[0]), end: tick(loop[1]) },
  }));

/** Slices tick by tick: which tick of the song at which unrolled position. */
const unrolledOf = (slices: readonly Slice[]): readonly (readonly [number, number])[] =>
  slices.flatMap(({ from, to, offset }) =>
    Array.from({ length: to - from }, (_, index) => [from + index + offset, from + index] as const),
  );

type Way = readonly (readonly [number, number])[];

/** The way through the song walked one tick at a time, and the clicks' ticks on the way. */
const walked = (run: Run, from: number, to: number): { readonly song: Way; readonly in: Way } => {
  const loop = loopWithin(run.loop, run.end);
  const song: (readonly [number, number])[] = [];
  const counted: (readonly [number, number])[] = [];
  let at: number = loop && run.start >= loop.end ? loop.start : run.start;
  let left = 0;
  for (
    let position = Math.min(0, from);
    position < to && (position < 0 || at < run.end);
    position += 1
  ) {
    const before = position < 0 ? -position : left;
    if (position >= from) {
      (before > 0 ? counted : song).push([position, before > 0 ? -before : at]);
    }
    if (position >= 0 && left === 0) {
      at += 1;
      if (loop && at === loop.end) {
        at = loop.start;
        left = run.countIn;
      }
    } else if (position >= 0) {
      left -= 1;
    }
  }
  return { song, in: counted };
};

const position = fc.integer({ min: -30, max: 400 });

describe("slices of a run", () => {
  test("are the way walked one tick at a time: nothing doubled, nothing lost", () => {
    fc.assert(
      fc.property(anyRun, position, position, (run, a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        expect(unrolledOf(slicesOf(run, tick(from), tick(to)))).toEqual(walked(run, from, to).song);
        expect(unrolledOf(countInsOf(run, tick(from), tick(to)))).toEqual(walked(run, from, to).in);
      }),
    );
  });

  test("of neighbouring intervals together are those of both, wherever the cut", () => {
    fc.assert(
      fc.property(anyRun, fc.array(position, { minLength: 2, maxLength: 12 }), (run, cuts) => {
        const edges = cuts.toSorted((a, b) => a - b).map(tick);
        const parts = edges
          .slice(1)
          .flatMap((to, index) => unrolledOf(slicesOf(run, edges[index] ?? tick(0), to)));
        const [first = tick(0), last = tick(0)] = [edges[0], edges.at(-1)];
        expect(parts).toEqual(unrolledOf(slicesOf(run, first, last)));
      }),
    );
  });

  test("say the same places as songTickAt", () => {
    fc.assert(
      fc.property(anyRun, position, (run, at) => {
        const [slice] = slicesOf(run, tick(at), tick(at + 1));
        const place = songTickAt(run, tick(at));
        expect(slice ? slice.from : place).toBe(place);
      }),
    );
  });

  test("go round one bar as often as asked", () => {
    const run = {
      start: tick(1920),
      loop: { start: tick(1920), end: tick(3840), countIn: tick(0) },
      end: tick(7680),
      countIn: tick(0),
    };
    expect(slicesOf(run, tick(1800), tick(4000))).toEqual([
      { from: 3720, to: 3840, offset: -1920, round: 0 },
      { from: 1920, to: 3840, offset: 0, round: 1 },
      { from: 1920, to: 2080, offset: 1920, round: 2 },
    ]);
  });

  test("are none in the count-in", () => {
    const run = { start: tick(960), loop: null, end: tick(3840), countIn: tick(0) };
    expect(slicesOf(run, tick(-1920), tick(0))).toEqual([]);
    expect(slicesOf(run, tick(-1920), tick(100))).toEqual([
      { from: 960, to: 1060, offset: -960, round: 0 },
    ]);
  });

  test("stop at the end of a song that has no loop", () => {
    const run = { start: tick(3000), loop: null, end: tick(3840), countIn: tick(0) };
    expect(slicesOf(run, tick(0), tick(5000))).toEqual([
      { from: 3000, to: 3840, offset: -3000, round: 0 },
    ]);
    expect(slicesOf(run, tick(840), tick(5000))).toEqual([]);
    expect(endOf(run)).toBe(840);
  });
});

describe("a place in the song", () => {
  const loop = { start: tick(480), end: tick(1440) };

  test("in the count-in lies before where the run starts", () => {
    const from = (start: number): Run => ({
      start: tick(start),
      loop,
      end: tick(3840),
      countIn: tick(0),
    });
    expect(songTickAt(from(0), tick(-100))).toBe(-100);
    expect(songTickAt(from(960), tick(-100))).toBe(860);
  });

  test("runs up to a loop from before it and stays in it", () => {
    const run = { start: tick(0), loop, end: tick(3840), countIn: tick(0) };
    const places = [0, 479, 480, 1439, 1440, 2399, 2400].map(
      (at): Tick => songTickAt(run, tick(at)),
    );
    expect(places).toEqual([0, 479, 480, 1439, 480, 1439, 480]);
    expect(endOf(run)).toBeNull();
  });

  test("never passes the end of the song", () => {
    expect(
      songTickAt({ start: tick(0), loop: null, end: tick(700), countIn: tick(0) }, tick(9000)),
    ).toBe(700);
  });

  test("between two ticks is not rounded, for the screen moves evenly", () => {
    expect(
      songTickAt({ start: tick(0), loop, end: tick(3840), countIn: tick(0) }, tick(1440.25)),
    ).toBe(480.25);
  });
});

describe("a count-in before each round", () => {
  const loop = { start: tick(480), end: tick(1440) };
  const run: Run = { start: tick(0), loop, end: tick(3840), countIn: tick(100) };

  test("comes after each round and not before the first, which had its own", () => {
    expect(slicesOf(run, tick(0), tick(2700))).toEqual([
      { from: 0, to: 1440, offset: 0, round: 0 },
      { from: 480, to: 1440, offset: 1060, round: 1 },
      { from: 480, to: 580, offset: 2120, round: 2 },
    ]);
  });

  test("leads to the loop's start, and is shown as far before it as it still lasts", () => {
    expect([1439, 1440, 1539, 1540].map((at) => countsInTo(run, tick(at)))).toEqual([
      null,
      480,
      480,
      null,
    ]);
    expect(songTickAt(run, tick(1440))).toBe(380);
    expect(countsInTo(run, tick(-1))).toBe(0);
  });

  test("is part of no run that does not go round", () => {
    expect(countInsOf({ ...run, loop: null }, tick(0), tick(9000))).toEqual([]);
  });
});

describe("a loop", () => {
  test("that reaches beyond the song is cut to it, and outside the song is none", () => {
    expect(loopWithin({ start: tick(-90), end: tick(5000) }, tick(3840))).toEqual({
      start: 0,
      end: 3840,
    });
    expect(loopWithin({ start: tick(4000), end: tick(5000) }, tick(3840))).toBeNull();
    expect(loopWithin({ start: tick(900), end: tick(900) }, tick(3840))).toBeNull();
  });
});
