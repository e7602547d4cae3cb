import { words } from "../wordTable.ts";
import { eighthsOfMeter, isBeat, isStrong } from "./beats.ts";
import { cutPart } from "./cutPart.ts";
import type { Pattern, PatternMeter, PatternStroke } from "./pattern.ts";
import type { Density, Style, StyleName } from "./picking.ts";
import { type Family, familyIn, pinchStroke } from "./rollTable.ts";
import { inBar, isMeasure, type Segment, type StayShape, segmentsOf } from "./segments.ts";
import { type Tile, tileMeasures } from "./tile.ts";

/**
 * What there is to say about how a stay is filled. `too-short`: a single eighth, pinched;
 * `pattern-gone`: no pattern of the player's has the name; `other-meter`: those that have it are in
 * another meter; `no-fit`: none of them has the length of a part of the stay. Forward rolls stand in.
 */
export type Remark = "too-short" | "pattern-gone" | "other-meter" | "no-fit";

/** The patterns that fill a stay one after the other, and what is to be said about that. */
export type Fitted = {
  readonly pieces: readonly Pattern[];
  readonly remarks: readonly Remark[];
};

/** How to play a stay; without accents where it is `soft`. */
export type FitManner = {
  readonly style: Style;
  readonly density: Density;
  readonly soft: boolean;
};

/** The name of the pinches that stand for a roll. */
const PINCH = "pinch";

const rest: PatternStroke = { picks: [], accent: false, damped: false };

const pinchFor = (meter: PatternMeter, { length }: Segment): Pattern => ({
  name: PINCH,
  meter,
  strokes: Array.from({ length }, (_, eighth) => (eighth === 0 ? pinchStroke : rest)),
});

/** One pattern for a part of a measure. */
const partOf = (family: Family, stay: StayShape, { start, length }: Segment): Pattern => {
  const { parts, wholes } = family;
  const measure = wholes.at(-1);
  const found =
    typeof parts === "string"
      ? measure && cutPart(measure, parts, inBar(stay, start), length)
      : parts.get(length);
  if (!found) {
    throw new Error(`no pattern of ${length} eighths in ${stay.meter}`);
  }
  return found;
};

const tilesOf = (
  patterns: readonly Pattern[],
  meter: PatternMeter,
  wanted: boolean,
): readonly Tile[] =>
  patterns
    .filter(({ strokes }) => strokes.length % eighthsOfMeter[meter] === 0)
    .map((pattern) => ({
      measures: pattern.strokes.length / eighthsOfMeter[meter],
      pattern,
      wanted,
    }))
    .toSorted((a, b) => b.measures - a.measures);

/** Patterns of the player's own that fill a part, once or several times over; null where none do. */
const ownPart = (own: readonly Pattern[], { length }: Segment): readonly Pattern[] | null => {
  const longest = own
    .filter(({ strokes }) => length % strokes.length === 0)
    .toSorted((a, b) => b.strokes.length - a.strokes.length)[0];
  return longest ? Array.from({ length: length / longest.strokes.length }, () => longest) : null;
};

/** A style's patterns, with accents where the meter has them. */
const accented = (
  stay: StayShape,
  pieces: readonly Pattern[],
  own: readonly Pattern[],
): readonly Pattern[] => {
  let at = 0;
  return pieces.map((pattern): Pattern => {
    const start = at;
    at += pattern.strokes.length;
    if (own.includes(pattern)) {
      return pattern;
    }
    const strokes = pattern.strokes.map((stroke, eighth) => ({
      ...stroke,
      accent: stroke.picks.length > 0 && isStrong(stay.meter, inBar(stay, start + eighth)),
    }));
    return { ...pattern, strokes };
  });
};

/** Fills a stay with a style, or with the player's own patterns where they are as long as its parts. */
const fill = (stay: StayShape, style: StyleName, own: readonly Pattern[]): readonly Pattern[] => {
  const family = familyIn(style, stay.meter);
  const wanted = tilesOf(own, stay.meter, true);
  const tiles = [...wanted, ...tilesOf(family.wholes, stay.meter, false)];
  const pieces: Pattern[] = [];
  let run = 0;
  const endRun = (): void => {
    pieces.push(...tileMeasures(run, tiles));
    run = 0;
  };
  const segments = segmentsOf(stay);
  const inMeasures = wanted.length > 0 ? null : own;
  for (const segment of segments) {
    const ofOwn = isMeasure(stay, segment)
      ? inMeasures && ownPart(inMeasures, segment)
      : ownPart(own, segment);
    if (isMeasure(stay, segment) && !ofOwn) {
      run += 1;
    } else {
      endRun();
      pieces.push(...(ofOwn ?? [partOf(family, stay, segment)]));
    }
  }
  endRun();
  return accented(stay, pieces, own);
};

/** The chain with only the first stroke and those on beats left standing. */
const thinned = (stay: StayShape, pieces: readonly Pattern[]): readonly Pattern[] => {
  let at = 0;
  return pieces.map((pattern) => {
    const start = at;
    at += pattern.strokes.length;
    const strokes = pattern.strokes.map((stroke, eighth) =>
      start + eighth === 0 || isBeat(stay.meter, inBar(stay, start + eighth)) ? stroke : rest,
    );
    return { ...pattern, name: words.rolls.onBeats(pattern.name), strokes };
  });
};

const softened = (pieces: readonly Pattern[]): readonly Pattern[] =>
  pieces.map((pattern) => ({
    ...pattern,
    strokes: pattern.strokes.map((stroke) => ({ ...stroke, accent: false })),
  }));

/** The player's own patterns for a style, and what stands in the way of using them. */
const ownFor = (
  style: Style,
  meter: PatternMeter,
  patterns: readonly Pattern[],
): { readonly own: readonly Pattern[]; readonly remark: Remark | null } => {
  if (!style.startsWith("own:")) {
    return { own: [], remark: null };
  }
  const named = patterns.filter(({ name }) => `own:${name}` === style);
  const own = named.filter((pattern) => pattern.meter === meter);
  const missing = named.length === 0 ? "pattern-gone" : "other-meter";
  return { own, remark: own.length === 0 ? missing : null };
};

const isOwn = (style: Style): style is `own:${string}` => style.startsWith("own:");

/** A stay filled with a style, thinned where that is asked for. */
const rolls = (stay: StayShape, manner: FitManner, patterns: readonly Pattern[]): Fitted => {
  const { own, remark } = ownFor(manner.style, stay.meter, patterns);
  const pieces = fill(stay, isOwn(manner.style) ? "forward" : manner.style, own);
  const unused = own.length > 0 && !pieces.some((piece) => own.includes(piece));
  const found = unused ? "no-fit" : remark;
  return {
    pieces: manner.density === "beats" ? thinned(stay, pieces) : pieces,
    remarks: found === null ? [] : [found],
  };
};

const pinches = (stay: StayShape, density: "bars" | "once"): Fitted => {
  const segments = density === "once" ? [{ start: 0, length: stay.length }] : segmentsOf(stay);
  const pieces = segments.map((segment) => pinchFor(stay.meter, segment));
  return { pieces: accented(stay, pieces, []), remarks: [] };
};

const fitted = (stay: StayShape, manner: FitManner, patterns: readonly Pattern[]): Fitted => {
  if (stay.length === 1) {
    return { ...pinches(stay, "once"), remarks: ["too-short"] };
  }
  return manner.density === "full" || manner.density === "beats"
    ? rolls(stay, manner, patterns)
    : pinches(stay, manner.density);
};

/**
 * A chain of patterns that fills a stay exactly, thumb first at its start and, where it can, at each
 * bar line: the part up to the first bar line, whole measures with the fewest joints, the part after
 * the last bar line. A part of a single eighth joins the measure beside it, since a thumb cannot
 * strike twice running; a stay of a single eighth becomes a pinch. A style of the player's own is
 * taken from `patterns` by name. The same input gives the same chain.
 * @example fitRolls({ offset: 0, length: 24, meter: "4/4" }, { style: "forward", density: "full", soft: false }, []).pieces.map(({ strokes }) => strokes.length) // => [16, 8]
 */
export const fitRolls = (
  stay: StayShape,
  manner: FitManner,
  patterns: readonly Pattern[],
): Fitted => {
  const found = fitted(stay, manner, patterns);
  return manner.soft ? { ...found, pieces: softened(found.pieces) } : found;
};
