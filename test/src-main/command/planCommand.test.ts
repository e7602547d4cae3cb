import { describe, expect, test } from "vitest";
import { readPlanRequest } from "../../../src-main/command/planCommand.ts";

const refused = (args: readonly string[]): string => {
  const request = readPlanRequest(args);
  return request.ok ? "" : request.says;
};

describe("the plan command", () => {
  test("takes a file alone and plans over the whole neck", () => {
    expect(readPlanRequest(["song.txt"])).toEqual({
      ok: true,
      file: "song.txt",
      more: [],
      tuning: null,
      tempo: null,
      alternatives: 1,
      picking: {
        song: { style: "forward", density: "full" },
        sections: [],
        stays: [],
        fifth: "never",
      },
      settings: {
        playKey: null,
        aim: "ease",
        shapes: ["F", "D", "barre"],
        fretLow: 1,
        fretHigh: 22,
        goesRound: false,
        perChord: 1,
        hand: "default",
        alike: false,
        pins: [],
        strings: "3-2-1",
      },
    });
  });

  test("takes every option", () => {
    const args = [
      "-",
      "--key",
      "Bb",
      "--shapes",
      "barre,F",
      "--frets",
      "5-17",
      "--aim",
      "travel",
      "--loop",
      "--two-per-chord",
      "--alike",
      "--strings",
      "4-3-2-1",
      "--tuning",
      "double C",
      "--hand",
      "skilled",
      "--tempo",
      "96.5",
      "--alternatives",
      "3",
      "--style",
      "alternating-thumb",
      "--density",
      "beats",
      "--fifth",
      "always",
    ];
    expect(readPlanRequest(args)).toEqual({
      ok: true,
      file: "-",
      more: [],
      tuning: "double C",
      tempo: 96.5,
      alternatives: 3,
      picking: {
        song: { style: "alternating-thumb", density: "beats" },
        sections: [],
        stays: [],
        fifth: "always",
      },
      settings: {
        playKey: "Bb",
        aim: "travel",
        shapes: ["F", "barre"],
        fretLow: 5,
        fretHigh: 17,
        goesRound: true,
        perChord: 2,
        hand: "skilled",
        alike: true,
        pins: [],
        strings: "4-3-2-1",
      },
    });
  });

  test("says in words what is wrong with each wrong use", () => {
    expect(refused([])).toContain("one chart file");
    expect(refused(["a.txt", "b.txt"])).toContain("one chart file");
    expect(refused(["a.txt", "--key", "Q"])).toContain('"Q" is not one');
    expect(refused(["a.txt", "--shapes", "F,Z"])).toContain('"Z" is none of them');
    expect(refused(["a.txt", "--frets", "9-3"])).toContain('"9-3" is not that');
    expect(refused(["a.txt", "--frets", "0-12"])).toContain("from 1 to 22");
    expect(refused(["a.txt", "--frets", "5-23"])).toContain("from 1 to 22");
    expect(refused(["a.txt", "--aim", "speed"])).toContain("ease, steady, travel");
    expect(refused(["a.txt", "--strings", "5-4"])).toContain('"5-4" is none of them');
    expect(refused(["a.txt", "--tuning", "open Q"])).toContain("double C");
    expect(refused(["a.txt", "--hand", "third"])).toContain('"third" is none of them');
    expect(refused(["a.txt", "--tempo", "5"])).toContain("from 15 to 320");
    expect(refused(["a.txt", "--alternatives", "two"])).toContain("from 1 to 9");
    expect(refused(["a.txt", "--style", "own:Mine"])).toContain("forward, backward");
    expect(refused(["a.txt", "--density", "half"])).toContain("full, beats, bars, once");
    expect(refused(["a.txt", "--fifth", "maybe"])).toContain("never, cover, always");
    expect(refused(["a.txt", "--colour", "red"])).toContain("--colour");
  });
});
