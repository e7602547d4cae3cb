import fc from "fast-check";

type Json = unknown;
type Edit = (value: Json) => Json;

const oddValues: readonly Json[] = [
  null,
  true,
  false,
  "",
  "G",
  "own:",
  "own:Mine",
  "__proto__",
  "x".repeat(300),
  "\ud800",
  0,
  -0,
  -1,
  0.5,
  1,
  2,
  3,
  5,
  21,
  22,
  23,
  999,
  1e21,
  -1e308,
  Number.MAX_SAFE_INTEGER,
  [],
  [[]],
  {},
];

const isObject = (value: Json): value is Record<string, Json> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const childrenOf = (value: Json): readonly string[] =>
  Array.isArray(value) ? value.map((_, at) => `${at}`) : isObject(value) ? Object.keys(value) : [];

/** Changes one value deep within another; `way` chooses a child at each level until it ends. */
const changeAt = (
  value: Json,
  way: readonly number[],
  change: (at: Json) => readonly Json[],
): Json => {
  const [turn, ...rest] = way;
  const keys = childrenOf(value);
  const key = turn === undefined ? undefined : keys[turn % Math.max(1, keys.length)];
  if (key === undefined) {
    return change(value)[0] ?? null;
  }
  const isEnd = rest.length === 0;
  if (Array.isArray(value)) {
    const at = Number(key);
    const put = isEnd ? change(value[at]) : [changeAt(value[at], rest, change)];
    return [...value.slice(0, at), ...put, ...value.slice(at + 1)];
  }
  if (!isObject(value)) {
    return value;
  }
  const { [key]: old, ...others } = value;
  const put = isEnd ? change(old) : [changeAt(old, rest, change)];
  return put.length === 0 ? others : { ...value, [key]: put[0] };
};

/** Any JSON value near a good one: parts left out, doubled, or replaced by something else. */
export const jsonNear = (good: fc.Arbitrary<Json>): fc.Arbitrary<Json> => {
  const odd = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...oddValues) },
    { weight: 2, arbitrary: fc.integer({ min: -3, max: 400 }) },
    { weight: 1, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
    { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 12 }) },
    { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3 }) },
  );
  const way = fc.array(fc.nat({ max: 40 }), { minLength: 1, maxLength: 5 });
  const edit: fc.Arbitrary<Edit> = fc.oneof(
    {
      weight: 5,
      arbitrary: fc.tuple(way, odd).map(
        ([to, put]): Edit =>
          (value) =>
            changeAt(value, to, () => [put]),
      ),
    },
    {
      weight: 1,
      arbitrary: way.map(
        (to): Edit =>
          (value) =>
            changeAt(value, to, () => []),
      ),
    },
    {
      weight: 1,
      arbitrary: way.map(
        (to): Edit =>
          (value) =>
            changeAt(value, to, (old) => [old, old]),
      ),
    },
  );
  return fc
    .tuple(good, fc.oneof(fc.array(edit, { maxLength: 2 }), fc.array(edit, { maxLength: 12 })))
    .map(([value, edits]) => edits.reduce((now, change) => change(now), value));
};
