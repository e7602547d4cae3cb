import type { OpenedSong, Shelf, TaggedSong } from "./shelf.ts";

/** A change of tags or set lists, to be made on whatever the shelf is by then. */
export type ShelfEdit = (shelf: Shelf) => Shelf;

/** A song's tags, in the order of the alphabet; none where it has none. */
export const tagsOf = (shelf: Shelf, id: string): readonly string[] =>
  shelf.tags.find((song) => song.id === id)?.tags ?? [];

/** Every tag that a song has, each once, in the order of the alphabet. */
export const allTags = (shelf: Shelf): readonly string[] =>
  [...new Set(shelf.tags.flatMap(({ tags }) => tags))].toSorted((one, other) =>
    one.localeCompare(other),
  );

/** The shelf with these tags for a song, in the place of those it had; an empty list takes all off. */
export const withTags = (shelf: Shelf, id: string, tags: readonly string[]): Shelf => {
  const others = shelf.tags.filter((song) => song.id !== id);
  const once = [...new Set(tags)].toSorted((one, other) => one.localeCompare(other));
  return { ...shelf, tags: once.length > 0 ? [...others, { id, tags: once }] : others };
};

/** The shelf with one tag put on these songs, or taken off them. */
export const withTag = (
  shelf: Shelf,
  ids: readonly string[],
  tag: string,
  wanted: boolean,
): Shelf =>
  ids.reduce((now, id) => {
    const others = tagsOf(now, id).filter((one) => one !== tag);
    return withTags(now, id, wanted ? [...others, tag] : others);
  }, shelf);

/** The shelf with a tag under another name on every song that has it. */
export const withTagRenamed = (shelf: Shelf, from: string, to: string): Shelf =>
  shelf.tags
    .filter(({ tags }) => tags.includes(from))
    .reduce(
      (now, { id, tags }) =>
        withTags(
          now,
          id,
          tags.map((tag) => (tag === from ? to : tag)),
        ),
      shelf,
    );

/** The shelf with an entry of the same id put last where there was none, else in its place. */
const renameId =
  (from: string, to: string) =>
  <T extends TaggedSong | OpenedSong>(entries: readonly T[]): readonly T[] =>
    entries.some(({ id }) => id === from)
      ? entries
          .filter(({ id }) => id !== to)
          .map((entry) => (entry.id === from ? { ...entry, id: to } : entry))
      : entries;

/**
 * The shelf with a song under another id wherever it stands. What the other id had before is of a
 * song that is no longer there, and goes.
 */
export const withSongRenamed = (shelf: Shelf, from: string, to: string): Shelf => {
  const renamed = renameId(from, to);
  return {
    ...shelf,
    tags: renamed(shelf.tags),
    opened: renamed(shelf.opened),
    setLists: shelf.setLists.map((list) =>
      list.songs.some(({ id }) => id === from)
        ? {
            ...list,
            songs: list.songs.map((song) => (song.id === from ? { ...song, id: to } : song)),
          }
        : list,
    ),
  };
};

/** The shelf with a song opened at a time, in milliseconds since 1970. */
export const withOpened = (shelf: Shelf, id: string, atMs: number): Shelf => ({
  ...shelf,
  opened: [...shelf.opened.filter((song) => song.id !== id), { id, atMs }],
});

/** The shelf without what is known of songs that are gone for good; set lists keep their titles. */
export const withoutSongs = (shelf: Shelf, ids: ReadonlySet<string>): Shelf => ({
  ...shelf,
  tags: shelf.tags.filter(({ id }) => !ids.has(id)),
  opened: shelf.opened.filter(({ id }) => !ids.has(id)),
});

const REMOVED = "removed/";

/**
 * Under which id the shelf has a song that is out of the songbook: no file can be called so.
 * @example removedId("20260102T030405678Z-1a2b3c4d") // => "removed/20260102T030405678Z-1a2b3c4d"
 */
export const removedId = (ticket: string): string => `${REMOVED}${ticket}`;

/**
 * Whether an id of the shelf is of a song that is out of the songbook.
 * @example isRemovedId("removed/20260102T030405678Z-1a2b3c4d") // => true
 */
export const isRemovedId = (id: string): boolean => id.startsWith(REMOVED);
