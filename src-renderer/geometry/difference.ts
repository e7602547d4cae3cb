/** Where two texts differ: the first place, what stood there, and what stands there now. */
export const difference = (
  before: string,
  after: string,
): { readonly from: number; readonly removed: string; readonly inserted: string } => {
  const shorter = Math.min(before.length, after.length);
  let from = 0;
  while (from < shorter && before[from] === after[from]) from++;
  let tail = 0;
  while (tail < shorter - from && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  return {
    from,
    removed: before.slice(from, before.length - tail),
    inserted: after.slice(from, after.length - tail),
  };
};
