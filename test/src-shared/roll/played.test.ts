import { describe, expect, test } from "vitest";
import type { FitManner } from "../../../src-shared/roll/fitRolls.ts";
import type { Pattern, PatternPick, PatternStroke } from "../../../src-shared/roll/pattern.ts";
import {
  isOpenStroke,
  onFifth,
  onThird,
  pieceAt,
  playedOn,
} from "../../../src-shared/roll/played.ts";

const stroke = (...picks: readonly PatternPick[]): PatternStroke => ({
  picks,
  accent: true,
  damped: false,
});
const thumb = (on: PatternPick["on"]): PatternPick => ({ finger: "T", on });
const index: PatternPick = { finger: "I", on: 2 };
const middle: PatternPick = { finger: "M", on: 1 };
const picksOf = (strokes: readonly PatternStroke[]): readonly string[] =>
  strokes.map(({ picks }) => picks.map(({ finger, on }) => `${finger}${on}`).join("+"));

/** Thumb on 3, then on the open fifth string, twice; the fingers between. */
const gate: Pattern = {
  name: "Tin gate",
  meter: "2/4",
  strokes: [stroke(thumb(3)), stroke(index), stroke(thumb("fifth")), stroke(middle)],
};
const manner: FitManner = { style: "own:Tin gate", density: "full", soft: false };
const twice = { offset: 0, length: 8, meter: "2/4" } as const;

describe("a stroke on the open fifth string", () => {
  test("moves to string 3 with the same finger, accent and damping", () => {
    expect(onThird(stroke(thumb("fifth"), middle))).toEqual(stroke(thumb(3), middle));
    const damped = { ...stroke(thumb("fifth")), accent: false, damped: true };
    expect(onThird(damped)).toEqual({ ...damped, picks: [thumb(3)] });
  });

  test("is left out where string 3 is struck already", () => {
    expect(onThird(stroke(thumb("fifth"), { finger: "I", on: 3 }, middle))).toEqual(
      stroke({ finger: "I", on: 3 }, middle),
    );
  });

  test("has only its thumb moved when the fifth string takes it", () => {
    expect(onFifth(stroke(thumb(4), index, middle))).toEqual(stroke(thumb("fifth"), index, middle));
  });

  test("leaves the left hand free only where nothing else is struck", () => {
    expect(isOpenStroke(stroke(thumb("fifth")))).toBe(true);
    expect(isOpenStroke(stroke(thumb("fifth"), middle))).toBe(false);
    expect(isOpenStroke(stroke(thumb(3)))).toBe(false);
    expect(isOpenStroke(stroke())).toBe(false);
  });

  test("that has no fifth string in it stays the very same", () => {
    const plain = stroke(thumb(3), middle);
    expect(onThird(plain)).toBe(plain);
  });
});

describe("what is played on a chord", () => {
  const on = (fifth: "never" | "cover" | "always") => playedOn(twice, manner, [gate], fifth);

  test("goes to the fifth string only where the picking always lets it", () => {
    const written = ["T3", "I2", "Tfifth", "M1", "T3", "I2", "Tfifth", "M1"];
    const closed = ["T3", "I2", "T3", "M1", "T3", "I2", "T3", "M1"];
    expect(picksOf(on("always").strokes)).toEqual(written);
    expect(picksOf(on("cover").strokes)).toEqual(closed);
    expect(picksOf(on("never").strokes)).toEqual(closed);
  });

  test("may cover the change by its last stroke on the fifth string alone, where that is wanted", () => {
    expect([on("never").cover, on("cover").cover, on("always").cover]).toEqual([null, 6, null]);
  });

  test("may cover by its very first stroke, and by none where none is written", () => {
    const first = { ...gate, strokes: [stroke(thumb("fifth")), stroke(index), stroke(middle)] };
    const short = { offset: 0, length: 3, meter: "2/4" } as const;
    expect(playedOn(short, manner, [first], "cover").cover).toBe(0);
    const none = { ...gate, strokes: gate.strokes.map(onThird) };
    expect(playedOn(twice, manner, [none], "cover").cover).toBe(null);
  });

  test("has in its pieces the strokes it has in a row", () => {
    for (const played of [on("never"), on("cover"), on("always")]) {
      expect(played.pieces.flatMap(({ strokes }) => strokes)).toEqual(played.strokes);
      expect(played.pieces.length).toBe(2);
    }
  });

  test("is at every eighth one of its pieces, and none past its end", () => {
    const piece = (name: string, eighths: number): Pattern => ({
      ...gate,
      name,
      strokes: Array.from({ length: eighths }, () => stroke(middle)),
    });
    const played = { pieces: [piece("one", 3), piece("two", 2)] };
    expect([0, 2, 3, 4, 5].map((eighth) => pieceAt(played, eighth)?.name ?? null)).toEqual([
      "one",
      "one",
      "two",
      "two",
      null,
    ]);
    expect(pieceAt({ pieces: [] }, 0)).toBe(null);
  });
});
