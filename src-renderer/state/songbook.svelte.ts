import { removedId, withSongRenamed, withTags } from "../../src-shared/book/editShelf.ts";
import { setHeader } from "../../src-shared/chart/edits.ts";
import type {
  Answer,
  Host,
  Problem,
  RemovedSong,
  SongSummary,
  StoredSong,
} from "../../src-shared/host.ts";
import { newSongSettings, type SongSettings, type SongSort } from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";
import { BookHistory } from "./bookHistory.svelte.ts";
import { type BookSong, type BookView, matching, onShelf, songsIn } from "./findSongs.ts";
import { ShelfState } from "./shelf.svelte.ts";
import { SongIds, SongsOutAndIn } from "./songsOutAndIn.ts";

/** A song that is to be kept, with the settings it came with; null is as a new song's. */
export type Chart = {
  readonly title: string;
  readonly text: string;
  readonly settings: SongSettings | null;
};

/** What has come of keeping several songs: those that are kept, and why the next one is not. */
export type KeptSongs = { readonly kept: readonly StoredSong[]; readonly problem: Problem | null };

/** The list of songs, as the host has them. */
export class Songbook {
  /** null until the list has arrived for the first time. */
  songs: readonly SongSummary[] | null = $state.raw(null);
  /** Why the list could not be had the last time; the list that was there stays. */
  problem: Problem | null = $state.raw(null);
  /** The songs that are out and can be brought back, the last one first. */
  out: readonly RemovedSong[] = $state.raw([]);
  search: string = $state("");
  sort: SongSort = $state("title");
  view: BookView = $state.raw({ kind: "all" });
  readonly shelf: ShelfState;
  readonly history: BookHistory = new BookHistory();
  readonly ids: SongIds = new SongIds();
  /** Every song with its tags. */
  readonly all: readonly BookSong[];
  /** Those of the view that are looked for. */
  readonly found: readonly BookSong[];
  readonly #host: Host;
  #round = 0;

  constructor(host: Host) {
    this.#host = host;
    this.shelf = new ShelfState(host);
    this.all = $derived(onShelf(this.songs ?? [], this.shelf.value));
    this.found = $derived(matching(songsIn(this.all, this.view, this.sort), this.search));
  }

  /** Asks the host for the list and the shelf again. */
  async refresh(): Promise<void> {
    this.#round += 1;
    const round = this.#round;
    const asked = [
      this.#host.listSongs(null),
      this.shelf.read(),
      this.#host.listRemoved(null),
    ] as const;
    const [answer, unread, out] = await Promise.all(asked);
    if (round !== this.#round) return;
    this.problem = answer.ok ? (unread ?? (out.ok ? null : out.problem)) : answer.problem;
    if (answer.ok) this.songs = answer.value;
    if (out.ok) this.out = out.value;
  }

  /** A new song in the book. */
  async create(title: string, text: string): Promise<Answer<StoredSong>> {
    const answer = await this.#host.createSong({ title, text, settings: newSongSettings });
    if (answer.ok) await this.refresh();
    return answer;
  }

  /**
   * New songs in the book, one after the other. Stops at the first that cannot be kept, or when the
   * signal says so; those before it stay.
   */
  async createAll(
    songs: readonly Chart[],
    onKept: (count: number) => void,
    signal: AbortSignal,
  ): Promise<KeptSongs> {
    const kept: StoredSong[] = [];
    let problem: Problem | null = null;
    for (const { title, text, settings } of songs) {
      if (signal.aborted) break;
      const made = { title, text, settings: settings ?? newSongSettings };
      const answer = await this.#host.createSong(made);
      if (!answer.ok) {
        problem = answer.problem;
        break;
      }
      kept.push(answer.value);
      onKept(kept.length);
    }
    await this.refresh();
    return { kept, problem };
  }

  /** Second songs like the first ones, with their settings and tags, under titles of their own. */
  async duplicate(ids: readonly string[]): Promise<KeptSongs> {
    const kept: StoredSong[] = [];
    const tags = new Map<string, readonly string[]>();
    const taken = new Set(this.songs?.map(({ title }) => title));
    let problem: Problem | null = null;
    for (const song of this.all.filter(({ id }) => ids.includes(id))) {
      const title = freeTitle(song.title, taken);
      const answer = await this.#copy(song, title);
      if (!answer.ok) {
        problem = answer.problem;
        break;
      }
      taken.add(title);
      tags.set(answer.value.id, song.tags);
      kept.push(answer.value);
    }
    problem ??= await this.tag(tags);
    await this.refresh();
    return { kept, problem };
  }

  async #copy({ id }: BookSong, title: string): Promise<Answer<StoredSong>> {
    const answer = await this.#host.readSong({ id });
    if (!answer.ok) return answer;
    const { settings } = answer.value;
    const text = setHeader(answer.value.text, "Title", title);
    return this.#host.createSong({ title, text, settings });
  }

  /** Gives songs these tags, each by its id; gives why they are not kept, or null. */
  tag(tags: ReadonlyMap<string, readonly string[]>): Promise<Problem | null> {
    return this.shelf.edit((shelf) =>
      [...tags].reduce((now, [id, own]) => (own.length > 0 ? withTags(now, id, own) : now), shelf),
    );
  }

  /** Gives a song another title, and its file with it; gives its id from now on. */
  async rename(id: string, title: string): Promise<Answer<{ readonly id: string }>> {
    const song = await this.#host.readSong({ id });
    if (!song.ok) return song;
    const { text, settings } = song.value;
    const next = { id, settings, text: setHeader(text, "Title", title) };
    const written = await this.#host.writeSong({ ...next, before: text, settingsBefore: settings });
    if (!written.ok) return written;
    const settled = await this.#host.settleSong({ id });
    if (settled.ok) this.ids.moved(id, settled.value.id);
    await this.refresh();
    return settled;
  }

  /** A song has another id from now on; the list and the shelf are known to follow. */
  moved(from: string, to: string): void {
    if (from === to) return;
    this.ids.moved(from, to);
    this.songs = this.songs?.map((song) => (song.id === from ? { ...song, id: to } : song)) ?? null;
    this.shelf.value = withSongRenamed(this.shelf.value, from, to);
  }

  /** These songs, to be taken out and put back together. */
  together(ids: readonly string[]): SongsOutAndIn {
    return new SongsOutAndIn(this.#host, this.ids, ids);
  }

  /** Songs that are out already, to be put back together. */
  removed(songs: readonly RemovedSong[]): SongsOutAndIn {
    const out = songs.map(({ ticket }) => ({ id: removedId(ticket), ticket }));
    return SongsOutAndIn.removed(this.#host, this.ids, out);
  }

  /** Takes removed songs away for good. */
  async erase(songs: readonly RemovedSong[]): Promise<Problem | null> {
    const tickets = songs.map(({ ticket }) => ticket);
    const answer = await this.#host.eraseRemoved({ tickets });
    await this.refresh();
    return answer.ok ? null : answer.problem;
  }

  /** A song as it is kept, with all that is kept with it. */
  read(id: string): Promise<Answer<StoredSong>> {
    return this.#host.readSong({ id });
  }
}

/** A title for a copy that no song has. */
const freeTitle = (title: string, taken: ReadonlySet<string>): string => {
  for (let count = 1; ; count += 1) {
    // A title is at most 200 characters for the host.
    const name = words.songbook.copyOf(title.slice(0, 180), count);
    if (!taken.has(name)) return name;
  }
};
