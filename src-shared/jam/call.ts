import type { Quality } from "../harmony/chord.ts";
import type { Degree, DegreeChord } from "../harmony/degree.ts";

/** A chord called by degree; null is no chord. */
export type Call = DegreeChord | null;

/** A call, and the 0-based bar from which on it holds. */
export type Called = { readonly bar: number; readonly call: Call };

/** All calls, by bar, no two on one; before the first there is silence. */
export type Calls = readonly Called[];

/**
 * A chord called by degree, 1 to 7.
 * @example degreeCall(6, "m") // => { degree: { number: 6, accidental: "" }, quality: "m", bass: null }
 */
export const degreeCall = (number: number, quality: Quality): DegreeChord => ({
  degree: { number, accidental: "" },
  quality,
  bass: null,
});

/** What holds in a bar; undefined before the first call. */
export const calledAt = (calls: Calls, bar: number): Called | undefined =>
  calls.findLast((each) => each.bar <= bar);

const sameDegree = (one: Degree, other: Degree): boolean =>
  one.number === other.number && one.accidental === other.accidental;

/** Whether two calls are of one chord. */
export const sameCall = (one: Call, other: Call): boolean =>
  one === null || other === null
    ? one === other
    : sameDegree(one.degree, other.degree) && one.quality === other.quality;

/**
 * With a call from a bar on: one that was to come at that bar or later gives way. What holds already
 * is not called twice.
 */
export const withCall = (calls: Calls, call: Call, bar: number): Calls => {
  const before = calls.filter((each) => each.bar < bar);
  const holds = before.at(-1)?.call ?? null;
  return sameCall(holds, call) ? before : [...before, { bar, call }];
};

const seventhOf: ReadonlyMap<Quality, Quality> = new Map([
  ["", "7"],
  ["m", "m7"],
  ["7", ""],
  ["m7", "m"],
]);

/**
 * A degree is called from a bar on, major or minor. Called again before it comes, or while it holds,
 * it becomes the seventh chord, and once more the plain one.
 */
export const callDegree = (calls: Calls, number: number, minor: boolean, bar: number): Calls => {
  const fresh = degreeCall(number, minor ? "m" : "");
  const holds = calledAt(calls, bar)?.call ?? null;
  const again =
    holds !== null &&
    holds.degree.number === number &&
    (holds.quality === "m" || holds.quality === "m7") === minor;
  if (!again) return withCall(calls, fresh, bar);
  return withCall(calls, { ...holds, quality: seventhOf.get(holds.quality) ?? "" }, bar);
};

/**
 * The chord that comes (or holds) a half step lower, b7 for 7, or back again; 1 and 4 stay, for no
 * one calls b1 or b4. Without a chord nothing changes.
 */
export const flatten = (calls: Calls, bar: number): Calls => {
  const holds = calledAt(calls, bar)?.call ?? null;
  if (holds === null || [1, 4].includes(holds.degree.number)) return calls;
  const accidental = holds.degree.accidental === "b" ? "" : "b";
  return withCall(calls, { ...holds, degree: { ...holds.degree, accidental } }, bar);
};

/** Without the last call, as if it had not been called. */
export const takeBack = (calls: Calls): Calls => calls.slice(0, -1);
