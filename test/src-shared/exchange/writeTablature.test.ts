import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { writeTablature } from "../../../src-shared/exchange/writeTablature.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { tick } from "../../../src-shared/units.ts";
import { demoWalks } from "./demoWalks.ts";

const named = () => "shape";

describe("every demo song as text tablature", () => {
  for (const [name, walk] of demoWalks) {
    const lines = writeTablature(walk, named).split("\n");

    test(`${name}: is at most 80 columns wide, all strings of a system alike`, () => {
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
      const strings = lines.filter((line) => /^[A-Ga-g]#? *\|/.test(line));
      expect(strings.length % 5).toBe(0);
      for (let at = 0; at < strings.length; at += 5) {
        expect(new Set(strings.slice(at, at + 5).map((line) => line.length)).size).toBe(1);
      }
    });

    test(`${name}: has each note's fret on its string, in the order of the song`, () => {
      const strings = lines.filter((line) => /^[A-Ga-g]#? *\|/.test(line));
      for (let string = 1; string <= 5; string += 1) {
        const own = strings.filter((_, at) => at % 5 === string - 1).join("");
        const frets = [...own.matchAll(/\d+/g)].map((match) => Number(match[0]));
        expect(frets).toEqual(
          walk.score.notes.filter((note) => note.string === string).map((note) => note.fret),
        );
      }
    });
  }
});

describe("text tablature", () => {
  test("names chords, shapes and fingers over and under the strings, and marks slides", () => {
    const walk = chartToScore("Title: Crumbly Step\n[A]\n| G | A | N.C. |", wholeNeckPlan, null);
    const text = writeTablature(walk, ({ chord }) => `${chord.name} form`);
    expect(text).toContain("Crumbly Step\nKey G, 4/4, 100 quarter notes a minute, tuning open G\n");
    expect(text).toContain("\n[A]\n");
    expect(text).toMatch(/^ {4}G {24}A {24}N\.C\.$/m);
    expect(text).toMatch(/^ {4}G form {19}A form$/m);
    expect(text).toMatch(/^ {4} T {2}I {2}M /m);
    expect(text).toMatch(/^G {2}\|.*\|[/\\]\d/m);
  });

  test("marks the fingers of just the notes that are let go, and says what the mark is", () => {
    const walk = chartToScore("Tempo: 150\n| G | A | D | Bb |", wholeNeckPlan, null);
    const marks = writeTablature(walk, named)
      .split("\n")
      .slice(4)
      .join("\n")
      .match(/[TIM]'/g);
    const letGo = walk.score.notes.filter((note) => note.letGo).length;
    expect(letGo).toBeGreaterThan(0);
    expect(marks).toHaveLength(letGo);
  });

  test("gives sixteenths a place of their own where a song has them", () => {
    const walk = chartToScore("| G |", wholeNeckPlan, null);
    const [first, ...others] = walk.score.notes;
    if (first === undefined) throw new Error("nothing is struck");
    const notes = [first, { ...first, tick: tick(first.tick + 120) }, ...others];
    const text = writeTablature({ ...walk, score: { ...walk.score, notes } }, named);
    const fret = `-${first.fret}`.padEnd(3, "-");
    expect(text).toContain(`|${fret}${fret}---`);
  });
});
