import { isOpenStroke, type Played } from "../roll/played.ts";
import {
  type Millimetres,
  type Milliseconds,
  millimetres,
  milliseconds,
  TICKS_PER_EIGHTH,
} from "../units.ts";
import { reformedFingers } from "../voicing/fingering.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { type Hand, landingWidth, REFORM_TIME, shiftTime } from "./movement.ts";
import type { Way } from "./route.ts";

/**
 * One way to leave a chord: how many eighths it frees the hand for, from the last stroke that it must
 * hold to the chord's end.
 */
export type Exit = { readonly way: Exclude<Way, "hold" | "too-fast">; readonly eighths: number };

/** The ways there are, the best first, each leaving more time than the one before. */
export type Windows = readonly Exit[];

/** A stretch of the song that is held in one placement, and how it can be left, the best way first. */
export type Held = {
  readonly start: number;
  readonly length: number;
  readonly exits: Windows;
};

/** How many notes are let go: how far before the end the last stroke lies that is then still held. */
const freed = (strokes: readonly boolean[], letGo: number): number => {
  const held = strokes.flatMap((fretted, eighth) => (fretted ? [strokes.length - eighth] : []));
  return held.at(-1 - letGo) ?? strokes.length;
};

/**
 * How a chord can be left by what the right hand plays on it: all notes kept, the last one let go
 * early, the last two, or an open fifth string that sounds while the hand is free. Rests and open
 * strokes need no hand; no more notes are let go than there are. A fifth string that is played only
 * to cover a change comes after one note let go and before two. Each way frees more than the one
 * before. One eighth, two eighths: common practice, no published source.
 */
export const exitsOf = ({ strokes, cover }: Pick<Played, "strokes" | "cover">): Windows => {
  const struck = strokes.map(({ picks }) => picks.length > 0);
  const fretted = strokes.map(
    (stroke, eighth) => struck[eighth] === true && !isOpenStroke(stroke) && eighth !== cover,
  );
  const plain = ([0, 1, 2] as const).map(
    (letGo): Exit => ({
      way: (["keep", "let-one", "let-two"] as const)[letGo],
      eighths: freed(struck, letGo),
    }),
  );
  const open = [0, 1, 2].map((letGo): Exit => ({ way: "open", eighths: freed(fretted, letGo) }));
  const [keep, letOne, letTwo] = plain;
  const [openKeep, openOne, openTwo] = open;
  const inOrder =
    cover === null
      ? [keep, openKeep, letOne, openOne, letTwo, openTwo]
      : [keep, letOne, openKeep, openOne, letTwo, openTwo];
  const exits: Exit[] = [];
  for (const exit of inOrder) {
    if (exit && exit.eighths > (exits.at(-1)?.eighths ?? 0)) {
      exits.push(exit);
    }
  }
  return exits;
};

/**
 * The ways from one chord to the next with the time each leaves, in eighths: what the right hand frees,
 * and a rest before the next chord. Where `seam` is given it is the song's length, and the next chord
 * comes after it.
 */
export const windowsOf = (from: Held, to: Pick<Held, "start">, seam: number | null): Windows => {
  const arrival = to.start + (seam ?? 0);
  const rest = (arrival - (from.start + from.length)) / TICKS_PER_EIGHTH;
  return from.exits.map(({ way, eighths }) => ({ way, eighths: rest + eighths }));
};

/** The longest time that any way leaves, in eighths. */
export const longestOf = (windows: Windows): number => windows.at(-1)?.eighths ?? 0;

/**
 * The time that a hand needs from one grip to another: the shift, and REFORM_TIME for each finger
 * that is formed anew. The same grip needs none.
 */
export const needOf = (
  hand: Hand,
  from: Voicing,
  to: Voicing,
  scaleLength: Millimetres,
): Milliseconds => {
  const distance = millimetres(Math.abs(to.positionMm - from.positionMm));
  return milliseconds(
    shiftTime(hand, distance, landingWidth(to.position, scaleLength)) +
      REFORM_TIME * reformedFingers(from, to).length,
  );
};

/**
 * The first way, from keeping every note on, whose window holds the need, and that window in eighths;
 * where it is too fast, the longest there is.
 */
export const wayFor = (
  need: number,
  eighthMs: number,
  windows: Windows,
): { readonly way: Way; readonly eighths: number } => {
  const [keep] = windows;
  if (need === 0) {
    return { way: "hold", eighths: keep?.eighths ?? 0 };
  }
  const found = windows.find(({ eighths }) => need <= eighths * eighthMs);
  return found ?? { way: "too-fast", eighths: longestOf(windows) };
};
