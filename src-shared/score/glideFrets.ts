import { fretDistance, USUAL_SCALE_LENGTH } from "../neck/fretDistance.ts";
import { fret, type Tick, tick } from "../units.ts";
import type { Note } from "./score.ts";

/** A fret that a sounding note passes while the hand slides. */
export type PassedFret = {
  readonly tick: Tick;
  /** From the note's own fret, up the neck positive. */
  readonly semitones: number;
};

/**
 * The frets that a gliding note passes, each with its tick, which is not rounded. The hand goes at an
 * even speed, so it passes the wider spaces of the low frets more slowly. Empty without a glide.
 */
export const glideFrets = (note: Note): readonly PassedFret[] => {
  const { glide } = note;
  if (glide === null) {
    return [];
  }
  const frets = glide.toFret - note.fret;
  const gone = (count: number): number =>
    Math.abs(
      fretDistance(fret(note.fret + Math.sign(frets) * count), USUAL_SCALE_LENGTH) -
        fretDistance(note.fret, USUAL_SCALE_LENGTH),
    );
  const whole = gone(Math.abs(frets));
  return Array.from({ length: Math.abs(frets) }, (_, index) => ({
    tick: tick(glide.start + ((glide.end - glide.start) * gone(index + 1)) / whole),
    semitones: Math.sign(frets) * (index + 1),
  }));
};
