import * as v from "valibot";

/** A song of a set list: which one, and how it is played that evening. */
export type SetSong = {
  readonly id: string;
  /** Its title when it was put in: what is shown, and looked for, where the song is not there. */
  readonly title: string;
  /** Key of the evening, as a chart's Key header writes it; null is the song's own. */
  readonly key: string | null;
  /** How many times through, 1 to 9, where the list goes on by itself. */
  readonly times: number;
};

/** Songs for a jam evening, in their order. */
export type SetList = {
  readonly id: string;
  readonly name: string;
  /** After its times through a song makes way for the next by itself. */
  readonly goesOn: boolean;
  readonly songs: readonly SetSong[];
};

/** A song's tags, each once. */
export type TaggedSong = { readonly id: string; readonly tags: readonly string[] };

/** When a song was opened the last time, milliseconds since 1970. */
export type OpenedSong = { readonly id: string; readonly atMs: number };

/** How the songs are ordered: tags, set lists, and what was opened last. */
export type Shelf = {
  readonly version: 1;
  /** Grows by one with each change of tags or set lists, so that no change is written over unseen. */
  readonly revision: number;
  readonly tags: readonly TaggedSong[];
  readonly setLists: readonly SetList[];
  readonly opened: readonly OpenedSong[];
};

/** The shelf before anything is put in order. */
export const emptyShelf: Shelf = { version: 1, revision: 0, tags: [], setLists: [], opened: [] };

/** A tag has at most this many characters, a set list's name too. */
export const MOST_NAME_CHARACTERS = 60;
/** A set list has at most this many songs. */
export const MOST_SET_SONGS = 1000;

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const name = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(MOST_NAME_CHARACTERS));
const count = v.pipe(v.number(), v.integer(), v.minValue(0));

const setSong = v.object({
  id,
  title: v.pipe(v.string(), v.maxLength(1000)),
  key: v.nullable(v.pipe(v.string(), v.maxLength(8))),
  times: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(9)),
});

const onceEach = <T extends { readonly id: string }>(each: readonly T[]): boolean =>
  new Set(each.map((one) => one.id)).size === each.length;

/** Checks the shelf as it comes from disk or over the wire. */
export const shelfSchema: v.GenericSchema<unknown, Shelf> = v.object({
  version: v.literal(1),
  revision: count,
  tags: v.pipe(
    v.array(v.object({ id, tags: v.pipe(v.array(name), v.minLength(1), v.maxLength(100)) })),
    v.maxLength(100_000),
    v.check(onceEach, "a song has its tags twice"),
  ),
  setLists: v.pipe(
    v.array(
      v.object({
        id,
        name,
        goesOn: v.boolean(),
        songs: v.pipe(v.array(setSong), v.maxLength(MOST_SET_SONGS)),
      }),
    ),
    v.maxLength(1000),
    v.check(onceEach, "two set lists have the same id"),
  ),
  opened: v.pipe(
    v.array(v.object({ id, atMs: v.number() })),
    v.maxLength(100_000),
    v.check(onceEach, "a song was opened last at two times"),
  ),
});
