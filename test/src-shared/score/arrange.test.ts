import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { demoSongTable } from "../../../src-shared/demo/demoSongTable.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

const inDShape = { ...wholeNeckPlan, shapes: ["D"], fretLow: 5, fretHigh: 16 } as const;
const walkOf = (chart: string, settings = wholeNeckPlan) => chartToScore(chart, settings, null);

describe("the banjo's score", () => {
  test("of one bar of G is the one-measure roll, an eighth of 240 ticks a note", () => {
    const { score } = walkOf("Key: G\n| G |", inDShape);
    expect(score.notes.map((note) => note.tick)).toEqual([0, 240, 480, 720, 960, 1200, 1440, 1680]);
    expect(score.notes.map((note) => note.finger).join("")).toBe("TIMTIMTM");
    expect(score.notes.map((note) => note.string).join("")).toBe("32132131");
    // G in the D shape: frets 7-8-9 on strings 3-2-1 (common practice), D4 G4 B4.
    expect(score.notes.slice(0, 3).map((note) => [note.fret, note.midi])).toEqual([
      [7, 62],
      [8, 67],
      [9, 71],
    ]);
  });

  test("lets each string ring until it is picked again", () => {
    const { score } = walkOf("| G |", inDShape);
    for (const [index, note] of score.notes.entries()) {
      const again = score.notes.slice(index + 1).find((later) => later.string === note.string);
      expect(note.until).toBe(again?.tick ?? score.length);
    }
  });

  // G to C in the D shape, fret 7 to 12, needs 301 ms by the default hand: at 60 half notes a minute
  // (an eighth is 250 ms) 1.2 eighths, at 100 (150 ms) 2.0, at 120 (125 ms) 2.4, at 40 (375 ms) 0.8.
  const slideAt = (tempo: number) =>
    walkOf(`Time: 2/2  Tempo: ${tempo}\n| G | C |`, inDShape).score.notes;
  const strokeBefore = (notes: ReturnType<typeof slideAt>, eighths: number) =>
    notes.find((note) => note.tick === 1920 - eighths * 240);

  test("slides one shape up: strings that still ring glide and arrive with the new chord", () => {
    const notes = slideAt(40);
    const gliding = notes.filter((note) => note.glide !== null);
    expect(gliding.map((note) => note.string).toSorted()).toEqual([1, 2, 3]);
    for (const note of gliding) {
      expect(note.glide?.end).toBe(1920);
      expect(note.glide?.start).toBe(1920 - Math.round((301.2 / 375) * 240));
      expect((note.glide?.toFret ?? 0) - note.fret).toBe(5);
      expect(note.until).toBe(1920);
    }
    expect(notes.filter((note) => note.letGo)).toEqual([]);
    const into = notes.filter((note) => note.slideInto);
    expect(into.map((note) => [note.tick, note.string, note.fret])).toEqual([[1920, 3, 12]]);
  });

  test("lets the last note go early where the slide needs more than an eighth", () => {
    const notes = slideAt(60);
    expect(strokeBefore(notes, 1)?.letGo).toBe(true);
    expect((strokeBefore(notes, 1)?.until ?? 0) - 1680).toBeLessThan(120);
    expect(strokeBefore(notes, 2)?.letGo).toBe(false);
    expect(strokeBefore(notes, 2)?.glide?.start).toBe(1920 - Math.round((301.2 / 250) * 240));
  });

  test("lets the last two notes go where the slide needs more than two eighths", () => {
    const notes = slideAt(120);
    expect([1, 2, 3].map((eighths) => strokeBefore(notes, eighths)?.letGo)).toEqual([
      true,
      true,
      false,
    ]);
  });

  test("gives the hand three eighths and no more where the change is too fast", () => {
    const notes = slideAt(200);
    expect([1, 2, 3, 4].map((eighths) => strokeBefore(notes, eighths)?.letGo)).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  test("lets go of every string before the hand re-forms, and slides into nothing", () => {
    const { score, route } = walkOf("Tempo: 80\n| G | C |", {
      ...wholeNeckPlan,
      aim: "travel",
      fretLow: 7,
      fretHigh: 10,
    });
    expect(route?.legs.map((leg) => leg.kind)).toEqual(["reshape"]);
    expect(score.notes.some((note) => note.glide !== null || note.slideInto)).toBe(false);
    const leg = route?.legs[0];
    const leaves = 1920 - Math.round(((leg?.need ?? 0) / 375) * 240);
    const ringing = score.notes.filter((note) => note.placement === 0 && note.until > leaves);
    expect(leg?.way).toBe("keep");
    expect(ringing).toEqual([]);
  });

  test("is silent during N.C. and does not slide out of silence", () => {
    const { score } = walkOf("| G | N.C. | C |", inDShape);
    expect(score.notes.some((note) => note.tick >= 1920 && note.tick < 3840)).toBe(false);
    expect(score.notes.some((note) => note.slideInto || note.glide !== null)).toBe(false);
    expect(score.notes.every((note) => note.until <= 1920 || note.tick >= 3840)).toBe(true);
  });

  test("takes one forward roll a measure in 3/4", () => {
    const { score } = walkOf("Time: 3/4\n| G | C |");
    expect(score.notes.map((note) => note.finger).join("")).toBe("TIMTIMTIMTIM");
    expect(score.length).toBe(2 * 3 * 480);
  });

  test("of every demo song fills each chord's stay with strokes on the eighths and no other note", () => {
    for (const demo of demoSongTable) {
      const { score, route } = walkOf(demo.text);
      for (const placement of route?.placements ?? []) {
        const own = score.notes.filter((note) => note.placement === placement.index);
        const eighths = Array.from(
          { length: placement.length / 240 },
          (_, n) => placement.start + n * 240,
        );
        expect([...new Set(own.map((note) => note.tick))], demo.id).toEqual(eighths);
        for (const note of own) {
          expect(placement.voicing.frets[(note.string - 1) as 0 | 1 | 2]).toBe(note.fret);
          expect(note.until).toBeGreaterThan(note.tick);
          expect(note.until).toBeLessThanOrEqual(placement.start + placement.length);
        }
      }
    }
  });
});
