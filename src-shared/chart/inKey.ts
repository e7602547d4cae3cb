import { chordName } from "../harmony/chord.ts";
import type { Key } from "../harmony/key.ts";
import { looksLikeDegree } from "../harmony/readDegree.ts";
import { keyOn } from "../harmony/readKey.ts";
import { transposeChord } from "../harmony/transpose.ts";
import type { Song, Stay } from "./song.ts";

const moveStay = (stay: Stay, from: Key, to: Key): Stay => {
  if (stay.chord === null) return stay;
  const chord = transposeChord(stay.chord, from, to);
  return { ...stay, chord, symbol: looksLikeDegree(stay.symbol) ? stay.symbol : chordName(chord) };
};

/**
 * The song moved to another tonic. Degrees keep their symbols, letters are rewritten. Only the
 * tonic of `key` counts: a minor song stays minor.
 */
export const inKey = (song: Song, key: Key): Song => {
  const to = keyOn(key.tonic, song.key.mode);
  if (to.tonic === song.key.tonic) return song;
  return {
    ...song,
    key: to,
    sections: song.sections.map((section) => ({
      ...section,
      bars: section.bars.map((bar) => ({
        ...bar,
        stays: bar.stays.map((stay) => moveStay(stay, song.key, to)),
      })),
    })),
  };
};
