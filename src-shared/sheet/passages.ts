import { chordName } from "../harmony/chord.ts";
import type { TabBar } from "./tabSong.ts";

/** Bars of one section as played, and the bars (0-based, both included) that they are the same as. */
export type Passage = {
  readonly bars: readonly TabBar[];
  readonly sameAs: { readonly from: number; readonly to: number } | null;
};

/** What is read in a bar: which chord comes where and where it is held. */
const contentOf = ({ bar, stays, placements, goesOn, heldOn }: TabBar): string => {
  const from = (start: number): number => Math.max(0, start - bar.start);
  return JSON.stringify([
    bar.length,
    [...(goesOn ? [goesOn] : []), ...stays].map(({ start, chord }) => [
      from(start),
      chord === null ? null : chordName(chord),
    ]),
    [...(heldOn ? [heldOn] : []), ...placements].map(({ start, voicing }) => [
      from(start),
      voicing.frets,
    ]),
  ]);
};

/** Bars cut into sections as played. */
export const sectionsOf = (bars: readonly TabBar[]): readonly (readonly TabBar[])[] => {
  const sections: TabBar[][] = [];
  for (const bar of bars) {
    if (bar.bar.startsSection || sections.length === 0) sections.push([]);
    sections.at(-1)?.push(bar);
  }
  return sections;
};

/** The sections of a song as played, those that are the same as an earlier one told apart. */
export const passagesOnce = (bars: readonly TabBar[]): readonly Passage[] => {
  const seen = new Map<string, readonly TabBar[]>();
  return sectionsOf(bars).map((section) => {
    const content = section.map(contentOf).join();
    const before = seen.get(content);
    if (before === undefined) {
      seen.set(content, section);
      return { bars: section, sameAs: null };
    }
    const from = before[0]?.bar.index ?? 0;
    return { bars: section, sameAs: { from, to: from + before.length - 1 } };
  });
};
