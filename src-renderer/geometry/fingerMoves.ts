import type { StringNumber } from "../../src-shared/neck/neck.ts";
import type { Finger, Voicing } from "../../src-shared/voicing/voicing.ts";

/** A place on the neck under a finger. */
export type Stop = { readonly string: StringNumber; readonly fret: number };

/**
 * What a fingertip does on the way to the next grip: keeps its string (a guide), goes to another
 * one, comes down, or goes up. A barre that opens or closes comes from, or goes into, one place of
 * the same finger.
 */
export type FingerMove = {
  readonly kind: "guide" | "cross" | "down" | "up";
  readonly finger: Finger;
  /** null where the finger was in the air. */
  readonly from: Stop | null;
  /** null where it is lifted. */
  readonly to: Stop | null;
};

const fingers: readonly Finger[] = [1, 2, 3, 4];
const strings: readonly StringNumber[] = [1, 2, 3, 4, 5];

const stopsOf = (voicing: Voicing, finger: Finger): readonly Stop[] =>
  strings.flatMap((string) => {
    const fret = voicing.frets[string - 1] ?? null;
    return fret !== null && voicing.fingers[string - 1] === finger ? [{ string, fret }] : [];
  });

const nearest = (stops: readonly Stop[], to: Stop): Stop | null =>
  stops.toSorted((a, b) => Math.abs(a.string - to.string) - Math.abs(b.string - to.string))[0] ??
  null;

const movesOf = (finger: Finger, before: readonly Stop[], after: readonly Stop[]): FingerMove[] => {
  const on = (stops: readonly Stop[], { string }: Stop): Stop | undefined =>
    stops.find((stop) => stop.string === string);
  const leaving = before.filter((stop) => !on(after, stop));
  const coming = after.filter((stop) => !on(before, stop));
  return [
    ...before.flatMap((from): FingerMove[] => {
      const to = on(after, from);
      return to ? [{ kind: "guide", finger, from, to }] : [];
    }),
    ...leaving.map((from, index): FingerMove => {
      const to = coming[index];
      return to
        ? { kind: "cross", finger, from, to }
        : { kind: "up", finger, from, to: nearest(after, from) };
    }),
    ...coming
      .slice(leaving.length)
      .map((to): FingerMove => ({ kind: "down", finger, from: nearest(before, to), to })),
  ];
};

/** Every fingertip's way from one grip to another, the index finger's first. */
export const fingerMoves = (from: Voicing, to: Voicing): readonly FingerMove[] =>
  fingers.flatMap((finger) => movesOf(finger, stopsOf(from, finger), stopsOf(to, finger)));

/** When the hand is on its way to the next grip. Ticks. */
export type Travel = { readonly leaves: number; readonly due: number };

/** How far the hand has got at a tick: 0 until it leaves, 1 when it is there, slow at both ends. */
export const travelled = ({ leaves, due }: Travel, tick: number): number => {
  const share = due > leaves ? (tick - leaves) / (due - leaves) : Number(tick >= due);
  const within = Math.min(1, Math.max(0, share));
  return within * within * (3 - 2 * within);
};
