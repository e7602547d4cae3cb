import { expect, test } from "vitest";
import { SHAPE_COLUMNS, shapeDots } from "../../../src-renderer/geometry/shapeDots.ts";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { qualityTable } from "../../../src-shared/harmony/qualityTable.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { fret } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";

const neck = neckFor(tunings[0], fret(0));
const whole = { low: fret(1), high: fret(22) };

test("the D shape is drawn from its index finger, with its root in the middle", () => {
  // D shape at r-1, r, r+1 on strings 3-2-1: common practice, no published source.
  const d = voicingsOf(makeChord("G", ""), neck, whole, "3-2-1").find(
    ({ shape, position }) => shape === "D" && position === 7,
  );
  if (!d) throw new Error("no D shape of G at fret 7");
  expect(shapeDots(d)).toEqual([
    { string: 1, column: 2, finger: 3, root: false },
    { string: 2, column: 1, finger: 2, root: true },
    { string: 3, column: 0, finger: 1, root: false },
  ]);
});

test("every voicing of every quality starts in the first column, and few are wider than the picture", () => {
  const all = qualityTable.flatMap(({ quality }) =>
    voicingsOf(makeChord("G", quality), neck, whole, "3-2-1").map(shapeDots),
  );
  expect(all.length).toBeGreaterThan(50);
  for (const dots of all) expect(Math.min(...dots.map(({ column }) => column))).toBe(0);
  const wide = all.filter((dots) => dots.some(({ column }) => column >= SHAPE_COLUMNS));
  expect(wide.length / all.length).toBeLessThan(0.1);
});
