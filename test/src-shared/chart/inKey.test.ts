import { describe, expect, test } from "vitest";
import { inKey } from "../../../src-shared/chart/inKey.ts";
import { readChart } from "../../../src-shared/chart/readChart.ts";

const { value: song } = readChart("Key: G Capo: 2\n[A] |: G 5-7/7 :| N.C. | Em7/B");
const symbolsOf = (of: typeof song) =>
  of.sections.flatMap((section) =>
    section.bars.flatMap((bar) => bar.stays.map((stay) => [stay.symbol, stay.chord?.name ?? null])),
  );

describe("a song in another key", () => {
  test("has its letters rewritten and its degrees kept, all sounding there", () => {
    const moved = inKey(song, { tonic: "Bb", mode: "major" });
    expect(symbolsOf(moved)).toEqual([
      ["Bb", "Bb"],
      ["5-7/7", "F7/A"],
      ["N.C.", null],
      ["Gm7/D", "Gm7/D"],
    ]);
    expect(moved.key).toEqual({ tonic: "Bb", mode: "major" });
  });

  test("keeps everything else", () => {
    const { key: _, sections, ...rest } = inKey(song, { tonic: "C", mode: "major" });
    const { key: __, sections: ___, ...before } = song;
    expect(rest).toEqual(before);
    expect(sections[0]?.bars.map((bar) => [bar.opensRepeat, bar.plays])).toEqual([
      [true, 2],
      [false, 1],
      [false, 1],
    ]);
  });

  test("stays in its mode", () => {
    const minor = readChart("Key: Em\nEm").value;
    expect(inKey(minor, { tonic: "A", mode: "major" }).key).toEqual({ tonic: "A", mode: "minor" });
  });

  test("is the song itself in its own key", () => {
    expect(inKey(song, { tonic: "G", mode: "major" })).toBe(song);
  });
});
