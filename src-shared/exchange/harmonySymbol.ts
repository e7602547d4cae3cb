import { silence } from "../chart/chordSymbol.ts";
import { chordName } from "../harmony/chord.ts";
import { readChord, readQuality } from "../harmony/readChord.ts";
import { words } from "../wordTable.ts";
import { type KindDegree, suffixFor } from "./kindTable.ts";
import { childOf, childrenOf, textAt, type XmlElement } from "./xmlTree.ts";

/** A harmony as a chart writes it, or what could not be read of it, in words. */
export type SymbolFound =
  | { readonly ok: true; readonly symbol: string; readonly left: string | null }
  | { readonly ok: false; readonly left: string };

const noteOf = (parent: XmlElement, name: "root" | "bass"): string | null => {
  const part = childOf(parent, name);
  const step = part && textAt(part, `${name}-step`);
  if (part === null || step === null || !/^[A-G]$/.test(step)) {
    return null;
  }
  const alter = Math.round(Number(textAt(part, `${name}-alter`) ?? "0"));
  if (!(Math.abs(alter) <= 1)) {
    return null;
  }
  return `${step}${["b", "", "#"][alter + 1] ?? ""}`;
};

const degreesOf = (harmony: XmlElement): readonly KindDegree[] =>
  childrenOf(harmony, "degree").flatMap((degree) => {
    const value = Number(textAt(degree, "degree-value"));
    const alter = Number(textAt(degree, "degree-alter") ?? "0");
    const type = textAt(degree, "degree-type");
    const known = type === "add" || type === "alter" || type === "subtract";
    return known && value >= 1 && value <= 13 && Math.abs(alter) <= 2
      ? [{ value, alter, type }]
      : [];
  });

const sameQuality = (one: string, other: string): boolean => {
  const [first, second] = [readQuality(one), readQuality(other)];
  const named = (reading: typeof first): string | null =>
    reading.kind === "ours" ? reading.quality : reading.kind === "lacking" ? reading.nearest : null;
  return named(first) !== null && named(first) === named(second);
};

/** The spellings to try, the fullest first: the printed text where it is of that kind. */
const suffixesOf = (harmony: XmlElement, kind: string): readonly string[] => {
  const printed = childOf(harmony, "kind")?.attributes["text"] ?? null;
  const degrees = degreesOf(harmony);
  const full = suffixFor(kind, degrees);
  const bare = suffixFor(kind, []);
  const agrees = printed !== null && (bare === null || sameQuality(printed, full ?? bare));
  return [agrees ? printed : null, full, bare].filter((suffix) => suffix !== null);
};

/**
 * Reads a harmony element: root, kind, degrees and bass. What a chart has no symbol for comes as the
 * nearest it has, and that is said; a harmony without a root by letter is left.
 */
export const harmonySymbol = (harmony: XmlElement, bar: string): SymbolFound => {
  const kind = textAt(harmony, "kind") ?? "";
  if (kind === "none") {
    return { ok: true, symbol: silence.symbol, left: null };
  }
  const root = noteOf(harmony, "root");
  if (root === null) {
    return { ok: false, left: words.import.noRoot(bar) };
  }
  const bass = noteOf(harmony, "bass");
  const suffixes = suffixesOf(harmony, kind);
  for (const [index, suffix] of suffixes.entries()) {
    const reading = readChord(`${root}${suffix}${bass === null ? "" : `/${bass}`}`);
    if (reading.ok) {
      const symbol = chordName(reading.chord);
      const more = index > 0 && suffixes.length > 2;
      return {
        ok: true,
        symbol,
        left: more ? words.import.addedTones(bar, symbol) : null,
      };
    }
  }
  return {
    ok: false,
    left: words.import.noHarmony(bar, root, kind),
  };
};
