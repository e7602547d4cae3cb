import type { TimedBar } from "../../chart/song.ts";

/** Level of a section that holds back: about 2 dB under the full one, which a listener notices. */
const HELD_BACK = 0.8;
const FULL = 1;

/**
 * How loud the band plays each bar, 1 at full. Sections labelled as a chorus or refrain are full and
 * all others held back. Where none is labelled so, the label that comes first is held back and the
 * others are full, as the first part of a two-part tune is. A song with at most one label stays full.
 * Common practice, no published source; the figure is our own.
 * @example sectionLevels([{ section: "Verse" }, { section: "Chorus 2" }]) // => [0.8, 1]
 */
export const sectionLevels = (bars: readonly Pick<TimedBar, "section">[]): readonly number[] => {
  const labels = new Set(bars.map((bar) => bar.section));
  const isChorus = (label: string | null): boolean => /chorus|refrain/i.test(label ?? "");
  const first = bars[0]?.section ?? null;
  const hasChorus = [...labels].some(isChorus);
  const isFull = (label: string | null): boolean =>
    labels.size < 2 || (hasChorus ? isChorus(label) : label !== first);
  return bars.map((bar) => (isFull(bar.section) ? FULL : HELD_BACK));
};
