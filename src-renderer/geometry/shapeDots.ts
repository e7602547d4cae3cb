import type { StringNumber } from "../../src-shared/neck/neck.ts";
import type { Finger, Voicing } from "../../src-shared/voicing/voicing.ts";

/** A finger in a picture of the shape alone. */
export type ShapeDot = {
  readonly string: StringNumber;
  /** 0 is the fret of the index finger. */
  readonly column: number;
  readonly finger: Finger | null;
  readonly root: boolean;
};

/** Frets that a picture of a shape always has, so that it keeps its size. */
export const SHAPE_COLUMNS = 5;

const strings: readonly StringNumber[] = [1, 2, 3, 4, 5];

/** The fingers of a voicing, told from the fret of the index finger; string 1 first. */
export const shapeDots = (voicing: Voicing): readonly ShapeDot[] =>
  strings.flatMap((string) => {
    const fret = voicing.frets[string - 1] ?? null;
    if (fret === null) return [];
    const { root } = voicing;
    return {
      string,
      column: fret - voicing.position,
      finger: voicing.fingers[string - 1] ?? null,
      root: root?.string === string && root.fret === fret,
    };
  });
