/**
 * Below 0 where the first list is smaller at the first place where they differ, above 0 where it is
 * larger there, 0 where they are the same. A list that ends comes before one that goes on from there.
 * @example compareInOrder([1, 5, 9], [1, 7, 2]) // => -2
 * @example compareInOrder([1, 5], [1, 5, -3]) // => -1
 */
export const compareInOrder = (a: readonly number[], b: readonly number[]): number => {
  const both = Math.min(a.length, b.length);
  for (let index = 0; index < both; index += 1) {
    const [left, right] = [a[index] ?? 0, b[index] ?? 0];
    if (left !== right) {
      return left - right;
    }
  }
  return a.length - b.length;
};
