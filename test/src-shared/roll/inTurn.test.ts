import { expect, test } from "vitest";
import type { FitManner } from "../../../src-shared/roll/fitRolls.ts";
import { inTurn } from "../../../src-shared/roll/inTurn.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { type Played, playedOn } from "../../../src-shared/roll/played.ts";

const playing = (
  length: number,
  style: FitManner["style"] = "forward",
  own: readonly Pattern[] = [],
): Played =>
  playedOn(
    { offset: 0, length, meter: "4/4" },
    { style, density: "full", soft: false },
    own,
    "never",
  );

/** The fingers of each chord, a dot between eighths. */
const fingersIn = (run: readonly Played[]): readonly string[] =>
  inTurn(run).map(({ strokes }) =>
    strokes.map(({ picks }) => picks.map(({ finger }) => finger).join("") || "-").join("."),
  );

test("a chord of a single eighth leaves the thumb to the roll after it, and out what has struck", () => {
  expect(fingersIn([playing(3), playing(1), playing(2)])).toEqual(["T.I.M", "I", "T.M"]);
  expect(fingersIn([playing(1), playing(4)])).toEqual(["IM", "T.I.T.M"]);
});

test("chords of a single eighth in a row take turns, and the last one rings in full where it can", () => {
  expect(fingersIn([playing(1), playing(1), playing(1), playing(2)])).toEqual([
    "IM",
    "T",
    "IM",
    "T.M",
  ]);
  expect(fingersIn([playing(3), playing(1)])).toEqual(["T.I.M", "TI"]);
});

test("two pinches of index and middle that meet share their fingers", () => {
  expect(fingersIn([playing(3, "vamp"), playing(1), playing(4)])).toEqual([
    "T.-.M",
    "I",
    "T.I.T.M",
  ]);
});

test("only the joint is changed where one pattern is played several times", () => {
  const twice: Pattern = {
    name: "Gravel",
    meter: "4/4",
    strokes: [
      { picks: [{ finger: "T", on: 3 }], accent: true, damped: false },
      {
        picks: [
          { finger: "I", on: 2 },
          { finger: "M", on: 1 },
        ],
        accent: false,
        damped: false,
      },
    ],
  };
  const gravel = playing(8, "own:Gravel", [twice]);
  expect(gravel.pieces).toHaveLength(4);
  expect(fingersIn([gravel, playing(1), playing(2)])).toEqual(["T.IM.T.IM.T.IM.T.M", "I", "T.M"]);
});

test("chords where nothing changes are the very same values", () => {
  const run = [playing(4), playing(8)];
  expect(inTurn(run)).toEqual(run);
  expect(inTurn(run).every((played, index) => played === run[index])).toBe(true);
  expect(inTurn([])).toEqual([]);
});

test("a stroke that was taken from a pinch is taken from its piece as well", () => {
  const [, single] = inTurn([playing(3), playing(1), playing(2)]);
  expect(single?.pieces.flatMap(({ strokes }) => strokes)).toEqual(single?.strokes);
  expect(single?.pieces[0]).toMatchObject({ name: "pinch", meter: "4/4" });
});

test("a finger that is alone on its stroke stays, though it has just struck", () => {
  const lone: Pattern = {
    name: "Lone",
    meter: "4/4",
    strokes: [
      { picks: [{ finger: "T", on: 3 }], accent: true, damped: false },
      { picks: [{ finger: "T", on: 4 }], accent: false, damped: false },
    ],
  };
  expect(fingersIn([playing(2, "own:Lone", [lone]), playing(4)])).toEqual(["T.T", "T.I.T.M"]);
});
