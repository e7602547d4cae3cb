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

/** A stretch of the song that is held in one placement. */
export type Held = { readonly start: number; readonly length: number };

/**
 * How many eighths a change may take, by how it is made: all notes kept, the last one let go early,
 * the last two. A rest before the next chord is added; no more notes are let go than the stay has.
 * One eighth, two eighths: common practice, no published source.
 */
export type Windows = { readonly keep: number; readonly letOne: number; readonly letTwo: number };

/**
 * The windows of the change from one stay to the next, in eighths; they may be parts of one where a
 * rest is. Where `seam` is given it is the song's length, and the next stay comes after it.
 */
export const windowsOf = (from: Held, to: Held, seam: number | null): Windows => {
  const arrival = to.start + (seam ?? 0);
  const rest = (arrival - (from.start + from.length)) / TICKS_PER_EIGHTH;
  const most = from.length / TICKS_PER_EIGHTH;
  const upTo = (eighths: number): number => rest + Math.min(eighths, most);
  return { keep: upTo(1), letOne: upTo(2), letTwo: upTo(3) };
};

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

/** The first way, from keeping every note on, whose window holds the need. */
export const wayFor = (need: number, eighthMs: number, windows: Windows): Way => {
  if (need === 0) {
    return "hold";
  }
  const ways: readonly (readonly [Way, number])[] = [
    ["keep", windows.keep],
    ["let-one", windows.letOne],
    ["let-two", windows.letTwo],
  ];
  return ways.find(([, eighths]) => need <= eighths * eighthMs)?.[0] ?? "too-fast";
};

/** How many eighths a way leaves the hand; where it is too fast, the most there are. */
export const windowFor = (way: Way, windows: Windows): number => {
  switch (way) {
    case "hold":
    case "keep":
      return windows.keep;
    case "let-one":
      return windows.letOne;
    case "let-two":
    case "too-fast":
      return windows.letTwo;
  }
};
