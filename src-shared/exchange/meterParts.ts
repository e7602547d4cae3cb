import { readMeter } from "../chart/headerValues.ts";
import { eighthsIn } from "../chart/pulse.ts";
import type { Meter } from "../chart/song.ts";
import { type Refusal, refuse } from "../harmony/refusal.ts";
import { TICKS_PER_EIGHTH } from "../units.ts";
import { words } from "../wordTable.ts";
import { explicitRepeats, repeatsOf } from "./explicitRepeats.ts";
import type { Piece } from "./piece.ts";

/** Pieces in one metre: a whole tune, or the part of one between two changes of metre. */
export type MeterPart = {
  readonly meter: Meter;
  readonly pieces: readonly Piece[];
  /** What stands behind the title of a tune that came in several parts; empty for a whole one. */
  readonly named: string;
  readonly left: readonly string[];
};

/** What a tune is in a language of one metre: one part or several, or why it is none. */
export type MeterParts = { readonly ok: true; readonly parts: readonly MeterPart[] } | Refusal;

/** A part of fewer bars is no song of its own. */
const LEAST_BARS = 4;

type Run = { readonly name: string; readonly pieces: readonly Piece[] };

const signatureOf = (name: string): readonly [number, number] | null => {
  const [, beats, unit] = /^(\d{1,3})\/(\d{1,3})$/.exec(name) ?? [];
  return beats === undefined || Number(unit) === 0 ? null : [Number(beats), Number(unit)];
};

const sameBars = (one: string, other: string): boolean => {
  const [first, second] = [signatureOf(one), signatureOf(other)];
  return one === other || (!!first && !!second && first[0] * second[1] === second[0] * first[1]);
};

const runsOf = (pieces: readonly Piece[]): readonly Run[] => {
  const runs: { readonly name: string; readonly pieces: Piece[] }[] = [];
  for (const piece of pieces) {
    const last = runs.at(-1);
    if (last !== undefined && sameBars(last.name, piece.meter)) {
      last.pieces.push(piece);
    } else {
      runs.push({ name: piece.meter, pieces: [piece] });
    }
  }
  return runs;
};

/** Half notes in twos are four quarters. */
const inQuarters = ([beats, unit]: readonly [number, number]): readonly [number, number] =>
  unit === 2 && beats % 2 === 0 ? [2 * beats, 4] : [beats, unit];

/** The longest metre with patterns in whole bars of which all these can be written: 2/4 for 4/4 and 2/4. */
const commonMeter = (names: readonly string[]): Meter | null => {
  const all = names.map((name) => {
    const signature = signatureOf(name);
    return signature && inQuarters(signature);
  });
  for (const name of ["4/4", "3/4", "2/4", "9/8", "6/8"]) {
    const [beats, unit] = signatureOf(name) ?? [1, 1];
    const reading = readMeter(name);
    if (reading.ok && all.every((each) => each && each[1] === unit && each[0] % beats === 0)) {
      return reading.value;
    }
  }
  return null;
};

/** A bar cut into bars of `full` ticks and what remains; its repeat signs stay at its ends. */
const cut = (piece: Piece, full: number): readonly Piece[] => {
  const count = Math.max(1, Math.ceil((piece.length - 1) / full));
  return Array.from({ length: count }, (_, index) => ({
    ...piece,
    length: Math.min(full, piece.length - index * full),
    symbols: piece.symbols
      .filter(({ at }) => Math.min(count - 1, Math.floor((at + 1) / full)) === index)
      .map((symbol) => ({ ...symbol, at: Math.max(0, symbol.at - index * full) })),
    label: index === 0 ? piece.label : null,
    opensRepeat: index === 0 && piece.opensRepeat,
    ending: index === 0 ? piece.ending : null,
    plays: index === count - 1 ? piece.plays : 1,
    endsEnding: index === count - 1 && piece.endsEnding,
  }));
};

/** A part starts with the chord that sounds on from the one before. */
const withChord = (run: Run, before: Run | undefined): Run => {
  const [first, ...others] = run.pieces;
  const symbol = before?.pieces.flatMap(({ symbols }) => symbols).at(-1)?.symbol;
  if (first === undefined || symbol === undefined || first.symbols.some(({ at }) => at < 1)) {
    return run;
  }
  const symbols = [{ at: 0, symbol }, ...first.symbols];
  return { ...run, pieces: [{ ...first, symbols }, ...others] };
};

const written = ({ beats, unit }: Meter): string => `${beats}/${unit}`;

const partOf = (run: Run): MeterPart | Refusal => {
  const meter = readMeter(run.name);
  if (!meter.ok) {
    return meter;
  }
  const other = run.pieces.find((piece) => piece.meter !== run.name);
  const left =
    other === undefined ? [] : [words.import.meters.kept(other.number, other.meter, run.name)];
  return { meter: meter.value, pieces: run.pieces, named: "", left };
};

/**
 * A tune's pieces as a chart can hold them, in one metre each. Metres that have a common one of whole
 * bars are written in that (4/4 and 2/4 in 2/4: every change stays where it is); else each stretch of
 * at least four bars is a part of its own. Refused: a metre without patterns, shorter stretches, a
 * repeat or (`jumps`) a da capo over a change.
 */
export const meterParts = (pieces: readonly Piece[], jumps: boolean): MeterParts => {
  const runs = runsOf(pieces);
  const [first, second] = runs;
  if (first === undefined) {
    return refuse(words.import.noBars, words.import.noBarsTry);
  }
  const names = [...new Set(pieces.map(({ meter }) => meter))];
  if (second === undefined) {
    const whole = partOf(first);
    if (!("ok" in whole)) {
      return { ok: true, parts: [whole] };
    }
    const common = commonMeter(names);
    if (common === null) {
      return whole;
    }
  }
  const common = commonMeter(names);
  if (common !== null) {
    const full = eighthsIn(common) * TICKS_PER_EIGHTH;
    const said = words.import.meters.common(names, written(common));
    const inBars = pieces.flatMap((piece) => cut(piece, full));
    return { ok: true, parts: [{ meter: common, pieces: inBars, named: "", left: [said] }] };
  }
  const where = runs
    .slice(1, 4)
    .map(({ name, pieces: [start] }) => words.import.meters.to(name, start?.number ?? ""))
    .join(", ");
  const advice = words.import.meters.try;
  const changes = words.import.meters.changes(where, runs.length > 4);
  if (runs.some((run) => run.pieces.length < LEAST_BARS)) {
    return refuse(words.import.meters.says(changes), advice);
  }
  const { within } = repeatsOf(explicitRepeats(pieces));
  const lines = runs.map((_, index) =>
    runs.slice(0, index).reduce((sum, run) => sum + run.pieces.length, 0),
  );
  if (jumps || lines.some((line) => within.has(line))) {
    return refuse(words.import.meters.over(changes, jumps), advice);
  }
  const parts: MeterPart[] = [];
  for (const [index, run] of runs.entries()) {
    const part = partOf(withChord(run, runs[index - 1]));
    if ("ok" in part) {
      return refuse(words.import.meters.broken(changes, part.says), part.try);
    }
    const named = words.import.meters.part(
      run.pieces[0]?.number ?? "",
      run.pieces.at(-1)?.number ?? "",
      run.name,
    );
    const said = words.import.meters.apart(changes);
    parts.push({ ...part, named, left: [said, ...part.left] });
  }
  return { ok: true, parts };
};
