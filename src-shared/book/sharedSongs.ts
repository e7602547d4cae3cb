import * as v from "valibot";
import { type Refusal, refuse } from "../harmony/refusal.ts";
import { ownNameOf, ownStyle } from "../roll/editPicking.ts";
import { type Pattern, patternSchema } from "../roll/pattern.ts";
import type { Manner, Picking } from "../roll/picking.ts";
import { type SongSettings, songSettingsSchema } from "../settings.ts";
import { words } from "../wordTable.ts";
import { MOST_NAME_CHARACTERS } from "./shelf.ts";

/** The ending of a file of shared songs, without its dot. */
export const SHARED_ENDING = "shortslide";
/** Its media type, of the vendor tree (RFC 6838, section 3.2). */
export const SHARED_TYPE = "application/vnd.shortslide+json";

/** A song as it is handed to another player: all that is kept with it. */
export type SharedSong = {
  readonly title: string;
  readonly text: string;
  readonly settings: SongSettings;
  readonly tags: readonly string[];
};

/** Shared songs, with those of the player's own patterns that they are played with. */
export type SharedSongs = {
  readonly songs: readonly SharedSong[];
  readonly patterns: readonly Pattern[];
};

/** What a file of shared songs holds, or why it cannot be had. */
export type SharedReading = ({ readonly ok: true } & SharedSongs) | Refusal;

const VERSION = 1;
const MOST_SONGS = 5000;

const fileSchema = v.object({
  shortslide: v.literal(VERSION),
  songs: v.pipe(
    v.array(
      v.object({
        title: v.pipe(v.string(), v.maxLength(1000)),
        chart: v.pipe(v.array(v.pipe(v.string(), v.maxLength(100_000))), v.maxLength(100_000)),
        settings: songSettingsSchema,
        tags: v.optional(
          v.pipe(
            v.array(
              v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(MOST_NAME_CHARACTERS)),
            ),
            v.maxLength(100),
          ),
          [],
        ),
      }),
    ),
    v.minLength(1),
    v.maxLength(MOST_SONGS),
  ),
  patterns: v.optional(v.pipe(v.array(patternSchema), v.maxLength(500)), []),
});

const mannersOf = ({ song, sections, stays }: Picking): readonly Manner[] => [
  song,
  ...sections.flatMap(({ manner }) => (manner ? [manner] : [])),
  ...stays.map(({ manner }) => manner),
];

/** The names of the player's own patterns that a picking has, each once. */
export const ownPatternsIn = (picking: Picking): readonly string[] => [
  ...new Set(mannersOf(picking).flatMap(({ style }) => ownNameOf(style) ?? [])),
];

/** A picking with own patterns under other names; those that `names` does not have keep theirs. */
export const withOwnNames = (picking: Picking, names: ReadonlyMap<string, string>): Picking => {
  const renamed = <T extends Manner | null>(manner: T): T => {
    const own = manner && ownNameOf(manner.style);
    const name = own === null ? undefined : names.get(own);
    return manner && name !== undefined ? { ...manner, style: ownStyle(name) } : manner;
  };
  return {
    ...picking,
    song: renamed(picking.song),
    sections: picking.sections.map((section) => ({ ...section, manner: renamed(section.manner) })),
    stays: picking.stays.map((stay) => ({ ...stay, manner: renamed(stay.manner) })),
  };
};

/**
 * A file with these songs, to be read by `readSharedSongs`: JSON, one line of the chart to a line of
 * the file. Of the player's patterns it has those that the songs are played with.
 */
export const sharedSongsFile = (
  songs: readonly SharedSong[],
  ownPatterns: readonly Pattern[],
): string => {
  const used = new Set(songs.flatMap(({ settings }) => ownPatternsIn(settings.picking)));
  const file = {
    shortslide: VERSION,
    songs: songs.map(({ title, text, settings, tags }) => ({
      title,
      chart: text.split(/\r\n|\r|\n/),
      tags,
      settings,
    })),
    patterns: ownPatterns.filter(({ name }) => used.has(name)),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
};

const parse = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
};

/**
 * Whether a text is, or was, a file of shared songs.
 * @example isSharedText('{ "shortslide": 1, "songs": [] }') // => true
 */
export const isSharedText = (text: string): boolean =>
  /^\s*\{[^{[]{0,200}"shortslide"\s*:/.test(text);

const sayWhere = ([list, index, ...rest]: readonly unknown[]): string => {
  const { shared } = words;
  if (typeof index !== "number") return shared.file;
  const inner = rest.length > 0 ? shared.inner(rest.join(", ")) : "";
  return list === "patterns" ? shared.pattern(index + 1, inner) : shared.song(index + 1, inner);
};

/**
 * Reads a file of shared songs, all of it or nothing: any text gives the songs, or a refusal that
 * says what is wrong, where, and what to do. Never throws for what is in the text.
 */
export const readSharedSongs = (text: string): SharedReading => {
  const { shared } = words;
  const parsed = parse(text.replace(/^\uFEFF/, ""));
  if (parsed === undefined) {
    return refuse(shared.notJson, shared.again);
  }
  const marked = v.safeParse(v.looseObject({ shortslide: v.number() }), parsed);
  if (!marked.success) {
    return refuse(shared.noMark, shared.again);
  }
  if (marked.output.shortslide > VERSION) {
    return refuse(shared.newer, shared.newerTry);
  }
  const read = v.safeParse(fileSchema, parsed);
  if (!read.success) {
    const path = read.issues[0].path?.map(({ key }) => key) ?? [];
    return refuse(shared.wrong(sayWhere(path)), shared.again);
  }
  return {
    ok: true,
    songs: read.output.songs.map(({ title, chart, settings, tags }) => ({
      title,
      text: chart.join("\n"),
      settings,
      tags,
    })),
    patterns: read.output.patterns,
  };
};
