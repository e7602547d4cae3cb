import fc from "fast-check";
import { Note } from "tonal";
import { expect, test } from "vitest";
import { readTuning } from "../../../src-shared/harmony/readTuning.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";

test("a named tuning is read by its name", () => {
  for (const tuning of tunings) {
    expect(readTuning(tuning.name.toUpperCase())).toEqual({ ok: true, tuning });
  }
});

test("a tuning of one's own is five notes from string 5 to string 1, at tonal's pitches", () => {
  const note = fc
    .tuple(fc.constantFrom(..."ABCDEFG"), fc.constantFrom("", "b", "#"), fc.constantFrom(3, 4))
    .map((parts) => parts.join(""));
  fc.assert(
    fc.property(fc.tuple(note, note, note, note, note), (notes) => {
      const reading = readTuning(notes.join("  "));
      expect(reading.ok && reading.tuning).toEqual({
        name: notes.join(" "),
        open: notes.toReversed().map((each) => Note.midi(each)),
      });
    }),
  );
});

test("what is no tuning is refused with both ways of writing one", () => {
  for (const text of [
    "",
    "open Q",
    "G4 D3 G3 B3",
    "G4 D3 G3 B3 D4 E4",
    "G4 D3 G3 B3 D9",
    "G4 D3 G3 B3 H4",
  ]) {
    const reading = readTuning(text);
    expect(reading.ok ? "" : reading.try).toMatch(/open G, C, .*five notes from string 5/);
  }
});
