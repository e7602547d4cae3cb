// Source: the 33 values of `kind` in the MusicXML 4.0 schema. The symbols are common practice, no
// published source; the tests read each with a general-purpose chord dictionary.

/** One value of a harmony's kind. */
export type KindRow = {
  readonly kind: string;
  /** What stands after the root in a chord symbol; null where no symbol says it. */
  readonly suffix: string | null;
};

/** All kinds, in the schema's order. */
export const kindTable: readonly KindRow[] = [
  { kind: "major", suffix: "" },
  { kind: "minor", suffix: "m" },
  { kind: "augmented", suffix: "aug" },
  { kind: "diminished", suffix: "dim" },
  { kind: "dominant", suffix: "7" },
  { kind: "major-seventh", suffix: "maj7" },
  { kind: "minor-seventh", suffix: "m7" },
  { kind: "diminished-seventh", suffix: "dim7" },
  { kind: "augmented-seventh", suffix: "7#5" },
  { kind: "half-diminished", suffix: "m7b5" },
  { kind: "major-minor", suffix: "mMaj7" },
  { kind: "major-sixth", suffix: "6" },
  { kind: "minor-sixth", suffix: "m6" },
  { kind: "dominant-ninth", suffix: "9" },
  { kind: "major-ninth", suffix: "maj9" },
  { kind: "minor-ninth", suffix: "m9" },
  { kind: "dominant-11th", suffix: "11" },
  // No symbol of the dictionary has a major third and an eleventh; the ninth is the nearest.
  { kind: "major-11th", suffix: "maj9" },
  { kind: "minor-11th", suffix: "m11" },
  { kind: "dominant-13th", suffix: "13" },
  { kind: "major-13th", suffix: "maj13" },
  { kind: "minor-13th", suffix: "m13" },
  { kind: "suspended-second", suffix: "sus2" },
  { kind: "suspended-fourth", suffix: "sus4" },
  { kind: "Neapolitan", suffix: null },
  { kind: "Italian", suffix: null },
  { kind: "French", suffix: null },
  { kind: "German", suffix: null },
  { kind: "pedal", suffix: null },
  { kind: "power", suffix: "5" },
  { kind: "Tristan", suffix: null },
  { kind: "other", suffix: null },
  { kind: "none", suffix: null },
];

/**
 * The kind that a suffix is, or null.
 * @example kindOfSuffix("m7b5") // => "half-diminished"
 */
export const kindOfSuffix = (suffix: string): string | null =>
  kindTable.find((row) => row.suffix === suffix)?.kind ?? null;

/**
 * What stands after the root for a kind, or null where no symbol says it.
 * @example suffixOfKind("dominant") // => "7"
 */
export const suffixOfKind = (kind: string): string | null =>
  kindTable.find((row) => row.kind === kind)?.suffix ?? null;

/** A tone added to a kind, lowered or raised in it, or taken out. */
export type KindDegree = {
  readonly value: number;
  /** Semitones; an added tone's are counted from that of a dominant chord. */
  readonly alter: number;
  readonly type: "add" | "alter" | "subtract";
};

/** Symbols that are a kind with a degree. In 7sus4 the seventh is a dominant's, so it is added as is. */
const withDegrees: ReadonlyMap<string, { readonly kind: string; readonly degree: KindDegree }> =
  new Map([
    ["7sus4", { kind: "suspended-fourth", degree: { value: 7, alter: 0, type: "add" } }],
    ["add9", { kind: "major", degree: { value: 9, alter: 0, type: "add" } }],
    ["madd9", { kind: "minor", degree: { value: 9, alter: 0, type: "add" } }],
    ["7b9", { kind: "dominant", degree: { value: 9, alter: -1, type: "add" } }],
    ["7#9", { kind: "dominant", degree: { value: 9, alter: 1, type: "add" } }],
    ["7b5", { kind: "dominant", degree: { value: 5, alter: -1, type: "alter" } }],
  ] as const);

/**
 * A chord symbol's suffix as a kind and its degrees; null where there is none for it.
 * @example kindFor("7sus4") // => { kind: "suspended-fourth", degrees: [{ value: 7, alter: 0, type: "add" }] }
 */
export const kindFor = (
  suffix: string,
): { readonly kind: string; readonly degrees: readonly KindDegree[] } | null => {
  const found = withDegrees.get(suffix);
  if (found !== undefined) {
    return { kind: found.kind, degrees: [found.degree] };
  }
  const kind = kindOfSuffix(suffix);
  return kind === null ? null : { kind, degrees: [] };
};

const degreeMark = ({ value, alter, type }: KindDegree): string => {
  const sign = alter < 0 ? "b".repeat(-alter) : "#".repeat(alter);
  if (type === "subtract") {
    return `no${value}`;
  }
  return sign === "" ? `add${value}` : `${sign}${value}`;
};

/**
 * What stands after the root for a kind and its degrees; null where no symbol says it.
 * @example suffixFor("suspended-fourth", [{ value: 7, alter: 0, type: "add" }]) // => "7sus4"
 */
export const suffixFor = (kind: string, degrees: readonly KindDegree[]): string | null => {
  const [only, ...more] = degrees;
  if (only !== undefined && more.length === 0) {
    for (const [suffix, { kind: own, degree }] of withDegrees) {
      const { value, alter, type } = degree;
      if (own === kind && value === only.value && alter === only.alter && type === only.type) {
        return suffix;
      }
    }
  }
  const suffix = suffixOfKind(kind);
  return suffix === null ? null : `${suffix}${degrees.map(degreeMark).join("")}`;
};
