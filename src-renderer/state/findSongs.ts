import type { Shelf } from "../../src-shared/book/shelf.ts";
import type { SongSummary } from "../../src-shared/host.ts";
import type { SongSort } from "../../src-shared/settings.ts";

/** A line of the songbook with what the shelf knows of it. */
export type BookSong = SongSummary & {
  readonly tags: readonly string[];
  /** When it was opened the last time, milliseconds since 1970; 0 where it never was. */
  readonly openedMs: number;
};

/** What of the songbook is looked at. */
export type BookView =
  | { readonly kind: "all" }
  | { readonly kind: "recent" }
  | { readonly kind: "tag"; readonly tag: string }
  | { readonly kind: "setList"; readonly id: string }
  | { readonly kind: "removed" };

/** So many songs are recent at most. */
export const MOST_RECENT = 20;

/** A text as it is looked for: without case and accents. */
export const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replaceAll(/\p{Diacritic}/gu, "")
    .toLowerCase();

/** Songs with their tags and when they were opened. */
export const onShelf = (songs: readonly SongSummary[], shelf: Shelf): readonly BookSong[] => {
  const tags = new Map(shelf.tags.map((song) => [song.id, song.tags]));
  const opened = new Map(shelf.opened.map(({ id, atMs }) => [id, atMs]));
  return songs.map((song) => ({
    ...song,
    tags: tags.get(song.id) ?? [],
    openedMs: opened.get(song.id) ?? 0,
  }));
};

/** Songs that have every word looked for in title, key, meter or tempo, or as a chord or in a tag. */
export const matching = (songs: readonly BookSong[], search: string): readonly BookSong[] => {
  const words = plain(search).split(/\s+/).filter(Boolean);
  if (words.length === 0) return songs;
  return songs.filter((song) => {
    const line = plain(
      `${song.title} ${song.key} ${song.meter} ${song.tempo} ${song.tags.join(" ")}`,
    );
    const chords = song.chords.map(plain);
    return words.every((word) => line.includes(word) || chords.includes(word));
  });
};

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: "base" });

const orders: Readonly<Record<SongSort, (one: BookSong, other: BookSong) => number>> = {
  title: () => 0,
  key: (one, other) => collator.compare(one.key, other.key),
  tempo: (one, other) => one.tempo - other.tempo,
  changed: (one, other) => other.changedMs - one.changedMs,
  opened: (one, other) => other.openedMs - one.openedMs,
};

/** Songs in an order; those that are alike in it by title. */
export const sorted = (songs: readonly BookSong[], sort: SongSort): readonly BookSong[] =>
  songs.toSorted(
    (one, other) => orders[sort](one, other) || collator.compare(one.title, other.title),
  );

/** The songs of a view, in its order; a set list and removed songs have views of their own. */
export const songsIn = (
  songs: readonly BookSong[],
  view: BookView,
  sort: SongSort,
): readonly BookSong[] => {
  switch (view.kind) {
    case "recent":
      return sorted(
        songs.filter(({ openedMs }) => openedMs > 0),
        "opened",
      ).slice(0, MOST_RECENT);
    case "tag":
      return sorted(
        songs.filter(({ tags }) => tags.includes(view.tag)),
        sort,
      );
    default:
      return sorted(songs, sort);
  }
};
