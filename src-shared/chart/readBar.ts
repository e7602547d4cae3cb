import type { Diagnostic } from "../diagnostic.ts";
import { words as wordTable } from "../wordTable.ts";
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

const inDots = (eighths: number, dot: 1 | 2): string =>
  dot === 1 ? `${eighths}` : inQuarters(eighths);

const ofDots = (eighths: number, meter: Meter): string => {
  const dot = eighthsInDot(meter);
  const { one, many } = wordTable.notes.dots[meter.unit];
  return `${inDots(eighths, dot)} ${eighths > dot ? many : one}`;
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
          errorAt(spot, "stray-mark", wordTable.notes.dot.first, wordTable.notes.dot.firstTry),
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
        wordTable.notes.dot.eighth(`${meter.beats}/${meter.unit}`),
        wordTable.notes.dot.eighthTry,
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
      errorAt(spot, "stray-mark", wordTable.notes.apostrophe.says, wordTable.notes.apostrophe.try),
    );
  };
  const takeSymbol = (spot: Spot, text: string): void => {
    const reading = context.read(text);
    if (reading.ok) {
      symbols.push({ ...spot, kind: reading.value.kind });
      const { chord, symbol } = reading.value;
      if (chord !== null && chord.standsFor !== null) {
        const says = wordTable.notes.reduced.says(symbol, chord.name);
        notes.push(hintAt(spot, "reduced", says, wordTable.notes.reduced.try));
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
          wordTable.notes.stray.dot(wordTable.notes.dots[meter.unit].one, text),
          wordTable.notes.stray.dotTry,
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
        wordTable.notes.barRepeat.says,
        barRepeats > 1 && cells.length === 0
          ? wordTable.notes.barRepeat.two
          : wordTable.notes.barRepeat.try(wordTable.notes.dots[meter.unit].one),
      ),
    );
  } else if (barRepeats > 0) {
    if (before !== null) return { stays: before, symbols, notes };
    notes.push(
      errorAt(
        start,
        "no-bar-before",
        wordTable.notes.barRepeat.first,
        wordTable.notes.barRepeat.firstTry,
      ),
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
        ? wordTable.notes.unevenBar.count(
            wordTable.notes.dots[meter.unit].many,
            `${names.join(" ")}${" .".repeat((full - total) / dot)}`,
          )
        : wordTable.notes.unevenBar.divide(dot === 2);
    notes.push(
      errorAt(
        start,
        "uneven-bar",
        wordTable.notes.unevenBar.says(cells.length, meter.beats, meter.unit),
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
        wordTable.notes.barLength.says(ofDots(total, meter), inDots(full, dot)),
        total < full
          ? wordTable.notes.barLength.add(ofDots(missing, meter), missing % dot === 1)
          : wordTable.notes.barLength.takeOut(ofDots(missing, meter)),
      ),
    );
  }
  return { stays: fillBar(cells, full), symbols, notes };
};
