/** Nut to fret in mm on a 25.5 inch (647.7 mm) scale: onlycalculators.com/other/music/fret-calculator. */
export const printedFrets: ReadonlyMap<number, number> = new Map([
  [1, 36.35],
  [2, 70.66],
  [3, 103.05],
  [4, 133.62],
  [5, 162.47],
  [6, 189.71],
  [7, 215.41],
  [8, 239.67],
  [9, 262.58],
  [10, 284.19],
  [12, 323.85],
]);
