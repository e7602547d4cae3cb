import { Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import type { ToneRole } from "../../../src-shared/harmony/chord.ts";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { qualityTable, qualityTones } from "../../../src-shared/harmony/qualityTable.ts";
import { allRoots } from "../../laws/anyChord.ts";

const roleByDegree: Readonly<Record<string, ToneRole>> = {
  1: "root",
  2: "third",
  3: "third",
  4: "third",
  5: "fifth",
  6: "seventh",
  7: "seventh",
};

describe("every quality", () => {
  for (const { quality, called, tones } of qualityTable) {
    test(`${called} has on every root the tones that tonal gives it, each in its role`, () => {
      for (const root of allRoots) {
        const published = TonalChord.getChord(quality === "" ? "M" : quality, root);
        const chord = makeChord(root, quality);
        expect(chord.tones.map((tone) => tone.pitchClass)).toEqual(
          published.notes.map((note) => Note.chroma(note)),
        );
        expect(chord.tones.map((tone) => tone.role)).toEqual(
          published.intervals.map((interval) => roleByDegree[interval.charAt(0)]),
        );
      }
    });

    test(`${called} has its root first and each role once`, () => {
      expect(tones.map((tone) => tone.role)).toEqual(
        ["root", "third", "fifth", "seventh"].slice(0, tones.length),
      );
      expect(tones[0]?.semitones).toBe(0);
      expect(qualityTones(quality)).toEqual(tones);
    });
  }

  test("sounds unlike every other", () => {
    const sounds = qualityTable.map((row) => row.tones.map((tone) => tone.semitones).join(" "));
    expect(new Set(sounds).size).toBe(sounds.length);
    expect(new Set(qualityTable.map((row) => row.quality)).size).toBe(12);
  });
});
