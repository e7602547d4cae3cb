import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { writeChart } from "../../../src-shared/chart/writeChart.ts";
import { degreeSymbol } from "../../../src-shared/harmony/degree.ts";
import {
  type Calls,
  callDegree,
  calledAt,
  degreeCall,
  flatten,
  takeBack,
  withCall,
} from "../../../src-shared/jam/call.ts";
import { calledPins } from "../../../src-shared/jam/calledPins.ts";
import { calledSong } from "../../../src-shared/jam/calledSong.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { bpm, fret } from "../../../src-shared/units.ts";
import { plainRequest } from "../../laws/plainRequest.ts";

const symbolAt = (calls: Calls, bar: number): string => {
  const called = calledAt(calls, bar);
  if (!called) return "silence";
  return called.call ? degreeSymbol(called.call) : "N.C.";
};
const setting = {
  key: { tonic: "G", mode: "major" },
  meter: { beats: 3, unit: 4 },
  tempo: bpm(96),
} as const;

describe("a call", () => {
  test("holds from its bar on, and before the first there is silence", () => {
    const calls = callDegree(callDegree([], 1, false, 2), 4, false, 5);
    expect([0, 1, 2, 4, 5, 99].map((bar) => symbolAt(calls, bar))).toEqual([
      "silence",
      "silence",
      "1",
      "1",
      "4",
      "4",
    ]);
  });

  test("gives way to the next one for the same bar", () => {
    const calls = callDegree(callDegree(callDegree([], 1, false, 0), 4, false, 3), 5, false, 3);
    expect(calls.map(({ bar }) => [bar, symbolAt(calls, bar)])).toEqual([
      [0, "1"],
      [3, "5"],
    ]);
  });

  test("made again is the seventh, and once more the plain chord", () => {
    const once = callDegree([], 5, false, 3);
    const twice = callDegree(once, 5, false, 3);
    expect(
      [once, twice, callDegree(twice, 5, false, 3)].map((calls) => symbolAt(calls, 3)),
    ).toEqual(["5", "5-7", "5"]);
  });

  test("of the chord that holds is its seventh from the next bar on", () => {
    const calls = callDegree(callDegree([], 1, false, 0), 1, false, 4);
    expect([3, 4].map((bar) => symbolAt(calls, bar))).toEqual(["1", "1-7"]);
  });

  test("with Shift is minor, and again its minor seventh", () => {
    const minor = callDegree([], 2, true, 1);
    expect(symbolAt(minor, 1)).toBe("2m");
    expect(symbolAt(callDegree(minor, 2, true, 1), 1)).toBe("2m7");
    expect(symbolAt(callDegree(minor, 2, false, 1), 1)).toBe("2");
  });

  test("can be lowered by a half step and back, but the 1 and the 4 cannot", () => {
    const seven = callDegree([], 7, false, 1);
    const flat = flatten(seven, 1);
    expect([symbolAt(flat, 1), symbolAt(flatten(flat, 1), 1)]).toEqual(["b7", "7"]);
    const four = callDegree([], 4, false, 1);
    expect(flatten(four, 1)).toBe(four);
    expect(flatten([], 1)).toEqual([]);
  });

  test("taken back is as if it had not been made", () => {
    const one = callDegree([], 1, false, 0);
    expect(takeBack(callDegree(one, 4, false, 3))).toEqual(one);
    expect(takeBack([])).toEqual([]);
  });

  test("of what holds already is none", () => {
    const one = withCall([], degreeCall(1, ""), 0);
    expect(withCall(one, degreeCall(1, ""), 4)).toEqual(one);
    const silent = withCall(one, null, 4);
    expect(withCall(silent, null, 6)).toEqual(silent);
  });
});

describe("what was called as a song", () => {
  const calls = withCall(callDegree(callDegree([], 1, false, 2), 5, false, 4), null, 6);

  test("is read back from its chart without a note, bar for bar", () => {
    const song = calledSong(calls, setting, "Called in G", 2, 7);
    const { value, notes } = readChart(writeChart(song));
    expect(notes).toEqual([]);
    expect(value).toEqual(song);
    const bars = value.sections.flatMap((section) => section.bars);
    expect(bars.map(({ stays }) => stays.map((stay) => stay.chord?.name ?? stay.symbol))).toEqual([
      ["G"],
      ["G"],
      ["D"],
      ["D"],
      ["N.C."],
    ]);
  });

  test("is silent before the first call, and empty where it ends before it starts", () => {
    const bars = (from: number, to: number) =>
      calledSong(calls, setting, "Called", from, to).sections[0]?.bars ?? [];
    expect(bars(0, 3).map(({ stays }) => stays[0]?.symbol)).toEqual(["N.C.", "N.C.", "1"]);
    expect(bars(3, 1)).toEqual([]);
  });
});

test("a later call moves no placement that came before it", () => {
  const neck = neckFor(tunings[0], fret(0));
  const request = plainRequest(17);
  let calls: Calls = [];
  for (const [bar, number] of [1, 4, 5, 1, 6, 2, 5].entries()) {
    const before = calledPins(calls, setting.key, neck, request);
    calls = callDegree(calls, number, false, 2 * bar);
    const after = calledPins(calls, setting.key, neck, request);
    expect(after.slice(0, -1)).toEqual(before);
    expect(after).toHaveLength(bar + 1);
  }
});
