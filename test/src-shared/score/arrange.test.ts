import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { demoSongTable } from "../../../src-shared/demo/demoSongTable.ts";
import type { Pattern, PatternStroke } from "../../../src-shared/roll/pattern.ts";
import {
  type Density,
  type FifthUse,
  type Picking,
  plainPicking,
  type StyleName,
} from "../../../src-shared/roll/picking.ts";
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

  test("makes way for its first chord where the song goes round, and rings to its end where not", () => {
    const lastBar = (tempo: number, goesRound: boolean) =>
      walkOf(`Time: 2/2  Tempo: ${tempo}\n| G | C |`, {
        ...inDShape,
        goesRound,
      }).score.notes.filter(({ tick }) => tick >= 1920);
    const slow = lastBar(40, true).filter(({ glide }) => glide !== null);
    expect(slow.map(({ string, fret, glide }) => [string, (glide?.toFret ?? 0) - fret])).toEqual([
      [2, -5],
      [3, -5],
      [1, -5],
    ]);
    expect(slow.every(({ glide, until }) => glide?.end === 3840 && until === 3840)).toBe(true);
    expect(
      lastBar(120, true)
        .filter(({ letGo }) => letGo)
        .map(({ tick }) => tick),
    ).toEqual([3840 - 480, 3840 - 240]);
    for (const note of [...lastBar(40, false), ...lastBar(120, false)]) {
      expect([note.letGo, note.glide]).toEqual([false, null]);
    }
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

describe("the right hand in the score", () => {
  const pickedAs = (chart: string, picking: Partial<Picking>, settings = wholeNeckPlan) =>
    chartToScore(chart, settings, null, { ...plainPicking, ...picking });
  const inManner = (style: StyleName, density: Density): Pick<Picking, "song"> => ({
    song: { style, density },
  });

  test("plays the standard forward roll, fifth string and all, where G belongs to the chord", () => {
    // 3 2 1 5 2 1 5 1: the forward roll as method books print it; common practice.
    const { notes } = pickedAs("| G |", { fifth: "always" }, inDShape).score;
    expect(notes.map(({ string }) => string).join("")).toBe("32152151");
    // Open G tuning: the fifth string is G4, MIDI 67, at no fret.
    expect(
      notes.filter(({ string }) => string === 5).map(({ fret, midi }) => [fret, midi]),
    ).toEqual([
      [0, 67],
      [0, 67],
    ]);
  });

  test("puts the thumb on string 3 where the fifth string clashes, and raises it with the capo", () => {
    const strings = (chart: string): string =>
      pickedAs(chart, { fifth: "always" }, inDShape)
        .score.notes.map(({ string }) => string)
        .join("");
    expect(strings("| D |")).toBe("32132131");
    expect(strings("Capo: 2\n| D |")).toBe("32152151");
    const capoed = pickedAs("Capo: 2\n| D |", { fifth: "always" }, inDShape).score.notes;
    expect(capoed.find(({ string }) => string === 5)?.midi).toBe(69);
  });

  test("covers a change with the open fifth string where two notes would have to go", () => {
    // 301 ms at 110 half notes a minute (an eighth is 136 ms) are 2.2 eighths.
    const chart = "Time: 2/2  Tempo: 110\n| G | C |";
    const { score, route } = pickedAs(chart, { fifth: "cover" }, inDShape);
    expect(route?.legs.map(({ way }) => way)).toEqual(["open"]);
    const strokeAt = (eighths: number) =>
      score.notes.find(({ tick }) => tick === 1920 - eighths * 240);
    expect([3, 2, 1].map((eighths) => strokeAt(eighths)?.string)).toEqual([1, 5, 1]);
    expect([3, 2, 1].map((eighths) => strokeAt(eighths)?.letGo)).toEqual([false, false, true]);
    expect(strokeAt(2)?.until).toBe(1920);
    expect(score.notes.filter(({ string }) => string === 5)).toHaveLength(1);
  });

  test("leaves the fifth string out where the change can be made without", () => {
    for (const tempo of [40, 60, 99]) {
      const chart = `Time: 2/2  Tempo: ${tempo}\n| G | C |`;
      const { score } = pickedAs(chart, { fifth: "cover" }, inDShape);
      expect(score.notes.some(({ string }) => string === 5)).toBe(false);
    }
  });

  test("makes a change faster than the closed strings alone allow, but for a clash", () => {
    // 301 ms at 170 (an eighth is 88 ms) are 3.4 eighths; from D the drone may not cover.
    const way = (chords: string, fifth: FifthUse) =>
      pickedAs(`Time: 2/2  Tempo: 170\n${chords}`, { fifth }, inDShape).route?.legs[0]?.way;
    expect([way("| G | C |", "never"), way("| G | C |", "cover")]).toEqual(["too-fast", "open"]);
    expect(way("| D | G |", "cover")).toBe("too-fast");
  });

  test("damps the pinch of a vamp at once and lets the bass ring", () => {
    const { notes } = pickedAs("| G |", inManner("vamp", "full"), inDShape).score;
    expect(notes.map(({ tick, string, damped }) => [tick, string, damped])).toEqual([
      [0, 3, false],
      ...[3, 2, 1].map((string) => [480, string, true]),
      [960, 3, false],
      ...[3, 2, 1].map((string) => [1440, string, true]),
    ]);
    expect(
      notes.filter(({ damped }) => damped).every(({ tick, until }) => until - tick === 120),
    ).toBe(true);
    expect(notes[0]?.until).toBe(480);
  });

  test("accents what carries the meter, and nothing where someone sings", () => {
    const chart = "[Verse]\n| G |";
    const accents = (picking: Partial<Picking>) =>
      pickedAs(chart, picking, inDShape)
        .score.notes.filter(({ accent }) => accent)
        .map(({ tick }) => tick);
    expect(accents({})).toEqual([0, 960]);
    const sections = [{ label: "Verse", manner: null, sung: true }];
    expect(accents({ sections })).toEqual([]);
    const sung = pickedAs(chart, { sections }, inDShape).score.notes;
    expect(sung.map(({ tick }) => tick)).toEqual([0, 480, 960, 1440]);
  });

  test("strikes each chord once where that is asked for, and leaves the hand the whole stay", () => {
    const { score, route } = pickedAs(
      "Tempo: 200\n| G | C |",
      inManner("forward", "once"),
      inDShape,
    );
    expect([...new Set(score.notes.map(({ tick }) => tick))]).toEqual([0, 1920]);
    expect(route?.legs[0]?.way).toBe("keep");
    expect(score.notes.some(({ letGo }) => letGo)).toBe(false);
  });

  test("takes the player's own pattern by name", () => {
    const t: PatternStroke = {
      picks: [{ finger: "T", on: 3 }],
      accent: true,
      damped: false,
    };
    const m: PatternStroke = { picks: [{ finger: "M", on: 1 }], accent: false, damped: true };
    const hopper: Pattern = { name: "Hopper", meter: "4/4", strokes: [t, m, t, m, t, m, t, m] };
    const { score } = chartToScore(
      "| G |",
      inDShape,
      null,
      { ...plainPicking, song: { style: "own:Hopper", density: "full" } },
      [hopper],
    );
    expect(score.notes.map(({ finger }) => finger).join("")).toBe("TMTMTMTM");
    const gone = pickedAs(
      "| G | C |",
      { song: { style: "own:Hopper", density: "full" } },
      inDShape,
    );
    expect(gone.notes.map(({ code, severity }) => [code, severity])).toEqual([
      ["pattern-gone", "hint"],
    ]);
  });

  test("says of a chord of one eighth that it is pinched, at its bar", () => {
    const { notes, slots } = pickedAs("| G . . , C' |", {}, inDShape);
    expect(slots.map(({ length }) => length)).toEqual([1680, 240]);
    const on = (chart: string) =>
      pickedAs(chart, {}, inDShape).score.notes.map(({ finger }) => finger);
    // Seven eighths end on the middle finger; before another chord the thumb is kept for it.
    expect(on("| G . . , C' |").slice(7)).toEqual(["T", "I"]);
    expect(on("| G . . , C' | D |").slice(7, 10)).toEqual(["I", "T", "I"]);
    expect(notes).toEqual([
      {
        severity: "hint",
        code: "too-short",
        at: expect.objectContaining({ line: 1 }),
        says: "C in bar 1 lasts one eighth, too short for a roll: it gets one stroke, with the fingers that are free.",
        try: "Leave it so, or give the chord more time.",
      },
    ]);
  });
});
