import { words } from "../wordTable.ts";
import { explicitRepeats, repeatsOf } from "./explicitRepeats.ts";
import type { Jump, PlacedJump } from "./jump.ts";
import type { Piece } from "./piece.ts";

/** Pieces with what is played after a jump written out, and what was done, in words. */
export type Followed = {
  readonly pieces: readonly Piece[];
  readonly read: readonly string[];
  readonly left: readonly string[];
};

/** No tune is written out beyond so many pieces; the chart refuses it then. */
const MOST_PIECES = 6000;

type Back = PlacedJump & { readonly jump: Jump & { readonly kind: "back" } };

const isBack = (placed: PlacedJump): placed is Back => placed.jump.kind === "back";

/** Signs of a coda alone: the last starts it, the ones before it leave for it. */
const settled = (jumps: readonly PlacedJump[]): readonly PlacedJump[] => {
  const told = jumps.some(({ jump }) => jump.kind === "toCoda");
  const last = jumps.findLastIndex(({ jump }) => jump.kind === "codaSign");
  return jumps.map((placed, index) => {
    if (placed.jump.kind !== "codaSign") {
      return placed;
    }
    const kind = told || index === last ? ("coda" as const) : ("toCoda" as const);
    return { ...placed, jump: { kind, name: "" } };
  });
};

const nameOf = ({ jump }: PlacedJump): string => ("name" in jump ? jump.name : "");

/** The sign that a jump means: one of its name, or else the nearest, seen from a line. */
const signFor = (
  placed: PlacedJump,
  kind: "segno" | "coda",
  jumps: readonly PlacedJump[],
): number | null => {
  const all = jumps.filter(({ jump }) => jump.kind === kind);
  const named = all.filter((each) => nameOf(each) === nameOf(placed));
  const lines = (named.length > 0 ? named : all).map(({ enters }) => enters);
  const before = lines.findLast((line) => line < placed.leaves);
  const after = lines.find((line) => line >= placed.leaves);
  return (kind === "segno" ? before : (after ?? before)) ?? null;
};

const plain = (piece: Piece): Piece => ({
  ...piece,
  label: null,
  opensRepeat: false,
  plays: 1,
  ending: null,
  endsEnding: false,
});

const labelled = (pieces: readonly Piece[], label: string): readonly Piece[] =>
  pieces.map((piece, at) => (at === 0 ? { ...piece, label: piece.label ?? label } : piece));

const barsIn = (pieces: readonly Piece[]): string => {
  const [first, last] = [pieces[0]?.number, pieces.at(-1)?.number];
  return first === last ? words.import.bar(`${first}`) : words.import.barsTo(`${first}`, `${last}`);
};

/**
 * Follows da capo, dal segno, coda and fine: what is played again is written again behind the bars as
 * they stand, once and with its last endings, as is the custom after a jump; the coda follows.
 * A jump that cannot be followed leaves all bars as they stand, and says so.
 */
export const followJumps = (given: readonly Piece[], found: readonly PlacedJump[]): Followed => {
  const jumps = settled(found);
  const backs = jumps.filter(isBack).toSorted((a, b) => a.leaves - b.leaves);
  const asWritten = (why: string): Followed => ({
    pieces: given,
    read: [],
    left: [words.import.jumps.asWritten(why)],
  });
  if (backs.length === 0) {
    const away = jumps.find(({ jump }) => jump.kind === "toCoda");
    return away === undefined
      ? { pieces: given, read: [], left: [] }
      : asWritten(words.import.jumps.coda);
  }
  const pieces = explicitRepeats(given);
  const { skipped, within } = repeatsOf(pieces);
  const out: Piece[] = [];
  const read: string[] = [];
  const left: string[] = [];
  const taken = new Set<Back>();
  let at = 0;
  let label: string | null = null;
  for (;;) {
    const from = at;
    const back = backs.find((each) => !taken.has(each) && each.leaves > from);
    const written = explicitRepeats(pieces.slice(from, back?.leaves ?? pieces.length));
    out.push(...(label === null ? written : labelled(written, label)));
    if (back === undefined || out.length > MOST_PIECES) {
      return { pieces: out, read, left };
    }
    taken.add(back);
    const { to, until } = back.jump;
    const name = to === "start" ? words.import.jumps.daCapo : words.import.jumps.dalSegno;
    const where = words.import.bar(pieces[back.leaves - 1]?.number ?? "1");
    if (within.has(back.leaves)) {
      return asWritten(words.import.jumps.repeat(name, where));
    }
    const start = to === "start" ? 0 : signFor(back, "segno", jumps);
    if (start === null) {
      return asWritten(words.import.jumps.segno(name, where));
    }
    const leavesAt = (line: number, kind: "fine" | "toCoda"): PlacedJump | undefined =>
      jumps.find(({ jump, leaves }) => jump.kind === kind && leaves === line);
    const again: Piece[] = [];
    let goesTo: number | null = back.leaves;
    let ends: "fine" | "coda" | null = null;
    for (let piece = start; piece < back.leaves; piece += 1) {
      const played = pieces[piece];
      if (played !== undefined && !skipped.has(piece)) {
        again.push(plain(played));
        const line = piece + 1;
        if (until !== "coda" && leavesAt(line, "fine") !== undefined) {
          [goesTo, ends] = [null, "fine"];
          break;
        }
        const away = until === "fine" ? undefined : leavesAt(line, "toCoda");
        const coda = away && signFor(away, "coda", jumps);
        if (coda !== null && coda !== undefined) {
          [goesTo, ends] = [coda, "coda"];
          break;
        }
      }
    }
    const marks = taken.size > 1 ? `-${taken.size}` : "";
    out.push(...labelled(again, `${to === "start" ? "Da-capo" : "Dal-segno"}${marks}`));
    read.push(words.import.jumps.again(name, where, barsIn(again), ends));
    if (until !== null && ends === null) {
      left.push(words.import.jumps.noUntil(name, where, until));
    }
    if (goesTo === null) {
      return { pieces: out, read, left };
    }
    label = ends === null ? null : "Coda";
    at = goesTo;
  }
};
