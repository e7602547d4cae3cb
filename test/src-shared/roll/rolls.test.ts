import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitRolls } from "../../../src-shared/roll/fitRolls.ts";
import { breachesOf, fingersTwice } from "../../../src-shared/roll/rollRules.ts";
import {
  cells,
  oneMeasureRoll,
  rolls,
  twoMeasureRoll,
  waltzRoll,
} from "../../../src-shared/roll/rollTable.ts";

const fingersOf = (strokes: readonly (readonly { finger: string }[])[]) =>
  strokes.map((stroke) => stroke.map((pick) => pick.finger).join("")).join("");

const anyStay = fc
  .record({
    offset: fc.integer({ min: 0, max: 7 }),
    length: fc.integer({ min: 2, max: 64 }),
    eighthsPerBar: fc.constantFrom(4, 6, 8),
  })
  .map((stay) => ({ ...stay, offset: stay.offset % stay.eighthsPerBar }));

describe("every roll", () => {
  test("starts on the thumb, ends off it and strikes no finger twice running", () => {
    for (const roll of rolls) {
      expect(breachesOf(roll), roll.name).toEqual([]);
    }
  });

  test("joins to every other without striking a finger twice running", () => {
    for (const first of rolls) {
      for (const second of rolls) {
        expect(fingersTwice([...first.strokes, ...second.strokes])).toEqual([]);
      }
    }
  });

  test("keeps the thumb on string 3, the index on 2 and the middle on 1", () => {
    // Home strings of the closed triad: common practice, no published source.
    const home = { T: 3, I: 2, M: 1 };
    for (const pick of rolls.flatMap((roll) => roll.strokes.flat())) {
      expect(pick.string).toBe(home[pick.finger]);
    }
  });
});

describe("the roll rules", () => {
  const t = { finger: "T", string: 3 } as const;
  const i = { finger: "I", string: 2 } as const;
  test("find each kind of breach where it is", () => {
    expect(breachesOf({ name: "wrong", strokes: [[i], [i], [t]] })).toEqual([
      { rule: "finger-twice", eighth: 1 },
      { rule: "starts-off-thumb", eighth: 0 },
      { rule: "ends-on-thumb", eighth: 2 },
    ]);
  });
});

describe("rolls fitted to a stay", () => {
  test("fill it exactly, start on the thumb and never strike a finger twice running", () => {
    fc.assert(
      fc.property(anyStay, (stay) => {
        const chain = fitRolls(stay);
        const strokes = chain.flatMap((roll) => roll.strokes);
        expect(strokes.length).toBe(stay.length);
        expect(strokes[0]?.[0]?.finger).toBe("T");
        expect(strokes.at(-1)?.some((pick) => pick.finger === "T")).toBe(false);
        expect(fingersTwice(strokes)).toEqual([]);
      }),
    );
  });

  test("put the thumb on each bar line that lies more than one eighth from either end", () => {
    fc.assert(
      fc.property(anyStay, (stay) => {
        const strokes = fitRolls(stay).flatMap((roll) => roll.strokes);
        for (let eighth = 2; eighth < strokes.length - 1; eighth += 1) {
          if ((stay.offset + eighth) % stay.eighthsPerBar === 0) {
            expect(strokes[eighth]?.[0]?.finger).toBe("T");
          }
        }
      }),
    );
  });

  test("of one measure take the second half of the two-measure roll, and of three take two and one", () => {
    // Common practice, no published source.
    expect(oneMeasureRoll.strokes).toEqual(twoMeasureRoll.strokes.slice(8));
    const three = fitRolls({ offset: 0, length: 24, eighthsPerBar: 8 });
    expect(three).toEqual([twoMeasureRoll, oneMeasureRoll]);
  });

  test("give half a measure a pattern of its own, on either half", () => {
    const half = cells.get(4);
    expect(fitRolls({ offset: 0, length: 4, eighthsPerBar: 8 })).toEqual([half]);
    expect(fitRolls({ offset: 4, length: 4, eighthsPerBar: 8 })).toEqual([half]);
  });

  test("fill a waltz measure with one forward roll", () => {
    // Forward roll in 3/4: T I M T I M on strings 3 2 1 3 2 1; derived from method-book practice.
    const [only, ...more] = fitRolls({ offset: 0, length: 6, eighthsPerBar: 6 });
    expect([only, more]).toEqual([waltzRoll, []]);
    expect(fingersOf(waltzRoll.strokes)).toBe("TIMTIM");
  });

  test("pinch what is too short to roll", () => {
    const [only] = fitRolls({ offset: 3, length: 1, eighthsPerBar: 8 });
    expect(fingersOf(only?.strokes ?? [])).toBe("TIM");
  });

  test("join a single eighth before a bar line to the measure after it", () => {
    const lengths = fitRolls({ offset: 7, length: 9, eighthsPerBar: 8 }).map(
      (roll) => roll.strokes.length,
    );
    expect(lengths).toEqual([9]);
  });

  test("take in a single eighth on either side of one measure (found by the law, seed 1431833551)", () => {
    const strokes = fitRolls({ offset: 7, length: 10, eighthsPerBar: 8 }).flatMap(
      (roll) => roll.strokes,
    );
    expect(fingersOf(strokes)).toBe("TIMTIMTITM");
  });

  test("refuse a stay of no length", () => {
    expect(() => fitRolls({ offset: 0, length: 0, eighthsPerBar: 8 })).toThrow("at least 1");
  });
});
