import fc from "fast-check";
import { Note, Scale } from "tonal";
import { describe, expect, test } from "vitest";
import { walkInto } from "../../../../src-shared/score/rhythm/walkUp.ts";
import { midi } from "../../../../src-shared/units.ts";

/** Pitch classes of a major scale, straight from tonal. */
const majorScale = (tonic: string): readonly number[] =>
  Scale.get(`${tonic} major`).notes.map((note) => Note.chroma(note));

const named = (pitches: readonly number[]): string => pitches.map(Note.fromMidi).join(" ");
const walk = (from: string, to: string, count: 2 | 3, tonic = "G"): string =>
  named(walkInto(midi(Note.midi(from) ?? 0), midi(Note.midi(to) ?? 0), majorScale(tonic), count));

// The walks that every bass player has: common practice, no published source.
describe("a bass walk", () => {
  test("from G to C goes up by A and B", () => {
    expect(walk("G1", "C2", 2)).toBe("A1 B1");
  });

  test("from C back to G comes down by B and A", () => {
    expect(walk("C2", "G1", 2)).toBe("B1 A1");
  });

  test("from G to D goes up by three notes where there is room, else by two", () => {
    expect(walk("G1", "D2", 3)).toBe("A1 B1 C2");
    expect(walk("G1", "D2", 2)).toBe("B1 C2");
  });

  test("over a whole tone sets out from the root and takes the note between", () => {
    expect(walk("C2", "D2", 2)).toBe("C2 Db2");
  });

  test("over a third sets out from the root and takes the scale's note between", () => {
    expect(walk("G1", "E1", 2)).toBe("G1 Gb1");
  });

  test("over a semitone has no room", () => {
    expect(walk("B1", "C2", 2)).toBe("");
  });

  test("onto the same note comes from below, and from above where the bass ends", () => {
    expect(walk("C2", "C2", 3, "C")).toBe("G1 A1 B1");
    expect(walk("G1", "G1", 2)).toBe("E1 Gb1");
    expect(walk("E1", "E1", 2, "E")).toBe("Ab1 Gb1");
  });
});

test("every walk has two or three notes of one direction that end beside the next root", () => {
  const anyPitch = fc.integer({ min: 28, max: 39 });
  const anyTonic = fc.constantFrom("C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B");
  fc.assert(
    fc.property(
      anyPitch,
      anyPitch,
      anyTonic,
      fc.constantFrom(2 as const, 3 as const),
      (...drawn) => {
        const [from, to, tonic, count] = drawn;
        const scale = majorScale(tonic);
        const walked = walkInto(midi(from), midi(to), scale, count);
        if (Math.abs(to - from) === 1) {
          expect(walked).toEqual([]);
          return;
        }
        expect(walked.length).toBeGreaterThanOrEqual(2);
        expect(walked.length).toBeLessThanOrEqual(count);
        const line = [...walked, to];
        const steps = line.slice(1).map((pitch, index) => pitch - (line[index] ?? 0));
        expect(new Set(steps.map(Math.sign)).size).toBe(1);
        // No step is wider than a whole tone but the first, out of the root itself.
        for (const step of steps.slice(walked[0] === from ? 1 : 0)) {
          expect(Math.abs(step)).toBeLessThanOrEqual(2);
        }
        for (const pitch of walked) {
          const chromatic = Math.abs(pitch - to) === 1;
          expect(scale.includes(pitch % 12) || chromatic || pitch === from).toBe(true);
          expect(pitch).toBeGreaterThanOrEqual(28);
        }
      },
    ),
  );
  expect.hasAssertions();
});
