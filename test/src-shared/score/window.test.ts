import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { indexAt, startingIn } from "../../../src-shared/score/window.ts";
import { tick } from "../../../src-shared/units.ts";

const small = fc.integer({ min: -50, max: 400 });
/** Ticks in order, some of them the same, as the strings of a pinch have. */
const anyEvents = fc
  .array(small, { maxLength: 60 })
  .map((ticks) => ticks.toSorted((a, b) => a - b).map((at) => ({ tick: tick(at) })));

/** Stretches one after another, with gaps between some. */
const anyStretches = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 1, max: 9 })), {
    maxLength: 30,
  })
  .map((parts) => {
    let at = 0;
    return parts.map(([gap, length]) => {
      const start = at + gap;
      at = start + length;
      return { start: tick(start), length: tick(length) };
    });
  });

describe("what starts in a span", () => {
  test("is what a look at every event finds", () => {
    fc.assert(
      fc.property(anyEvents, small, small, (events, start, end) => {
        const plain = events.filter((event) => event.tick >= start && event.tick < end);
        expect(startingIn(events, { start: tick(start), end: tick(end) })).toEqual(plain);
      }),
    );
  });

  test("in spans that follow each other is each event once", () => {
    fc.assert(
      fc.property(anyEvents, fc.array(small, { minLength: 1 }), (events, cuts) => {
        const edges = [-51, ...cuts.toSorted((a, b) => a - b), 401];
        const met = edges
          .slice(1)
          .flatMap((end, index) =>
            startingIn(events, { start: tick(edges[index] ?? 0), end: tick(end) }),
          );
        expect(met).toEqual(events);
      }),
    );
  });

  test("includes the span's start and not its end", () => {
    const events = [{ tick: tick(240) }, { tick: tick(480) }];
    expect(startingIn(events, { start: tick(240), end: tick(480) })).toEqual([{ tick: 240 }]);
  });

  test("is nothing in a span that runs backward", () => {
    const events = [{ tick: tick(240) }];
    expect(startingIn(events, { start: tick(300), end: tick(200) })).toEqual([]);
  });
});

describe("the stretch at a tick", () => {
  test("is the one that a look at every stretch finds", () => {
    fc.assert(
      fc.property(anyStretches, small, (stretches, at) => {
        const plain = stretches.findIndex(
          ({ start, length }) => start <= at && at < start + length,
        );
        expect(indexAt(stretches, tick(at))).toBe(plain);
      }),
    );
  });

  test("is none in a gap, before the first and after the last", () => {
    const stretches = [
      { start: tick(10), length: tick(5) },
      { start: tick(20), length: tick(7) },
    ];
    expect([9, 10, 14, 15, 19, 20, 26, 27].map((at) => indexAt(stretches, tick(at)))).toEqual([
      -1, 0, 0, -1, -1, 1, 1, -1,
    ]);
  });
});
