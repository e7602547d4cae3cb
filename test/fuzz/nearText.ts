import fc from "fast-check";

/** What texts of a kind are made of. */
export type TextKind = {
  /** Good texts to start from. */
  readonly seeds: readonly string[];
  /** Pieces that mean something in such a text, or nearly do. */
  readonly scraps: readonly string[];
  /** One piece of such a text; half of all edits keep to these edges. Global. */
  readonly piece: RegExp;
};

const MOST_CHARACTERS = 12_000;
const SHARES = 10_000;

type Edit = (text: string) => string;

const edgesOf = (text: string, piece: RegExp): readonly number[] => [
  0,
  ...[...text.matchAll(piece)].map(({ index, 0: found }) => index + found.length),
];

/** Places within a text told as shares of it, so that they hold whatever its length. */
const spanAt = (
  text: string,
  from: number,
  length: number,
  piece: RegExp | null,
): readonly [number, number] => {
  const edges = piece === null ? null : edgesOf(text, piece);
  if (edges === null) {
    const start = Math.floor((text.length * from) / SHARES);
    return [start, Math.min(text.length, start + length)];
  }
  const first = Math.floor((edges.length * from) / (SHARES + 1));
  const last = Math.min(edges.length - 1, first + length);
  return [edges[first] ?? 0, edges[last] ?? text.length];
};

const putIn = (text: string, [from, to]: readonly [number, number], put: string): string =>
  text.slice(0, from) + put + text.slice(to);

const oddCharacters = ["\u0000", "\ufeff", "\u2028", "\ud800", "é", "♭", "𝄞", "\r", "\t", "\u202e"];

/** Any text near a good one: a few pieces left out, put in, doubled, moved or cut off. */
export const textNear = ({ seeds, scraps, piece }: TextKind): fc.Arbitrary<string> => {
  const place = fc.nat({ max: SHARES });
  const length = fc.oneof(fc.nat({ max: 4 }), fc.nat({ max: 60 }));
  const edges = fc.constantFrom(piece, null);
  const put = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...scraps) },
    { weight: 1, arbitrary: fc.constantFrom(...oddCharacters) },
    { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 6 }) },
    {
      weight: 2,
      arbitrary: fc
        .tuple(fc.constantFrom(...seeds), place, length)
        .map(([seed, from, long]) => seed.slice(...spanAt(seed, from, long, piece))),
    },
  );
  const edit: fc.Arbitrary<Edit> = fc.oneof(
    {
      weight: 5,
      arbitrary: fc.tuple(place, length, edges, put).map(
        ([from, long, edge, what]) =>
          (text: string) =>
            putIn(text, spanAt(text, from, long, edge), what),
      ),
    },
    {
      weight: 3,
      arbitrary: fc.tuple(place, edges, put).map(
        ([from, edge, what]) =>
          (text: string) =>
            putIn(text, spanAt(text, from, 0, edge), what),
      ),
    },
    {
      weight: 2,
      arbitrary: fc
        .tuple(place, length, edges, fc.oneof(fc.nat({ max: 3 }), fc.nat({ max: 200 })))
        .map(([from, long, edge, times]) => (text: string) => {
          const span = spanAt(text, from, long, edge);
          return putIn(text, span, text.slice(...span).repeat(times));
        }),
    },
    {
      weight: 1,
      arbitrary: place.map(
        (from) => (text: string) => text.slice(0, Math.floor((text.length * from) / SHARES)),
      ),
    },
  );
  return fc
    .tuple(
      fc.constantFrom(...seeds, ""),
      fc.oneof(fc.array(edit, { maxLength: 3 }), fc.array(edit, { maxLength: 24 })),
    )
    .map(([seed, edits]) =>
      edits.reduce((text, change) => change(text).slice(0, MOST_CHARACTERS), seed),
    );
};
