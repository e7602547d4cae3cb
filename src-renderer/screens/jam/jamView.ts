import type { Walk } from "../../../src-shared/chartToScore.ts";
import {
  chordOnDegree,
  type DegreeChord,
  degreeSymbol,
} from "../../../src-shared/harmony/degree.ts";
import type { Key } from "../../../src-shared/harmony/key.ts";
import { type Call, type Calls, calledAt, sameCall } from "../../../src-shared/jam/call.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { type StandNow, standNow, type WhereNow } from "../play/standNow.ts";

/** The columns of the pad: the seven degrees, and the b7 that old tunes like better than the 7. */
const degrees: readonly DegreeChord["degree"][] = [
  ...[1, 2, 3, 4, 5, 6].map((number) => ({ number, accidental: "" as const })),
  { number: 7, accidental: "b" },
  { number: 7, accidental: "" },
];
const qualities = ["", "m", "7"] as const;

/** Every chord of the pad, a row for each quality. */
export const padCalls: readonly (readonly DegreeChord[])[] = qualities.map((quality) =>
  degrees.map((degree) => ({ degree, quality, bass: null })),
);

/** A chord of the pad as it is labelled, and whether it comes or holds. */
export type PadCell = {
  readonly symbol: string;
  readonly chord: string;
  readonly comes: boolean;
  readonly holds: boolean;
};

const isCalled = (calls: Calls, bar: number, call: Call): boolean => {
  const called = calledAt(calls, bar);
  return called !== undefined && sameCall(called.call, call);
};

/** The pad in a key: what is called for `next`, what holds in `bar` (0-based). */
export const padCells = (
  calls: Calls,
  key: Key,
  bar: number,
  next: number,
): readonly (readonly PadCell[])[] =>
  padCalls.map((row) =>
    row.map((call) => ({
      symbol: degreeSymbol(call),
      chord: chordOnDegree(call, key).name,
      comes: isCalled(calls, next, call),
      holds: isCalled(calls, bar, call),
    })),
  );

/** Bars that are shown at once. */
export const PAGE = 8;

/** A bar of the page. */
export type BarOnPage = {
  /** 1-based. */
  readonly bar: number;
  readonly chord: string;
  readonly called: boolean;
  readonly when: "gone" | "now" | "ahead";
};

/** The page of bars that a bar (0-based) stands on. */
export const pageOf = (calls: Calls, key: Key, bar: number): readonly BarOnPage[] => {
  const first = Math.floor(bar / PAGE) * PAGE;
  return Array.from({ length: PAGE }, (_, index) => {
    const at = first + index;
    const called = calledAt(calls, at);
    const away = at < bar ? "gone" : "ahead";
    return {
      bar: at + 1,
      chord: called?.call ? chordOnDegree(called.call, key).name : "N.C.",
      called: called?.bar === at,
      when: at === bar ? "now" : away,
    };
  });
};

/** What one glance wants to know in a jam: every change is due at the next bar line. */
export const jamNow = (walk: Walk, now: WhereNow): StandNow => {
  const stand = standNow(walk, now, null, 0);
  const { beats } = walk.timeline.meter;
  const left = beats - now.beat;
  const toBarLine = {
    total: beats,
    filled: now.beat + 1,
    label: words.jam.toNextBar(left),
  };
  const nextDetail = stand.change.next ? stand.words.nextDetail : words.jam.callNext;
  return {
    ...stand,
    words: { ...stand.words, nextDetail },
    beats: stand.counting ? stand.beats : toBarLine,
  };
};
