import { isRemovedId } from "./editShelf.ts";
import { MOST_SET_SONGS, type SetList, type SetSong, type Shelf } from "./shelf.ts";

/** A song as a set list needs to know it. */
export type NamedSong = { readonly id: string; readonly title: string };

/** A set list; null where there is none of this id. */
export const setListOf = (shelf: Shelf, id: string): SetList | null =>
  shelf.setLists.find((list) => list.id === id) ?? null;

/** The shelf with a set list put last, or in the place of the one that has its id. */
export const withSetList = (shelf: Shelf, list: SetList): Shelf => ({
  ...shelf,
  setLists: setListOf(shelf, list.id)
    ? shelf.setLists.map((other) => (other.id === list.id ? list : other))
    : [...shelf.setLists, list],
});

/** The shelf with a set list back at its place among the others. */
export const withSetListAt = (shelf: Shelf, list: SetList, at: number): Shelf => ({
  ...shelf,
  setLists: shelf.setLists.filter(({ id }) => id !== list.id).toSpliced(at, 0, list),
});

/** The shelf without a set list. */
export const withoutSetList = (shelf: Shelf, id: string): Shelf => ({
  ...shelf,
  setLists: shelf.setLists.filter((list) => list.id !== id),
});

/** Songs put at the end of a set list, as far as there is room, in their own keys, once through. */
export const withSongs = (list: SetList, songs: readonly NamedSong[]): SetList => ({
  ...list,
  songs: [
    ...list.songs,
    ...songs.map(({ id, title }): SetSong => ({ id, title, key: null, times: 1 })),
  ].slice(0, MOST_SET_SONGS),
});

/** A set list with its song `from` at the place `to`, both from 0; as it was where there is no such song. */
export const withSongMoved = (list: SetList, from: number, to: number): SetList => {
  const song = list.songs[from];
  const place = Math.max(0, Math.min(to, list.songs.length - 1));
  if (!song || place === from) return list;
  return { ...list, songs: list.songs.toSpliced(from, 1).toSpliced(place, 0, song) };
};

/** A set list with something else said of its song `at`, from 0. */
export const withSongChanged = (
  list: SetList,
  at: number,
  part: Partial<Pick<SetSong, "key" | "times">>,
): SetList => ({
  ...list,
  songs: list.songs.map((song, index) => (index === at ? { ...song, ...part } : song)),
});

/** A set list without its song `at`, from 0. */
export const withoutSong = (list: SetList, at: number): SetList => ({
  ...list,
  songs: list.songs.toSpliced(at, 1),
});

/**
 * The song that is meant in a set list: the one of its id, else one of its title (a file may have
 * been renamed by hand). null where it is out of the songbook.
 */
export const songMeant = <T extends NamedSong>(songs: readonly T[], meant: SetSong): T | null => {
  if (isRemovedId(meant.id)) return null;
  return (
    songs.find(({ id }) => id === meant.id) ??
    songs.find(({ title }) => title === meant.title) ??
    null
  );
};
