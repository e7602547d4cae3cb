import * as v from "valibot";
import { bpm, milliseconds } from "../units.ts";
import type { HeldChord, Item, Round, Shift } from "./practice.ts";

/** The song that a round belongs to, by the name that it had then. */
export type LoggedSong = { readonly id: string; readonly title: string };

/** A round that was played, as the log has it. */
export type LogEntry = {
  /** No two entries have the same. */
  readonly id: string;
  /** null for an exercise. */
  readonly song: LoggedSong | null;
  readonly round: Round;
};

/**
 * One line of the log. Nothing in it is ever written over: a round that is taken out is marked as
 * deleted by a line of its own, and brought back by another.
 */
export type LogLine =
  | ({ readonly version: 1; readonly kind: "round" } & LogEntry)
  | { readonly version: 1; readonly kind: "deleted" | "restored"; readonly id: string };

/** A logged song's title has at most this many characters; a longer one is cut. */
export const LONGEST_TITLE = 200;

const DAY_MS = 86_400_000;
const name = (longest: number): v.GenericSchema<unknown, string> =>
  v.pipe(v.string(), v.minLength(1), v.maxLength(longest));
const between = (low: number, high: number): v.GenericSchema<unknown, number> =>
  v.pipe(v.number(), v.minValue(low), v.maxValue(high));
const whole = (high: number): v.GenericSchema<unknown, number> =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(high));
const ms = (high: number) => v.pipe(between(0, high), v.transform(milliseconds));

const stop = v.nullable(whole(36));
const held: v.GenericSchema<unknown, HeldChord> = v.object({
  chord: name(24),
  frets: v.strictTuple([stop, stop, stop, stop, stop]),
});

const item: v.GenericSchema<unknown, Item> = v.variant("kind", [
  v.object({ kind: v.literal("change"), from: held, to: held }),
  v.object({ kind: v.literal("passage"), firstBar: whole(1e6), lastBar: whole(1e6) }),
  v.object({ kind: v.literal("song") }),
  v.object({ kind: v.literal("exercise"), name: name(200) }),
]);

const shift: v.GenericSchema<unknown, Shift> = v.object({
  bits: between(0, 20),
  reformed: whole(4),
  window: ms(DAY_MS),
});

const round: v.GenericSchema<unknown, Round> = v.object({
  item,
  stage: v.picklist(["slide", "slow", "tempo", "song"]),
  tempo: v.pipe(between(1, 1000), v.transform(bpm)),
  unit: v.picklist([2, 4, 8]),
  mark: v.nullable(v.picklist(["clean", "not-yet"])),
  // The last instant that ECMAScript's dates can name.
  atMs: whole(8.64e15),
  lasted: ms(DAY_MS),
  shift: v.nullable(shift),
});

const id = name(80);
const entry = {
  id,
  song: v.nullable(
    v.object({ id: name(120), title: v.pipe(v.string(), v.maxLength(LONGEST_TITLE)) }),
  ),
  round,
};

/** Checks a round of the log as it comes over the wire. */
export const logEntrySchema: v.GenericSchema<unknown, LogEntry> = v.object(entry);

/** Checks a line of the log as it comes from disk or over the wire. */
export const logLineSchema: v.GenericSchema<unknown, LogLine> = v.variant("kind", [
  v.object({ version: v.literal(1), kind: v.literal("round"), ...entry }),
  v.object({ version: v.literal(1), kind: v.picklist(["deleted", "restored"]), id }),
]);

/** A line as it stands in the file, without its line break: JSON, which never holds one. */
export const writeLogLine = (line: LogLine): string => JSON.stringify(line);
