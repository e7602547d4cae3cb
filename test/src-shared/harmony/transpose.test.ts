import fc from "fast-check";
import { Interval, Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import type { Key } from "../../../src-shared/harmony/key.ts";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import {
  semitonesBetween,
  transposeChord,
  transposeNote,
} from "../../../src-shared/harmony/transpose.ts";
import { anyChord, anyKey } from "../../laws/anyChord.ts";

const major = (tonic: string): Key => ({ tonic, mode: "major" });
const moved = (names: readonly string[], from: string, to: string) =>
  names.map((name) => transposeNote(name, major(from), major(to)));

describe("a chord moved to another key", () => {
  test("has the tones that tonal gives it there", () => {
    fc.assert(
      fc.property(anyChord, anyKey, anyKey, (chord, from, to) => {
        const published = TonalChord.transpose(
          `${chord.root}${chord.quality}`,
          Interval.fromSemitones(semitonesBetween(from, to)),
        );
        const expected = TonalChord.get(published).notes.map((note) => Note.chroma(note));
        const actual = transposeChord(chord, from, to);
        expect(actual.tones.map((tone) => tone.pitchClass)).toEqual(expected);
        expect(actual.quality).toBe(chord.quality);
      }),
    );
  });

  test("takes its bass along", () => {
    expect(transposeChord(makeChord("D", "7", "F#"), major("G"), major("Bb")).name).toBe("F7/A");
  });

  test("comes back to its own pitches after a semitone at a time, twelve times", () => {
    const circle = ["G", "Ab", "A", "Bb", "B", "C", "Db", "D", "Eb", "E", "F", "F#", "G"].map(
      major,
    );
    fc.assert(
      fc.property(anyChord, (chord) => {
        const round = circle.reduce(
          (at, key, step) => transposeChord(at, circle[step - 1] ?? key, key),
          chord,
        );
        expect(round.tones).toEqual(chord.tones);
      }),
    );
  });

  test("is spelled for the new key", () => {
    // The chords of a song in G, as any transposing table prints them.
    const inG = ["G", "C", "D", "Em", "Bm"].map((name) => name.replace("m", ""));
    expect(moved(inG, "G", "A")).toEqual(["A", "D", "E", "F#", "C#"]);
    expect(moved(inG, "G", "Bb")).toEqual(["Bb", "Eb", "F", "G", "D"]);
    expect(moved(inG, "G", "Eb")).toEqual(["Eb", "Ab", "Bb", "C", "G"]);
    expect(moved(inG, "G", "E")).toEqual(["E", "A", "B", "C#", "G#"]);
    expect(moved(["F#", "B", "C#"], "F#", "Gb")).toEqual(["Gb", "B", "Db"]);
  });

  test("is never spelled with a name that players avoid", () => {
    fc.assert(
      fc.property(anyChord, anyKey, anyKey, (chord, from, to) => {
        expect(transposeChord(chord, from, to).root).toMatch(/^([ADG][b#]?|[CF]#?|[BE]b?)$/);
      }),
    );
  });
});
