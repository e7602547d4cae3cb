/**
 * Values by what `keyOf` gives for them: keys in the order of their first value, values in theirs.
 * @example [...grouped([1, 2, 3], (n) => n % 2)] // => [[1, [1, 3]], [0, [2]]]
 */
export const grouped = <Key, Value>(
  values: readonly Value[],
  keyOf: (value: Value) => Key,
): ReadonlyMap<Key, readonly Value[]> => {
  const groups = new Map<Key, Value[]>();
  for (const value of values) {
    const key = keyOf(value);
    const group = groups.get(key);
    if (group) {
      group.push(value);
    } else {
      groups.set(key, [value]);
    }
  }
  return groups;
};
