import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { MOST_EIGHTHS, type Pattern, patternSchema } from "../../../src-shared/roll/pattern.ts";
import {
  densities,
  fifthUses,
  type Picking,
  pickingSchema,
  plainPicking,
  styleNames,
} from "../../../src-shared/roll/picking.ts";

const full: Picking = {
  song: { style: "own:Tin gate", density: "beats" },
  sections: [{ label: "Verse", manner: { style: "vamp", density: "full" }, sung: true }],
  stays: [
    { bar: 3, eighth: 5, time: 1, chord: "Em", manner: { style: "strum", density: "once" } },
    { bar: 4, eighth: 0, time: null, chord: "C", manner: { style: "forward", density: "bars" } },
  ],
  fifth: "cover",
};
const isPicking = (value: unknown): boolean => v.is(pickingSchema, value);
const inStyle = (style: unknown): unknown => ({ ...full, song: { style, density: "full" } });

describe("a picking that comes from a file", () => {
  test("is read as it was written, every part of it", () => {
    for (const picking of [full, plainPicking]) {
      expect(v.parse(pickingSchema, JSON.parse(JSON.stringify(picking)))).toEqual(picking);
    }
  });

  test("has one of the six families or a pattern of the player's own, and no other style", () => {
    expect(styleNames).toEqual([
      "forward",
      "backward",
      "forward-reverse",
      "alternating-thumb",
      "vamp",
      "strum",
    ]);
    for (const style of [...styleNames, "own:Tin gate", `own:${"x".repeat(60)}`]) {
      expect(isPicking(inStyle(style)), style).toBe(true);
    }
    for (const style of [
      "",
      "own",
      "Forward",
      "my own:",
      `own:${"x".repeat(61)}`,
      7,
      null,
      ["vamp"],
    ]) {
      expect(isPicking(inStyle(style)), String(style)).toBe(false);
    }
  });

  test("is refused where a part is missing or of another kind", () => {
    expect(densities).toEqual(["full", "beats", "bars", "once"]);
    expect(fifthUses).toEqual(["never", "cover", "always"]);
    const [section] = full.sections;
    const [stay] = full.stays;
    const wrong: readonly unknown[] = [
      { ...full, song: {} },
      { ...full, song: { style: "vamp" } },
      { ...full, song: { style: "vamp", density: "thick" } },
      { ...full, fifth: "often" },
      { ...full, sections: [{}] },
      { ...full, sections: [{ ...section, label: "x".repeat(201) }] },
      { ...full, sections: [{ ...section, sung: "yes" }] },
      { ...full, sections: [{ ...section, manner: "vamp" }] },
      { ...full, sections: Array.from({ length: 501 }, () => section) },
      { ...full, stays: [{}] },
      { ...full, stays: [{ ...stay, bar: -1 }] },
      { ...full, stays: [{ ...stay, eighth: 0.5 }] },
      { ...full, stays: [{ ...stay, time: "once" }] },
      { ...full, stays: [{ ...stay, chord: "C".repeat(25) }] },
      { ...full, stays: Array.from({ length: 5001 }, () => stay) },
      {},
    ];
    expect(wrong.filter(isPicking)).toEqual([]);
  });
});

describe("a pattern that comes from a file", () => {
  const pattern: Pattern = {
    name: "Tin gate",
    meter: "6/8",
    strokes: [
      {
        picks: [
          { finger: "T", on: 4 },
          { finger: "M", on: "fifth" },
        ],
        accent: true,
        damped: false,
      },
      { picks: [], accent: false, damped: true },
    ],
  };

  test("is read as it was written, its name without spaces round it", () => {
    expect(v.parse(patternSchema, { ...pattern, name: " Tin gate " })).toEqual(pattern);
  });

  test("is refused where a part is missing or of another kind", () => {
    const [stroke] = pattern.strokes;
    const one = (part: object): unknown => ({ ...pattern, strokes: [{ ...stroke, ...part }] });
    const wrong: readonly unknown[] = [
      {},
      { ...pattern, name: "  " },
      { ...pattern, name: "x".repeat(61) },
      { ...pattern, meter: "5/4" },
      { ...pattern, strokes: [] },
      { ...pattern, strokes: [{}] },
      { ...pattern, strokes: Array.from({ length: MOST_EIGHTHS + 1 }, () => stroke) },
      one({ picks: [{}] }),
      one({ picks: [{ finger: "P", on: 1 }] }),
      one({ picks: [{ finger: "T", on: 5 }] }),
      one({ picks: Array.from({ length: 6 }, () => ({ finger: "T", on: 1 })) }),
      one({ accent: 1 }),
      one({ damped: null }),
    ];
    expect(wrong.filter((value) => v.is(patternSchema, value))).toEqual([]);
  });
});
