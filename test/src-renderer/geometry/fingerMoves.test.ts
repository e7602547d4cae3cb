import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fingerMoves, travelled } from "../../../src-renderer/geometry/fingerMoves.ts";
import { between, gripPoints, stopsOf } from "../../../src-renderer/geometry/neckGrip.ts";
import { trails } from "../../../src-renderer/geometry/neckTrails.ts";
import { readChord } from "../../../src-shared/harmony/readChord.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { fret, millimetres } from "../../../src-shared/units.ts";
import { reformedFingers } from "../../../src-shared/voicing/fingering.ts";
import type { ShapeName, Voicing } from "../../../src-shared/voicing/voicing.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { anyTonalChord } from "../../laws/anyHeldSong.ts";

const neck = neckFor(tunings[0], fret(0));
const range = { low: fret(1), high: fret(22) };
const held = (name: string, shape: ShapeName, position: number): Voicing => {
  const read = readChord(name);
  const chord = read.ok ? read.chord : null;
  const found =
    chord &&
    voicingsOf(chord, neck, range, "3-2-1").find(
      (voicing) => voicing.shape === shape && voicing.position === position,
    );
  if (!found) throw new Error(`no ${name} in the ${shape} shape at ${position}`);
  return found;
};
const anyPair = fc.tuple(anyTonalChord, anyTonalChord, fc.nat(), fc.nat()).map(([a, b, i, j]) => {
  const [from, to] = [a, b].map((chord) => voicingsOf(chord, neck, range, "3-2-1"));
  const [one, other] = [from?.[i % from.length], to?.[j % to.length]];
  if (!one || !other) throw new Error("a chord without a voicing");
  return [one, other] as const;
});
const view = {
  scaleLength: millimetres(666.75),
  frets: { low: 0, high: 22 },
  left: 8,
  width: 1200,
  nutRight: false,
};
const strings = { top: 20, gap: 30, fifthOnTop: false };

describe("the fingers' ways to the next grip", () => {
  test("cross where index and middle trade strings, from the F shape to the D shape", () => {
    // Common practice, no published source: G in the F shape at frets 4-3-5, in the D shape at 7-8-9.
    const moves = fingerMoves(held("G", "F", 3), held("G", "D", 7));
    const told = moves.map(({ kind, finger, from, to }) => [
      kind,
      finger,
      from?.string,
      to?.string,
    ]);
    expect(told).toContainEqual(["cross", 1, 2, 3]);
    expect(told).toContainEqual(["cross", 2, 3, 2]);
  });

  test("are guides, every one, in a slide of one shape", () => {
    const moves = fingerMoves(held("G", "D", 7), held("C", "D", 12));
    expect(moves.map(({ kind }) => kind)).toEqual(["guide", "guide", "guide"]);
    expect(reformedFingers(held("G", "D", 7), held("C", "D", 12))).toEqual([]);
  });

  test("begin wherever the old grip was and end wherever the new one is", () => {
    const key = ({ string, fret: n }: { string: number; fret: number }) => `${string}:${n}`;
    fc.assert(
      fc.property(anyPair, ([from, to]) => {
        const moves = fingerMoves(from, to);
        const left = moves.filter(({ kind }) => kind !== "down");
        const reached = moves.filter(({ kind }) => kind !== "up");
        expect(left.map((move) => move.from && key(move.from)).toSorted()).toEqual(
          stopsOf(from).map(key).toSorted(),
        );
        expect(reached.map((move) => move.to && key(move.to)).toSorted()).toEqual(
          stopsOf(to).map(key).toSorted(),
        );
      }),
    );
  });

  test("are drawn only where a finger is down before and after, guides along their strings", () => {
    fc.assert(
      fc.property(anyPair, ([from, to]) => {
        for (const { kind, y1, y2 } of trails(from, to, view, strings, 13)) {
          expect(kind === "guide").toBe(Math.abs(y1 - y2) < 1e-9);
        }
      }),
    );
  });
});

describe("the hand on its way", () => {
  test("leaves at its tick, is there when the chord is due, and never goes back", () => {
    const travel = { leaves: 700, due: 960 };
    const ticks = Array.from({ length: 131 }, (_, index) => 650 + index * 3);
    const shares = ticks.map((at) => travelled(travel, at));
    expect([travelled(travel, 700), travelled(travel, 830), travelled(travel, 960)]).toEqual([
      0, 0.5, 1,
    ]);
    expect(shares.toSorted((a, b) => a - b)).toEqual(shares);
  });

  test("jumps where it has no time at all", () => {
    const travel = { leaves: 480, due: 480 };
    expect([travelled(travel, 479), travelled(travel, 480)]).toEqual([0, 1]);
  });

  test("has arrived exactly where the next grip is drawn", () => {
    fc.assert(
      fc.property(anyPair, ([from, to]) => {
        const [start, end] = [gripPoints(from, view, strings), gripPoints(to, view, strings)];
        expect(between(start, end, 0)).toEqual(start);
        for (const [index, { x, y }] of between(start, end, 1).entries()) {
          expect(x).toBeCloseTo(end[index]?.x ?? 0, 9);
          expect(y).toBeCloseTo(end[index]?.y ?? 0, 9);
        }
      }),
    );
  });
});
