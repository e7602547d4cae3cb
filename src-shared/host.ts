import * as v from "valibot";
import { type Shelf, shelfSchema } from "./book/shelf.ts";
import { type LogLine, logEntrySchema, logLineSchema } from "./practice/logLine.ts";
import type { LogContents } from "./practice/readLog.ts";
import { type Pattern, patternSchema } from "./roll/pattern.ts";
import {
  type Preferences,
  preferencesSchema,
  type SongSettings,
  songSettingsSchema,
} from "./settings.ts";

/**
 * The contract between the screen and the machine: one table of verbs. Preload, IPC and the
 * loopback server are loops over it, so a verb added here is everywhere.
 */

/** Why something could not be done, in words for the player. */
export type Problem = {
  readonly code:
    | "refused"
    | "bad-argument"
    | "not-found"
    | "exists"
    | "changed"
    | "disk"
    | "damaged"
    | "unreachable"
    | "bug";
  readonly says: string;
  readonly try: string;
};

/** Every verb answers with a value; a failure is a value too. */
export type Answer<T> =
  | {
      readonly ok: true;
      readonly value: T;
      /** What the player should know of besides: damage that was mended, say. */
      readonly remarks?: readonly Problem[] | undefined;
    }
  | { readonly ok: false; readonly problem: Problem };

/** A line of the songbook. `id` is the file's bare name. */
export type SongSummary = {
  readonly id: string;
  readonly title: string;
  readonly key: string;
  readonly meter: string;
  readonly tempo: number;
  /** Every chord of the chart once, by its letter, in order of appearance. */
  readonly chords: readonly string[];
  /** When the chart was last written, milliseconds since 1970. */
  readonly changedMs: number;
};

/** A song as it is kept. */
export type StoredSong = {
  readonly id: string;
  readonly text: string;
  readonly settings: SongSettings;
};

/** A song to be written over the one that is kept. */
export type SongToWrite = StoredSong & {
  /** The text that was last read or written here: another one on the disk is not written over. */
  readonly before: string;
  /** The settings that were last read or written here, likewise; without them any are written over. */
  readonly settingsBefore?: SongSettings | undefined;
};

/** A song that is out of the songbook and can be brought back. */
export type RemovedSong = {
  readonly ticket: string;
  readonly title: string;
  /** Milliseconds since 1970. */
  readonly removedMs: number;
};

/** A file that the system handed to the program, to be brought in. */
export type HandedFile = {
  readonly name: string;
  /** Its bytes, in base64. */
  readonly base64: string;
};

/** A version of a song that is kept: by its name, the newest has the greatest. */
export type KeptVersion = {
  readonly version: string;
  /** When it was saved, milliseconds since 1970. */
  readonly savedMs: number;
};

/** A song as it was when it was saved. */
export type SongVersionFile = {
  /** Milliseconds since 1970. */
  readonly savedMs: number;
  readonly text: string;
  readonly settings: SongSettings;
};

/** Something that went wrong on the screen: in words, and where in the code. */
export type ScreenError = { readonly says: string; readonly at: string };

/** What has gone wrong lately, as text for the player, and where it is kept. */
export type ErrorLog = { readonly path: string; readonly text: string };

/** A chart's text is at most this many characters. */
export const MAX_CHART_CHARACTERS = 1_000_000;

const songId = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
/**
 * A text as a file in UTF-8 gives it back: without byte order marks at its start, half a surrogate
 * pair as U+FFFD. Else a song would differ from its file and look as if it was changed elsewhere.
 */
const asKept = (text: string): string =>
  text.replace(/^\uFEFF+/u, "").replaceAll(/[\uD800-\uDFFF]/gu, "\uFFFD");
const chartText = v.pipe(v.string(), v.maxLength(MAX_CHART_CHARACTERS), v.transform(asKept));
const nothing = v.null();
/** A player has at most this many patterns of their own. */
export const MOST_PATTERNS = 500;

/** Checks a player's patterns as they come from disk or over the wire. */
export const patternsSchema: v.GenericSchema<unknown, readonly Pattern[]> = v.pipe(
  v.array(patternSchema),
  v.maxLength(MOST_PATTERNS),
  v.check(
    (patterns) => new Set(patterns.map(({ name }) => name)).size === patterns.length,
    "two patterns have the same name",
  ),
);
const logContents: v.GenericSchema<unknown, LogContents> = v.object({
  entries: v.array(logEntrySchema),
  passedOver: v.array(v.object({ line: v.number(), why: v.picklist(["damaged", "newer"]) })),
});
const summary = v.object({
  id: songId,
  title: v.string(),
  key: v.string(),
  meter: v.string(),
  tempo: v.number(),
  chords: v.array(v.string()),
  changedMs: v.number(),
});
const storedEntries = { id: songId, text: chartText, settings: songSettingsSchema };
const stored = v.object(storedEntries);

const keptVersion = v.object({ version: songId, savedMs: v.number() });
const screenError = v.object({
  says: v.pipe(v.string(), v.maxLength(4_000)),
  at: v.pipe(v.string(), v.maxLength(8_000)),
});
const removed = v.object({ ticket: songId, title: v.string(), removedMs: v.number() });
const handed = v.object({ name: v.string(), base64: v.pipe(v.string(), v.base64()) });

type Schema<T> = v.GenericSchema<unknown, T>;

/** One verb: what it takes (one JSON value), and what it gives when it succeeds. */
export type Verb<Argument, Result> = {
  readonly argument: Schema<Argument>;
  readonly result: Schema<Result>;
};

/** The table. */
export type Verbs = {
  /** All songs of the songbook, by title. */
  readonly listSongs: Verb<null, readonly SongSummary[]>;
  readonly readSong: Verb<{ readonly id: string }, StoredSong>;
  /** A new song; the id is made from the title and differs from every other. */
  readonly createSong: Verb<
    { readonly title: string; readonly text: string; readonly settings: SongSettings },
    StoredSong
  >;
  /**
   * Replaces a song that exists, whole; line breaks of one kind or another are the same text. Says
   * "changed" and writes nothing where the text that is kept is neither `before` nor the new one, and
   * where the settings that are kept are neither `settingsBefore` nor the new ones.
   */
  readonly writeSong: Verb<SongToWrite, null>;
  /** Takes a song off the list; `restoreSong` with the ticket brings it back as it was. */
  readonly removeSong: Verb<{ readonly id: string }, { readonly ticket: string }>;
  readonly restoreSong: Verb<{ readonly ticket: string }, StoredSong>;
  /** The earlier versions of a song, the newest first; none for a song that is not there. */
  readonly listVersions: Verb<{ readonly id: string }, readonly KeptVersion[]>;
  readonly readVersion: Verb<{ readonly id: string; readonly version: string }, SongVersionFile>;
  /** Sets a damaged chart aside and puts the last good version in its place; a sound one stays. */
  readonly mendSong: Verb<{ readonly id: string }, StoredSong>;
  /** Writes down what went wrong on the screen. */
  readonly noteError: Verb<ScreenError, null>;
  /** The newest part of what was written down, from the screen and from the machine. */
  readonly readErrors: Verb<null, ErrorLog>;
  /** The songs that are out of the songbook, the last one first. */
  readonly listRemoved: Verb<null, readonly RemovedSong[]>;
  /** Takes removed songs away for good. */
  readonly eraseRemoved: Verb<{ readonly tickets: readonly string[] }, null>;
  /**
   * Lets a song's file be called by its title, when nobody is at it: gives the id it has from now on.
   * The old id leads to the same song until Shortslide ends.
   */
  readonly settleSong: Verb<{ readonly id: string }, { readonly id: string }>;
  /** Notes that a song has been opened now. */
  readonly markOpened: Verb<{ readonly id: string }, null>;
  /** Tags, set lists, and what was opened when. */
  readonly readShelf: Verb<null, Shelf>;
  /**
   * Writes tags and set lists, and gives the new revision. Says "changed" and writes nothing where
   * the revision that is kept is not the one given. What was opened stays as it is kept.
   */
  readonly writeShelf: Verb<Shelf, { readonly revision: number }>;
  /** The files that were handed to the program since it was last asked. */
  readonly takeFiles: Verb<null, readonly HandedFile[]>;
  readonly readPreferences: Verb<null, Preferences>;
  readonly writePreferences: Verb<Preferences, null>;
  /** The player's own right-hand patterns, in their order; each name once. */
  readonly readPatterns: Verb<null, readonly Pattern[]>;
  readonly writePatterns: Verb<readonly Pattern[], null>;
  /** The practice log: what was played, and which of its lines could not be read. */
  readonly readLog: Verb<null, LogContents>;
  /** Puts a line at the end of the practice log; the same round sent twice is in it once. */
  readonly appendLog: Verb<LogLine, null>;
};

/** A verb's name. */
export type VerbName = keyof Verbs;
/** What a verb takes. */
export type ArgumentOf<Name extends VerbName> =
  Verbs[Name] extends Verb<infer A, unknown> ? A : never;
/** What a verb gives. */
export type ResultOf<Name extends VerbName> =
  Verbs[Name] extends Verb<infer _A, infer R> ? R : never;

/** The machine as the screen sees it, whatever carries the call. */
export type Host = {
  readonly [Name in VerbName]: (argument: ArgumentOf<Name>) => Promise<Answer<ResultOf<Name>>>;
};

/** The table itself: for each verb the check of its argument and of its result. */
export const verbs: Verbs = {
  listSongs: { argument: nothing, result: v.array(summary) },
  readSong: { argument: v.object({ id: songId }), result: stored },
  createSong: {
    argument: v.object({
      title: v.pipe(v.string(), v.maxLength(200)),
      text: chartText,
      settings: songSettingsSchema,
    }),
    result: stored,
  },
  writeSong: {
    argument: v.object({
      ...storedEntries,
      before: chartText,
      settingsBefore: v.optional(songSettingsSchema),
    }),
    result: nothing,
  },
  removeSong: { argument: v.object({ id: songId }), result: v.object({ ticket: songId }) },
  restoreSong: { argument: v.object({ ticket: songId }), result: stored },
  listVersions: { argument: v.object({ id: songId }), result: v.array(keptVersion) },
  readVersion: {
    argument: v.object({ id: songId, version: songId }),
    result: v.object({ savedMs: v.number(), text: chartText, settings: songSettingsSchema }),
  },
  mendSong: { argument: v.object({ id: songId }), result: stored },
  noteError: { argument: screenError, result: nothing },
  readErrors: { argument: nothing, result: v.object({ path: v.string(), text: v.string() }) },
  listRemoved: { argument: nothing, result: v.array(removed) },
  eraseRemoved: {
    argument: v.object({ tickets: v.pipe(v.array(songId), v.maxLength(10_000)) }),
    result: nothing,
  },
  settleSong: { argument: v.object({ id: songId }), result: v.object({ id: songId }) },
  markOpened: { argument: v.object({ id: songId }), result: nothing },
  readShelf: { argument: nothing, result: shelfSchema },
  writeShelf: { argument: shelfSchema, result: v.object({ revision: v.number() }) },
  takeFiles: { argument: nothing, result: v.array(handed) },
  readPreferences: { argument: nothing, result: preferencesSchema },
  writePreferences: { argument: preferencesSchema, result: nothing },
  readPatterns: { argument: nothing, result: patternsSchema },
  writePatterns: { argument: patternsSchema, result: nothing },
  readLog: { argument: nothing, result: logContents },
  appendLog: { argument: logLineSchema, result: nothing },
};

/** All verb names, in the table's order. */
export const verbNames: readonly VerbName[] = Object.keys(verbs) as VerbName[];

/** The name under which the preload puts the host on the window. */
export const BRIDGE_NAME = "shortslideHost";
/** The event of the window, and its IPC channel: files wait to be taken by `takeFiles`. */
export const FILES_HANDED = "shortslide:files-handed";
/** The IPC channel of a verb. */
export const channelOf = (name: VerbName): string => `shortslide:${name}`;
