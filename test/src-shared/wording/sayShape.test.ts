import fc from "fast-check";
import { Interval, Note } from "tonal";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { readTuning } from "../../../src-shared/harmony/readTuning.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tuningNamed, tunings } from "../../../src-shared/neck/tuningTable.ts";
import { stringSets, wholeNeckPlan } from "../../../src-shared/settings.ts";
import { fret } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { sayLeg } from "../../../src-shared/wording/sayLeg.ts";
import { sayShape, sayShapeChoice, sayVoicing } from "../../../src-shared/wording/sayShape.ts";
import { anyTonalChord, chordByTonal } from "../../laws/anyHeldSong.ts";

const tuningCalled = (text: string) => {
  const reading = readTuning(text);
  if (!reading.ok) throw new Error(reading.says);
  return reading.tuning;
};

const wholeNeck = { low: fret(1), high: fret(22) };
const tradeNames = ["F shape", "D shape", "barre"];

/** Notes of strings 4 to 1 as method books print open G: common practice, no published source. */
const openG = ["D3", "G3", "B3", "D4"];

/** The intervals between neighbouring strings, by a general-purpose library. */
const spacing = (notes: readonly string[]): readonly number[] =>
  notes
    .slice(1)
    .map((note, index) => Interval.semitones(Interval.distance(notes[index] ?? "", note)));

const grips = (chord: string, tuning: string, strings: (typeof stringSets)[number] = "3-2-1") => {
  const neck = neckFor(tuningCalled(tuning), fret(0));
  const [, root = "", quality = ""] = /^([A-G][b#]?)(.*)$/.exec(chord) ?? [];
  return voicingsOf(chordByTonal(root, quality === "m" ? "m" : ""), neck, wholeNeck, strings).map(
    (voicing) =>
      `${[4, 3, 2, 1].flatMap((each) => voicing.frets[each - 1] ?? []).join("-")} ${sayShape(voicing, neck.tuning)}`,
  );
};

describe("what a grip is called", () => {
  test.each(["open G", "C", "G4 D3 A3 C#4 E4"])(
    "is the trade's name on the top three strings in %s",
    (tuning) => {
      expect(sayShapeChoice("F", "3-2-1", tuningCalled(tuning))).toBe("F shape");
      expect(new Set(grips("A", tuning).map((each) => each.replace(/^\S+ /, "")))).toEqual(
        new Set(tradeNames),
      );
    },
  );

  // Open D, strings 3 to 1: F#3 A3 D4, which sound a D chord open and an E chord at fret 2.
  test("is one finger across in open D, where the strings sound a major chord straight", () => {
    expect(grips("E", "open D")).toContain("2-2-2 one finger across");
    expect(grips("E", "open D").join()).not.toMatch(/shape|barre/);
    expect(grips("E", "open D", "4-3-2")).toContain("2-2-2 one finger across");
    expect(grips("E", "open D", "4-3-2-1")).toContain("2-2-2-2 one finger across");
  });

  // G minor, strings 3 to 1: G3 Bb3 D4, a minor chord across.
  test("is one finger across for a minor chord where the strings sound one", () => {
    expect(grips("Am", "G minor")).toContain("2-2-2 one finger across");
    expect(grips("A", "G minor").join()).not.toContain("across");
  });

  test("tells the string of the root where no name fits and a finger does not lie across", () => {
    // Double C, strings 3 to 1: G3 C4 D4. D4 on string 1 at fret 12 has F# at 11 and A at 9 below it.
    expect(grips("D", "double C")).toContain("11-9-12 root on string 1");
    expect(grips("D", "double C").join()).not.toMatch(/shape|barre/);
  });

  test("is the trade's name on the inner strings in open G, and none in C tuning, whose string 4 is lower", () => {
    // The full F shape is 3-2-1-3: common practice, no published source. An octave up string 4 is at
    // fret 15, in C tuning two frets further.
    expect(grips("F", "open G", "4-3-2")).toContain("3-2-1 F shape");
    expect(grips("F", "C", "4-3-2")).toContain("17-14-13 root on string 4");
    expect(sayShapeChoice("F", "4-3-2", tuningCalled("C"))).toBe("root on string 4");
  });

  test("says nothing of a root that is left to the bass, but where the third is", () => {
    const neck = neckFor(tuningCalled("open D"), fret(0));
    const rootless = voicingsOf(chordByTonal("A", "7"), neck, wholeNeck, "3-2-1").filter(
      ({ root }) => root === null,
    );
    expect(rootless.length).toBeGreaterThan(0);
    for (const voicing of rootless) {
      const [, string] =
        /^third on string (\d), fret \d+$/.exec(sayVoicing(voicing, neck.tuning)) ?? [];
      const at = Number(string);
      const note = Note.transpose(
        { 3: "F#3", 2: "A3", 1: "D4" }[at] ?? "",
        Interval.fromSemitones(voicing.frets[at - 1] ?? 0),
      );
      expect(Note.chroma(note)).toBe(Note.chroma("C#"));
    }
  });
});

const anyLongStrings = fc
  .array(fc.integer({ min: -3, max: 3 }), { minLength: 4, maxLength: 4 })
  .map((moved) =>
    openG.map((note, index) => Note.transpose(note, Interval.fromSemitones(moved[index] ?? 0))),
  )
  .map((notes) => notes.map((note) => Note.simplify(note)));
const anyTuning = fc.oneof(
  anyLongStrings,
  fc.constantFrom(
    ...tunings.map(({ open }) =>
      open
        .slice(0, 4)
        .toReversed()
        .map((each) => Note.fromMidi(each)),
    ),
  ),
);

test("every grip has the trade's name just where its strings lie as in open G, else words that are true", () => {
  fc.assert(
    fc.property(
      anyTuning,
      anyTonalChord,
      fc.constantFrom(...stringSets),
      (notes, chord, strings) => {
        const tuning = tuningCalled(["G4", ...notes].join(" "));
        const neck = neckFor(tuning, fret(0));
        const played = strings.split("-").map((each) => 4 - Number(each));
        const like = (from: readonly string[]) => spacing(played.map((each) => from[each] ?? ""));
        const named = `${like(notes)}` === `${like(openG)}`;
        for (const voicing of voicingsOf(chord, neck, wholeNeck, strings)) {
          const says = sayShape(voicing, tuning);
          expect(tradeNames.includes(says)).toBe(named);
          const root = /^root on string (\d)$/.exec(says)?.[1];
          if (root !== undefined) {
            const sounds = Note.transpose(
              notes[4 - Number(root)] ?? "",
              Interval.fromSemitones(voicing.frets[Number(root) - 1] ?? 0),
            );
            expect(Note.chroma(sounds)).toBe(Note.chroma(chord.root));
          }
          const frets = played.map((each) => voicing.frets[3 - each]);
          expect(says === "one finger across").toBe(!named && new Set(frets).size === 1);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test("a change is told without a name that the tuning has not", () => {
  const chart = "Title: Weir Gate\nKey: D\nTuning: open D\n| D | G | D |\n";
  const { route, neck } = chartToScore(chart, { ...wholeNeckPlan, shapes: ["F"] }, null);
  const says = route?.legs.map((leg) => {
    const to = route.placements[leg.to];
    return to && sayLeg(leg, to, neck.tuning);
  });
  // Across open D at fret 12 lies D, at 5 or 17 G.
  expect(says).toEqual(["Up 5, one finger across", "Down 5, one finger across"]);
});

test("a chord without a place is told by the strings of its root in a tuning without names", () => {
  const chart = "Title: Weir Gate\nKey: D\nTuning: open D\n| D |\n";
  const plan = { ...wholeNeckPlan, shapes: ["F", "D"], fretLow: 1, fretHigh: 3 } as const;
  expect(chartToScore(chart, plan, null).notes.map((note) => note.says)).toEqual([
    "D has no grip with the root on string 1 or 2 within frets 1 to 3 that is not ruled out.",
  ]);
});

test("every named tuning with the strings of open G has the trade's names in its list of shapes", () => {
  const names = tunings.map(({ name }) => [
    name,
    sayShapeChoice("D", "3-2-1", tuningNamed(name) ?? tunings[0]),
  ]);
  expect(Object.fromEntries(names)).toEqual({
    "open G": "D shape",
    C: "D shape",
    "double C": "root on string 2",
    "open D": "root on string 2",
    "G modal": "root on string 2",
    "G minor": "root on string 2",
  });
});
