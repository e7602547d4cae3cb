import type { Chord, Quality } from "./chord.ts";
import { pitchClassOf } from "./noteName.ts";
import { qualityTones } from "./qualityTable.ts";

/**
 * A chord from its parts. A bass that is the root itself is no slash chord.
 * @example makeChord("G", "7", "B").name // => "G7/B"
 */
export const makeChord = (root: string, quality: Quality, bass: string | null = null): Chord => {
  const rootClass = pitchClassOf(root);
  const otherBass = bass !== null && pitchClassOf(bass) !== rootClass ? bass : null;
  return {
    name: `${root}${quality}${otherBass === null ? "" : `/${otherBass}`}`,
    root,
    quality,
    tones: qualityTones(quality).map((tone) => ({
      ...tone,
      pitchClass: (rootClass + tone.semitones) % 12,
    })),
    bass: otherBass,
    standsFor: null,
  };
};
