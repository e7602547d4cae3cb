/**
 * How many bars each system of a passage takes: about `usual` of them, never more than `most`, as even
 * as can be, the longer systems first. Whole numbers of at least 1; no bars give no systems.
 * @example breakBars(8, 4, 5) // => [4, 4]
 * @example breakBars(10, 4, 5) // => [4, 3, 3]
 * @example breakBars(9, 4, 5) // => [5, 4]
 */
export const breakBars = (bars: number, usual: number, most: number): readonly number[] => {
  if (bars === 0) return [];
  const count = Math.max(1, Math.ceil(bars / most), Math.round(bars / usual));
  const each = Math.floor(bars / count);
  const longer = bars % count;
  return Array.from({ length: count }, (_, index) => each + (index < longer ? 1 : 0));
};
