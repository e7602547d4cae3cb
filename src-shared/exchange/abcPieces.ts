/// <reference path="./abcjsParse.d.ts" />

import type Parse from "abcjs/src/parse/abc_parse.js";
import { TICKS_PER_QUARTER } from "../units.ts";
import { words } from "../wordTable.ts";
import { abcSymbol } from "./abcSymbol.ts";
import { chartLabel } from "./chartFromBars.ts";
import { type Jump, jumpInWords, type PlacedJump } from "./jump.ts";
import type { Piece, PieceSymbol } from "./piece.ts";

type AbcTune = ReturnType<Parse["getTune"]>;
type AbcStaff = NonNullable<AbcTune["lines"][number]["staff"]>[number];
type AbcElement = NonNullable<AbcStaff["voices"]>[number][number];

/** A tune's bars as pieces, with what was met on the way. */
export type AbcReading = {
  readonly pieces: readonly Piece[];
  readonly chords: number;
  readonly notes: number;
  readonly jumps: readonly PlacedJump[];
  readonly left: readonly string[];
};

const TICKS_PER_WHOLE = 4 * TICKS_PER_QUARTER;
const MAX_LEFT = 20;

const meterName = (given: Pick<AbcElement, "type" | "value">): string => {
  if (given.type === "common_time") {
    return "4/4";
  }
  if (given.type === "cut_time") {
    return "2/2";
  }
  const [value] = given.value ?? [];
  return value === undefined ? "free time" : `${value.num}/${value.den ?? "1"}`;
};

const passesOf = (text: string): readonly number[] => {
  const passes = text.split(",").flatMap((part) => {
    const [first = 1, last = first] = part.split("-").map((each) => Number.parseInt(each, 10) || 1);
    const count = Math.min(16, Math.max(1, last - first + 1));
    return Array.from({ length: count }, (_, index) => first + index);
  });
  return [...new Set(passes)].toSorted((a, b) => a - b);
};

/** Decorations of ABC 2.1, section 4.14, and the parser's own longer ones. */
const decorated: ReadonlyMap<string, Jump> = new Map<string, Jump>([
  ["segno", { kind: "segno", name: "" }],
  ["coda", { kind: "codaSign" }],
  ["fine", { kind: "fine" }],
  ["D.C.", { kind: "back", to: "start", name: "", until: null }],
  ["D.S.", { kind: "back", to: "segno", name: "", until: null }],
  ["D.C.alfine", { kind: "back", to: "start", name: "", until: "fine" }],
  ["D.C.alcoda", { kind: "back", to: "start", name: "", until: "coda" }],
  ["D.S.alfine", { kind: "back", to: "segno", name: "", until: "fine" }],
  ["D.S.alcoda", { kind: "back", to: "segno", name: "", until: "coda" }],
]);

/** What decorations, annotations and words in the place of chords say of jumps. */
const jumpsOf = ({ decoration, chord }: AbcElement): readonly Jump[] => [
  ...(decoration ?? []).flatMap((name) => decorated.get(name) ?? []),
  ...(chord ?? []).flatMap(({ name }) => jumpInWords(name) ?? []),
];

/** The voices of all lines, each joined; a line's metre comes first in its first voice. */
const voicesOf = (tune: AbcTune): readonly (readonly AbcElement[])[] => {
  const voices = new Map<string, AbcElement[]>();
  for (const { staff: staves } of tune.lines) {
    for (const [staffAt, staff] of (staves ?? []).entries()) {
      for (const [voiceAt, voice] of (staff.voices ?? []).entries()) {
        const known = voices.get(`${staffAt} ${voiceAt}`) ?? [];
        if (staff.meter !== undefined) {
          known.push({ ...staff.meter, el_type: "meter" });
        }
        known.push(...voice);
        voices.set(`${staffAt} ${voiceAt}`, known);
      }
    }
  }
  return [...voices.values()];
};

const symbolsIn = (voice: readonly AbcElement[]): number =>
  voice.filter((element) => element.chord !== undefined).length;

/** What bar lines that touch each other say together: colons before and behind the line. */
const colons = (marks: string): { readonly closes: number; readonly opens: number } => {
  // Decorations and words may stand before the line.
  const line = marks.replace(/![^!]*!|"[^"]*"/g, "").replace(/[\s"]|\[?[\d,-]+$/g, "");
  if (/^:+$/.test(line)) {
    const half = Math.max(1, Math.floor(line.length / 2));
    return { closes: half + 1, opens: 2 };
  }
  const closes = /^:*/.exec(line)?.[0].length ?? 0;
  const opens = /:*$/.exec(line)?.[0].length ?? 0;
  return { closes: closes + 1, opens: opens + 1 };
};

/** Reads a parsed tune's bars from the voice that has the most chord symbols. */
export const abcPieces = (tune: AbcTune, text: string): AbcReading => {
  const voice = voicesOf(tune).reduce<readonly AbcElement[]>(
    (most, each) => (symbolsIn(each) > symbolsIn(most) || most.length === 0 ? each : most),
    [],
  );
  const pieces: Piece[] = [];
  const left: string[] = [];
  const jumps: PlacedJump[] = [];
  let meter = "free time";
  let pieceMeter = meter;
  let [chords, notes, length, multiplier] = [0, 0, 0, 1];
  let symbols: PieceSymbol[] = [];
  let label: string | null = null;
  let opensRepeat = false;
  let ending: readonly number[] | null = null;
  let marks = "";

  const closePiece = (): void => {
    if (length > 0) {
      const number = `${pieces.length + 1}`;
      const piece = { number, meter: pieceMeter, length, symbols, label, opensRepeat, ending };
      pieces.push({ ...piece, plays: 1, endsEnding: false });
      [symbols, length, label, opensRepeat, ending] = [[], 0, null, false, null];
    }
  };
  /** The bar lines before this note, taken together, are settled. */
  const settleLines = (): void => {
    if (marks === "") {
      return;
    }
    const { closes, opens } = colons(marks);
    const last = pieces.at(-1);
    if (last !== undefined && pieces.length > 0) {
      const double = /\|\||\|\]|\[\|/.test(marks);
      pieces[pieces.length - 1] = { ...last, plays: closes, endsEnding: closes === 1 && double };
    }
    opensRepeat ||= opens > 1;
    marks = "";
  };
  const takeNote = (element: AbcElement): void => {
    settleLines();
    if (element.rest?.type === "spacer") {
      return;
    }
    if (length === 0) {
      pieceMeter = meter;
    }
    if (element.startTriplet !== undefined) {
      multiplier = element.tripletMultiplier ?? 1;
    }
    for (const jump of jumpsOf(element)) {
      const first = jump.kind === "toCoda" || jump.kind === "codaSign";
      const leaves = pieces.length + (first && length === 0 ? 0 : 1);
      jumps.push({ jump, enters: pieces.length, leaves });
    }
    for (const { name, position } of element.chord ?? []) {
      const isOther = position !== undefined && position !== "default";
      if (isOther || jumpInWords(name) !== null) {
        continue;
      }
      const found = abcSymbol(name);
      if (found.left !== null) {
        left.push(words.import.barSays(pieces.length + 1, found.left));
      }
      if (found.symbol !== null) {
        chords += 1;
        symbols.push({ at: length, symbol: found.symbol });
      }
    }
    notes += element.pitches === undefined ? 0 : 1;
    const lasts = (element.duration ?? 0) * TICKS_PER_WHOLE * multiplier;
    // A broken L: or length leaves no number.
    length += Number.isFinite(lasts) && lasts > 0 ? lasts : 0;
    if (element.endTriplet === true) {
      multiplier = 1;
    }
  };
  for (const element of voice) {
    if (element.el_type === "note") {
      takeNote(element);
    } else if (element.el_type === "bar") {
      closePiece();
      for (const jump of jumpsOf(element)) {
        jumps.push({ jump, enters: pieces.length, leaves: pieces.length });
      }
      marks += text.slice(element.startChar ?? 0, element.endChar ?? 0);
      if (element.startEnding !== undefined) {
        settleLines();
        ending = passesOf(element.startEnding);
      }
    } else if (element.el_type === "meter") {
      meter = meterName(element);
    } else if (element.el_type === "part") {
      closePiece();
      label = chartLabel(element.title ?? "") ?? label;
    }
  }
  closePiece();
  settleLines();
  const more = left.length > MAX_LEFT ? [words.import.more(left.length - MAX_LEFT)] : [];
  return { pieces, chords, notes, jumps, left: [...left.slice(0, MAX_LEFT), ...more] };
};
