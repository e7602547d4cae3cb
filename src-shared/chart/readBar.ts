import type { Diagnostic } from "../diagnostic.ts";
import { type ChordSymbol, type SymbolReading, silence } from "./chordSymbol.ts";
import { eighthsIn, eighthsInDot } from "./pulse.ts";
import type { Meter, Stay } from "./song.ts";
import { errorAt, hintAt, type Spot } from "./spot.ts";

/** A word of a bar: chord symbols and marks, glued as typed. */
export type Word = Spot & { readonly text: string };

/** Where a chord symbol stands in the text. */
export type SymbolSpot = Spot & { readonly kind: ChordSymbol["kind"] };

/** What a bar needs to know of what came before it, and how symbols are read. */
export type BarContext = {
  readonly meter: Meter;
  /** The bar before, or null at the chart's start. */
  readonly before: readonly Stay[] | null;
  readonly read: (symbol: string) => SymbolReading;
};

/** A bar's content as read; the stays always fill the bar. */
export type BarContent = {
  readonly stays: readonly Stay[];
  readonly symbols: readonly SymbolSpot[];
  readonly notes: readonly Diagnostic[];
};

type Cell = { readonly says: Pick<Stay, "symbol" | "chord">; eighths: number; fresh: boolean };

// Marks end a symbol; "N.C." alone has dots of its own.
const pieces = /n\.c\.?(?=[.,'’…]|$)|nc(?=[.,'’…]|$)|[.,'’…%]|[^.,'’…%]+/giy;

const inQuarters = (eighths: number): string =>
  eighths % 2 === 0 ? `${eighths / 2}` : `${eighths === 1 ? "" : (eighths - 1) / 2}½`;

/** What a dot is called: in 4/4 the beat, in cut time half of it. */
const dotNames: Readonly<Record<Meter["unit"], string>> = {
  2: "quarter note",
  4: "beat",
  8: "eighth note",
};

const inDots = (eighths: number, dot: 1 | 2): string =>
  dot === 1 ? `${eighths}` : inQuarters(eighths);

const ofDots = (eighths: number, meter: Meter): string => {
  const dot = eighthsInDot(meter);
  return `${inDots(eighths, dot)} ${dotNames[meter.unit]}${eighths > dot ? "s" : ""}`;
};

const fillBar = (cells: readonly Cell[], full: number): readonly Stay[] => {
  const stays: Stay[] = [];
  let left = full;
  for (const [index, { says, eighths }] of cells.entries()) {
    if (left === 0) break;
    const taken = index === cells.length - 1 ? left : Math.min(eighths, left);
    if (taken > 0) stays.push({ symbol: says.symbol, chord: says.chord, eighths: taken });
    left -= taken;
  }
  return stays;
};

/**
 * Reads one bar's words. Chords share the bar evenly; with a dot, comma or apostrophe they are
 * counted in quarters: a chord is one, "." one more, "," half of one more, "'" halves a chord's. In
 * 6/8 and 9/8 they are counted in eighths, and half of one is refused.
 * A bar that does not come out is reported at `end` and fitted.
 */
export const readBar = (words: readonly Word[], end: Spot, context: BarContext): BarContent => {
  const { meter, before } = context;
  const full = eighthsIn(meter);
  const dot = eighthsInDot(meter);
  const notes: Diagnostic[] = [];
  const symbols: SymbolSpot[] = [];
  const cells: Cell[] = [];
  const held = before?.at(-1) ?? silence;
  let counted = false;
  let barRepeats = 0;

  const stretch = (spot: Spot, eighths: number): void => {
    counted = true;
    if (cells.length === 0) {
      if (before === null) {
        notes.push(
          errorAt(spot, "stray-mark", "There is no chord before this dot.", "Write a chord first."),
        );
      }
      cells.push({ says: held, eighths: 0, fresh: false });
    }
    const last = cells.at(-1);
    if (last !== undefined) {
      last.eighths += eighths;
      last.fresh = false;
    }
  };
  const refuseHalf = (spot: Spot): void => {
    notes.push(
      errorAt(
        spot,
        "stray-mark",
        `A chord or dot is an eighth note in ${meter.beats}/${meter.unit}, and there is nothing shorter.`,
        "Write dots: G . . is three eighth notes of G.",
      ),
    );
  };
  const halve = (spot: Spot): void => {
    counted = true;
    if (dot === 1) {
      refuseHalf(spot);
      return;
    }
    const last = cells.at(-1);
    if (last?.fresh === true) {
      last.eighths = dot / 2;
      last.fresh = false;
      return;
    }
    notes.push(
      errorAt(
        spot,
        "stray-mark",
        "An apostrophe stands right behind a chord.",
        "Write it as in G', for half a beat of G.",
      ),
    );
  };
  const takeSymbol = (spot: Spot, text: string): void => {
    const reading = context.read(text);
    if (reading.ok) {
      symbols.push({ ...spot, kind: reading.value.kind });
      const { chord, symbol } = reading.value;
      if (chord !== null && chord.standsFor !== null) {
        const says = `${symbol} is played as ${chord.name}, its nearest shape.`;
        notes.push(hintAt(spot, "reduced", says, "The bass and the singer fill it up."));
      }
      cells.push({ says: reading.value, eighths: dot, fresh: true });
      return;
    }
    notes.push(errorAt(spot, "unknown-chord", reading.says, reading.try));
    cells.push({ says: cells.at(-1)?.says ?? held, eighths: dot, fresh: true });
  };
  const takePiece = (spot: Spot, text: string): void => {
    if (text === ".") stretch(spot, dot);
    else if (text === "…") stretch(spot, 3 * dot);
    else if (text === ",") {
      if (dot === 1) refuseHalf(spot);
      stretch(spot, 1);
    } else if (text === "'" || text === "’") halve(spot);
    else if (text === "%") barRepeats += 1;
    else if (text === "/" || text === "-") {
      notes.push(
        errorAt(
          spot,
          "stray-mark",
          `One more ${dotNames[meter.unit]} is a dot here, not ${text}.`,
          "Write a dot.",
        ),
      );
      stretch(spot, dot);
    } else takeSymbol(spot, text);
  };

  for (const word of words) {
    for (const found of word.text.matchAll(pieces)) {
      const column = word.column + found.index;
      const offset = word.offset + found.index;
      takePiece({ line: word.line, column, offset, length: found[0].length }, found[0]);
    }
  }

  const start = words[0] ?? end;
  if (barRepeats > 1 || (barRepeats > 0 && cells.length > 0)) {
    notes.push(
      errorAt(
        start,
        "stray-mark",
        "% repeats a whole bar and stands alone.",
        barRepeats > 1 && cells.length === 0
          ? "Write | % | % | for two bars."
          : `Put it between bar lines, or write a dot for one more ${dotNames[meter.unit]}.`,
      ),
    );
  } else if (barRepeats > 0) {
    if (before !== null) return { stays: before, symbols, notes };
    notes.push(
      errorAt(start, "no-bar-before", "There is no bar before this %.", "Write the chords."),
    );
  }

  if (cells.length === 0 && barRepeats > 1 && before !== null)
    return { stays: before, symbols, notes };
  if (cells.length === 0) cells.push({ says: held, eighths: full, fresh: false });
  const total = cells.reduce((sum, cell) => sum + cell.eighths, 0);
  if (!counted && full % cells.length === 0) {
    for (const cell of cells) cell.eighths = full / cells.length;
  } else if (!counted) {
    const names = cells.map((cell) => cell.says.symbol);
    const advice =
      total < full
        ? `Count the ${dotNames[meter.unit]}s with dots: ${names.join(" ")}${" .".repeat((full - total) / dot)} fills it.`
        : `Put a bar line between them${dot === 1 ? "" : ", or halve some, as in G'"}.`;
    notes.push(
      errorAt(
        start,
        "uneven-bar",
        `${cells.length} chords do not share a bar of ${meter.beats}/${meter.unit} evenly.`,
        advice,
      ),
    );
    if (total > full) for (const cell of cells) cell.eighths = 1;
  } else if (total !== full) {
    const missing = Math.abs(full - total);
    notes.push(
      errorAt(
        end,
        "wrong-length",
        `${ofDots(total, meter)} in a bar of ${inDots(full, dot)}.`,
        total < full
          ? `Add ${ofDots(missing, meter)}: a dot is one${missing % dot === 1 ? ", a comma half of one" : ""}.`
          : `Take ${ofDots(missing, meter)} out, or put a bar line before.`,
      ),
    );
  }
  return { stays: fillBar(cells, full), symbols, notes };
};
