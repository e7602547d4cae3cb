import type { Quality, ToneRole } from "./chord.ts";

// Source: chord tones as in any harmony book; tested against tonal's chord dictionary, quality by
// quality. Which tone stands in for which role (6 for the seventh, 2 and 4 for the third) is ours.

/** One tone of a quality, above any root. */
export type QualityTone = {
  readonly role: ToneRole;
  /** Semitones above the root, 0 to 11. */
  readonly semitones: number;
};

/** A quality with its tones. */
export type QualityRow = {
  readonly quality: Quality;
  /** What the trade calls it, for sentences: "minor seventh". */
  readonly called: string;
  readonly tones: readonly QualityTone[];
};

const row = (
  quality: Quality,
  called: string,
  third: number,
  fifth: number,
  seventh: number | null = null,
): QualityRow => ({
  quality,
  called,
  tones: [
    { role: "root", semitones: 0 },
    { role: "third", semitones: third },
    { role: "fifth", semitones: fifth },
    ...(seventh === null ? [] : [{ role: "seventh" as const, semitones: seventh }]),
  ],
});

/** The qualities, commonest first: where two are equally near to a chord, the first is chosen. */
export const qualityTable: readonly QualityRow[] = [
  row("", "major", 4, 7),
  row("m", "minor", 3, 7),
  row("7", "seventh", 4, 7, 10),
  row("m7", "minor seventh", 3, 7, 10),
  row("maj7", "major seventh", 4, 7, 11),
  row("6", "sixth", 4, 7, 9),
  row("dim", "diminished", 3, 6),
  row("aug", "augmented", 4, 8),
  row("sus4", "suspended fourth", 5, 7),
  row("sus2", "suspended second", 2, 7),
  row("dim7", "diminished seventh", 3, 6, 9),
  row("m7b5", "half-diminished", 3, 6, 10),
];

/**
 * The tones of a quality, root first.
 * @example qualityTones("m").map((tone) => tone.semitones) // => [0, 3, 7]
 */
export const qualityTones = (quality: Quality): readonly QualityTone[] => {
  const found = qualityTable.find((each) => each.quality === quality);
  if (found === undefined) throw new RangeError(`no quality "${quality}" in the table`);
  return found.tones;
};
