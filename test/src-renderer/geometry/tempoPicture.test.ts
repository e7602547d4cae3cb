import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tempoPicture } from "../../../src-renderer/geometry/tempoPicture.ts";
import { bpm } from "../../../src-shared/units.ts";

const day = (number: number, clean: number | null, tried: number) => ({
  day: number,
  clean: clean === null ? null : bpm(clean),
  tried: bpm(tried),
});

describe("a picture of tempo over days", () => {
  test("has days by their distance, tempos upward, and a line from clean day to clean day", () => {
    const { dots, lines, ticks } = tempoPicture([
      day(10, 80, 84),
      day(11, null, 90),
      day(14, 100, 100),
    ]);
    expect(ticks).toEqual([
      { tempo: 80, y: 1 },
      { tempo: 85, y: 0.75 },
      { tempo: 90, y: 0.5 },
      { tempo: 95, y: 0.25 },
      { tempo: 100, y: 0 },
    ]);
    expect(dots).toEqual([
      { x: 0, y: 1, clean: true },
      { x: 0.25, y: 0.5, clean: false },
      { x: 1, y: 0, clean: true },
    ]);
    expect(lines).toEqual([{ from: dots[0], to: dots[2] }]);
  });

  test("has a single day in the middle", () => {
    expect(tempoPicture([day(3, 90, 90)]).dots).toMatchObject([{ x: 0.5 }]);
  });

  test("has everything inside and few lines, whatever the tempos", () => {
    const tempos = fc.array(fc.double({ min: 15, max: 320, noNaN: true }), { minLength: 1 });
    fc.assert(
      fc.property(tempos, (all) => {
        const { dots, ticks } = tempoPicture(all.map((tempo, index) => day(index, tempo, tempo)));
        for (const value of [...dots.flatMap(({ x, y }) => [x, y]), ...ticks.map(({ y }) => y)]) {
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(1);
        }
        expect(ticks.length).toBeLessThanOrEqual(5);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
      }),
    );
  });
});
