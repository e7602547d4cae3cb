import fc from "fast-check";

type Edit = (bytes: Uint8Array) => Uint8Array;

/** The bytes as they are, or with a few of them changed, left out, doubled or cut off. */
export const bytesNear = (whole: fc.Arbitrary<Uint8Array>): fc.Arbitrary<Uint8Array> => {
  const place = fc.nat({ max: 9_999 });
  const at = (bytes: Uint8Array, share: number): number =>
    Math.floor((bytes.length * share) / 10_000);
  const edit: fc.Arbitrary<Edit> = fc.oneof(
    fc.tuple(place, fc.uint8Array({ minLength: 1, maxLength: 4 })).map(
      ([share, put]): Edit =>
        (bytes) => {
          const changed = bytes.slice();
          changed.set(put.subarray(0, bytes.length - at(bytes, share)), at(bytes, share));
          return changed;
        },
    ),
    place.map(
      (share): Edit =>
        (bytes) =>
          bytes.slice(0, at(bytes, share)),
    ),
    fc.tuple(place, fc.nat({ max: 64 })).map(
      ([share, length]): Edit =>
        (bytes) => {
          const from = at(bytes, share);
          return Uint8Array.from([...bytes.subarray(0, from), ...bytes.subarray(from + length)]);
        },
    ),
    fc.tuple(place, place).map(
      ([one, other]): Edit =>
        (bytes) =>
          Uint8Array.from([
            ...bytes.subarray(0, at(bytes, one)),
            ...bytes.subarray(at(bytes, other)),
          ]),
    ),
  );
  return fc
    .tuple(whole, fc.array(edit, { maxLength: 6 }))
    .map(([bytes, edits]) => edits.reduce((now, change) => change(now), bytes));
};
