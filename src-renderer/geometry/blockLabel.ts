/** How a block on the hand path is named. */
export type BlockLabel = {
  /** Size of the chord's name, pixels. */
  readonly size: 18 | 13;
  /** From the block's left side to the name. */
  readonly pad: number;
  /** The shape's name has room beside it. */
  readonly withShape: boolean;
  /** It stands over the block. */
  readonly above: boolean;
  /** Drawn no wider than this, pixels; null as wide as its letters are. */
  readonly squeezed: number | null;
};

/** Between the chord's name and the shape's. */
export const SHAPE_GAP = 7;

/** Widths in em: not less than those of our type's heaviest weight in use. */
const emOf = (letter: string): number => {
  if (/[mMWw]/.test(letter)) return 0.92;
  if (/[ijl.,/()' ]/.test(letter)) return 0.4;
  return /[A-Z]/.test(letter) ? 0.7 : 0.6;
};

/** The most width that a text takes at a size; pixels. */
export const textRoom = (text: string, size: number): number =>
  size * [...text].reduce((sum, letter) => sum + emOf(letter), 0);

/** Squeezed more than this a name could not be read. */
const LEAST_SQUEEZE = 0.6;

/**
 * The largest label that stays within a block of a width. Where none does it stands over the block,
 * in `room` to the next chord; null where there is too little of that as well.
 */
export const blockLabel = (
  chord: string,
  shape: string,
  width: number,
  room: number,
): BlockLabel | null => {
  const [large, small] = [textRoom(chord, 18), textRoom(chord, 13)];
  if (large + 12 <= width) {
    const withShape = large + SHAPE_GAP + textRoom(shape, 13) + 14 <= width;
    return { size: 18, pad: 8, withShape, above: false, squeezed: null };
  }
  const alone = { size: 13, withShape: false } as const;
  if (small + 6 <= width) return { ...alone, pad: 3, above: false, squeezed: null };
  const most = room - 4;
  if (most < small * LEAST_SQUEEZE) return null;
  return { ...alone, pad: 1, above: true, squeezed: most < small ? most : null };
};
