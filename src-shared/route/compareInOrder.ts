/**
 * Below 0 where the first list is smaller at the first place where they differ, above 0 where it is
 * larger there, 0 where they are the same. Lists of one length.
 * @example compareInOrder([1, 5, 9], [1, 7, 2]) // => -2
 */
export const compareInOrder = (a: readonly number[], b: readonly number[]): number => {
  for (let index = 0; index < a.length; index += 1) {
    const [left, right] = [a[index] ?? 0, b[index] ?? 0];
    if (left !== right) {
      return left - right;
    }
  }
  return 0;
};
