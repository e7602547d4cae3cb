import fc from "fast-check";
import { Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import type { Quality } from "../../../src-shared/harmony/chord.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { pitchAt } from "../../../src-shared/neck/pitchAt.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { stringSets } from "../../../src-shared/settings.ts";
import { fret } from "../../../src-shared/units.ts";
import { gripSpan, WIDEST_GRIP } from "../../../src-shared/voicing/reach.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { anyTonalChord, chordByTonal, roots } from "../../laws/anyHeldSong.ts";

const openG = neckFor(tunings[0], fret(0));
const wholeNeck = { low: fret(1), high: fret(22) };

/** Shape and frets of strings 3-2-1, as the trade writes them. */
const listed = (root: string, quality: Quality, range = wholeNeck) =>
  voicingsOf(chordByTonal(root, quality), openG, range, "3-2-1").map(
    ({ shape, frets }) => `${shape} ${frets[2]}-${frets[1]}-${frets[0]}`,
  );

describe("the movable major shapes", () => {
  // Check values: common practice, no published source.
  test("lie where players find them: F shape G at 5 and 17, C at 10, D at 12", () => {
    expect(listed("G", "").filter((each) => each.startsWith("F"))).toEqual([
      "F 4-3-5",
      "F 16-15-17",
    ]);
    expect(listed("C", "")).toContain("F 9-8-10");
    expect(listed("D", "")).toContain("F 11-10-12");
  });

  test("lie where players find them: D shape G at 8 and 20, C at 13, D at 15", () => {
    expect(listed("G", "").filter((each) => each.startsWith("D"))).toEqual([
      "D 7-8-9",
      "D 19-20-21",
    ]);
    expect(listed("C", "")).toContain("D 12-13-14");
    expect(listed("D", "")).toContain("D 14-15-16");
  });

  test("lie where players find them: barre G at 12, C at 5 and 17, D at 7 and 19", () => {
    expect(listed("G", "").filter((each) => each.startsWith("barre"))).toEqual(["barre 12-12-12"]);
    expect(listed("C", "").filter((each) => each.startsWith("barre"))).toEqual([
      "barre 5-5-5",
      "barre 17-17-17",
    ]);
    expect(listed("D", "").filter((each) => each.startsWith("barre"))).toEqual([
      "barre 7-7-7",
      "barre 19-19-19",
    ]);
  });

  test("are fingered as the trade fingers them", () => {
    const fingersOf = (shape: string) => {
      const found = voicingsOf(chordByTonal("C", ""), openG, wholeNeck, "3-2-1").find(
        (each) => each.shape === shape,
      );
      return found && [found.fingers[2], found.fingers[1], found.fingers[0]];
    };
    expect(fingersOf("F")).toEqual([2, 1, 4]);
    expect(fingersOf("D")).toEqual([1, 2, 3]);
    expect(fingersOf("barre")).toEqual([1, 1, 1]);
  });

  test("have their roots on string 1 (F), 2 (D) and 3 (barre)", () => {
    const strings = { F: 1, D: 2, barre: 3 };
    for (const root of roots) {
      for (const voicing of voicingsOf(chordByTonal(root, ""), openG, wholeNeck, "3-2-1")) {
        expect(voicing.root?.string).toBe(strings[voicing.shape]);
      }
    }
  });

  test("follow each other up the neck by 4, 5 and 3 frets: F, D, barre, F", () => {
    // Order up the neck by lowest fret: computed; the same three positions as davidcavage.blogspot.com, lesson 056.
    const positions = voicingsOf(chordByTonal("G", ""), openG, wholeNeck, "3-2-1").map(
      (each) => each.position,
    );
    expect(positions).toEqual([3, 7, 12, 15, 19]);
  });
});

describe("the full four-string shapes", () => {
  const full = (root: string) =>
    voicingsOf(chordByTonal(root, ""), openG, wholeNeck, "4-3-2-1").map(
      ({ shape, frets, fingers }) =>
        `${shape} ${[3, 2, 1, 0].map((index) => frets[index as 0 | 1 | 2 | 3]).join("-")} / ${[3, 2, 1, 0].map((index) => fingers[index as 0 | 1 | 2 | 3]).join("")}`,
    );

  test("are where the books have them: F at 3-2-1-3, D at 4-2-3-4, A at a barre on fret 2", () => {
    // Full shapes 4-3-2-1 and fingers: Bill Evans, dummies.com article 143066 (F shape at fret 3, D
    // shape at fret 4, barre at fret 2); D's fingers from antirejection07.blogspot.com.
    expect(full("F")).toContain("F 3-2-1-3 / 3214");
    expect(full("D")).toContain("D 4-2-3-4 / 3124");
    expect(full("A")).toContain("barre 2-2-2-2 / 1111");
  });

  test("add string 4 at the root in the F shape and at the fifth in the barre", () => {
    // Common practice, no published source: F shape at r, barre at r (fifth).
    expect(full("G")).toContain("F 5-4-3-5 / 3214");
    expect(full("C")).toContain("barre 5-5-5-5 / 1111");
  });
});

describe("voicings on strings 4-3-2", () => {
  test("leave string 1 alone, and lie under the full shapes", () => {
    for (const root of roots) {
      const lower = voicingsOf(chordByTonal(root, ""), openG, wholeNeck, "4-3-2");
      const full = voicingsOf(chordByTonal(root, ""), openG, wholeNeck, "4-3-2-1");
      const lowerOf = (frets: readonly (number | null)[]) => frets.slice(1, 4).join();
      const fullLowers = new Set(full.map(({ frets }) => lowerOf(frets)));
      const complete = lower.filter(({ frets }) => fullLowers.has(lowerOf(frets)));
      expect(complete.length).toBeGreaterThan(1);
      expect(lower.every(({ frets }) => frets[0] === null && frets[3] !== null)).toBe(true);
    }
  });
});

describe("the forms of each quality", () => {
  // Three-note closed forms on strings 3-2-1 in G-B-D, frets relative to the lowest, strings 3 2 1;
  // computed independently by exhaustive search over chord tones (no published table found).
  const forms: readonly (readonly [Quality, Readonly<Record<string, string>>])[] = [
    ["", { barre: "0 0 0", F: "1 0 2", D: "0 1 2" }],
    ["m", { barre: "1 0 1", F: "0 0 2", D: "0 1 1" }],
    ["dim", { barre: "1 0 0", F: "1 0 3", D: "0 2 2" }],
    ["aug", { barre: "0 0 1", F: "0 0 1", D: "0 0 1" }],
    ["sus4", { barre: "0 1 0", F: "2 0 2", D: "0 1 3" }],
    ["sus2", { barre: "2 0 2", F: "0 1 3", D: "0 1 0" }],
  ];

  for (const [quality, byShape] of forms) {
    test(`are the computed ones for ${quality === "" ? "major" : quality}`, () => {
      for (const root of roots) {
        for (const voicing of voicingsOf(chordByTonal(root, quality), openG, wholeNeck, "3-2-1")) {
          const relative = [2, 1, 0].map(
            (index) => (voicing.frets[index as 0 | 1 | 2] ?? 0) - voicing.position,
          );
          // A sus chord's fourth or second stands in the third's place and names the shape; its
          // root string is then the table's.
          const family = { 1: "F", 2: "D", 3: "barre", 4: "", 5: "" }[voicing.root?.string ?? 5];
          expect(relative.join(" "), `${root}${quality} at ${voicing.position}`).toBe(
            byShape[family],
          );
        }
      }
    });
  }

  const sevenths: readonly (readonly [Quality, readonly string[]])[] = [
    ["7", ["0 0 3", "0 2 1", "2 0 1", "1 0 0", "1 0 3", "0 2 2"]],
    ["6", ["0 0 2", "0 1 1", "1 0 1"]],
    ["m7", ["0 3 2", "2 0 0", "0 0 0", "1 0 2", "0 1 2"]],
    ["maj7", ["0 3 1", "3 0 1", "1 0 1", "0 0 2", "0 1 1"]],
    ["m7b5", ["1 0 1", "0 0 2", "0 1 1"]],
  ];
  for (const [quality, expected] of sevenths) {
    test(`of ${quality} within four frets are the computed ones, with or without the root`, () => {
      const found = new Set<string>();
      for (const root of roots) {
        for (const voicing of voicingsOf(chordByTonal(root, quality), openG, wholeNeck, "3-2-1")) {
          const relative = [2, 1, 0].map(
            (index) => (voicing.frets[index as 0 | 1 | 2] ?? 0) - voicing.position,
          );
          if (Math.max(...relative) <= 3) {
            found.add(relative.join(" "));
          }
        }
      }
      expect([...found].toSorted()).toEqual([...expected].toSorted());
    });
  }
});

describe("every voicing", () => {
  const anyNeck = fc
    .tuple(fc.constantFrom(...tunings), fc.integer({ min: 0, max: 5 }))
    .map(([tuning, capo]) => neckFor(tuning, fret(capo)));
  const anyRange = fc
    .tuple(fc.integer({ min: 1, max: 22 }), fc.integer({ min: 1, max: 22 }))
    .map(([a, b]) => ({ low: fret(Math.min(a, b)), high: fret(Math.max(a, b)) }));

  test("sounds only tones that tonal finds in its chord, at least three different ones", () => {
    fc.assert(
      fc.property(anyTonalChord, anyNeck, fc.constantFrom(...stringSets), (chord, neck, set) => {
        const symbol = chord.root + (chord.quality === "" ? "M" : chord.quality);
        const tones = new Set(TonalChord.get(symbol).notes.map((note) => Note.chroma(note)));
        for (const voicing of voicingsOf(chord, neck, wholeNeck, set)) {
          const sounding = ([1, 2, 3, 4] as const).flatMap((string) => {
            const stopped = voicing.frets[(string - 1) as 0 | 1 | 2 | 3];
            return stopped === null ? [] : [pitchAt(neck, { string, fret: stopped }) % 12];
          });
          expect(new Set(sounding).size).toBeGreaterThanOrEqual(3);
          expect(sounding.filter((pitchClass) => !tones.has(pitchClass))).toEqual([]);
        }
        return true;
      }),
    );
    expect(listed("G", "").length).toBeGreaterThan(0);
  });

  test("stays within its fret range, above the capo and within the hand", () => {
    fc.assert(
      fc.property(anyTonalChord, anyNeck, anyRange, (chord, neck, range) => {
        for (const voicing of voicingsOf(chord, neck, range, "3-2-1")) {
          const frets = voicing.frets.flatMap((each) => (each === null ? [] : [each]));
          expect(Math.min(...frets)).toBeGreaterThanOrEqual(Math.max(range.low, neck.capo + 1));
          expect(Math.max(...frets)).toBeLessThanOrEqual(range.high);
          expect(voicing.position).toBe(Math.min(...frets));
          const span = gripSpan(voicing.position, fret(Math.max(...frets)), neck.scaleLength);
          expect(span).toBeLessThanOrEqual(WIDEST_GRIP);
        }
      }),
    );
    expect.hasAssertions();
  });

  test("has one finger for every fretted string, higher frets never under lower fingers", () => {
    fc.assert(
      fc.property(anyTonalChord, anyNeck, fc.constantFrom(...stringSets), (chord, neck, set) => {
        for (const voicing of voicingsOf(chord, neck, wholeNeck, set)) {
          const held = voicing.frets.flatMap((each, index) => {
            const finger = voicing.fingers[index as 0 | 1 | 2 | 3 | 4];
            return each === null ? [] : [{ fret: each, finger }];
          });
          for (const a of held) {
            expect(a.finger).not.toBeNull();
            for (const b of held) {
              if (a.fret > b.fret) {
                expect(a.finger ?? 0).toBeGreaterThan(b.finger ?? 0);
              }
            }
          }
        }
      }),
    );
    expect.hasAssertions();
  });

  test("of a triad is found by a plain search over all frets of three strings", () => {
    for (const root of roots) {
      const classes = TonalChord.get(`${root}M`)
        .notes.map((note) => Note.chroma(note))
        .toSorted((a, b) => a - b);
      const plain: string[] = [];
      for (let a = 1; a <= 22; a += 1) {
        for (let b = Math.max(1, a - 4); b <= Math.min(22, a + 4); b += 1) {
          for (let c = Math.max(1, a - 4); c <= Math.min(22, a + 4); c += 1) {
            const pitches = [55 + a, 59 + b, 62 + c];
            const sounding = pitches.map((pitch) => pitch % 12).toSorted((x, y) => x - y);
            const span = gripSpan(
              fret(Math.min(a, b, c)),
              fret(Math.max(a, b, c)),
              openG.scaleLength,
            );
            const rising = 55 + a < 59 + b && 59 + b < 62 + c;
            if (
              rising &&
              sounding.join() === classes.join() &&
              62 + c - 55 - a < 12 &&
              span <= WIDEST_GRIP
            ) {
              plain.push(`${a}-${b}-${c}`);
            }
          }
        }
      }
      expect(
        listed(root, "")
          .map((each) => each.split(" ")[1])
          .toSorted(),
      ).toEqual(plain.toSorted());
    }
  });

  test("in a range too narrow for any is not made up", () => {
    expect(listed("G", "", { low: fret(1), high: fret(4) })).toEqual([]);
  });
});
