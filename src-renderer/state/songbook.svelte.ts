import { setHeader } from "../../src-shared/chart/edits.ts";
import type { Answer, Host, Problem, SongSummary, StoredSong } from "../../src-shared/host.ts";
import { newSongSettings } from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";

/** A song that has been taken out and can be put back. */
export type Removed = { readonly summary: SongSummary; readonly ticket: string };

/** A song that is to be kept. */
export type Chart = { readonly title: string; readonly text: string };

/** What has come of keeping several songs: those that are kept, and why the next one is not. */
export type KeptSongs = { readonly kept: readonly StoredSong[]; readonly problem: Problem | null };

/** The list of songs, as the host has them. */
export class Songbook {
  /** null until the list has arrived for the first time. */
  songs: readonly SongSummary[] | null = $state.raw(null);
  /** Why the list could not be had the last time; the list that was there stays. */
  problem: Problem | null = $state.raw(null);
  search: string = $state("");
  /** The songs taken out since the start, the last one last. */
  removed: readonly Removed[] = $state.raw([]);
  readonly found: readonly SongSummary[];
  readonly #host: Host;
  #round = 0;

  constructor(host: Host) {
    this.#host = host;
    this.found = $derived(matching(this.songs ?? [], this.search));
  }

  /** Asks the host for the list again. */
  async refresh(): Promise<void> {
    this.#round += 1;
    const round = this.#round;
    const answer = await this.#host.listSongs(null);
    if (round !== this.#round) return;
    this.problem = answer.ok ? null : answer.problem;
    if (answer.ok) this.songs = answer.value;
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
    for (const { title, text } of songs) {
      if (signal.aborted) break;
      const answer = await this.#host.createSong({ title, text, settings: newSongSettings });
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

  /** A second song like the first, with its settings, under a title of its own. */
  async duplicate({ id, title }: SongSummary): Promise<Answer<StoredSong>> {
    const answer = await this.#host.readSong({ id });
    if (!answer.ok) return answer;
    const taken = new Set(this.songs?.map((song) => song.title));
    const name = freeTitle(title, taken);
    const text = setHeader(answer.value.text, "Title", name);
    const { settings } = answer.value;
    const copy = await this.#host.createSong({ title: name, text, settings });
    if (copy.ok) await this.refresh();
    return copy;
  }

  /** Takes a song out; `restore` puts it back. */
  async remove(summary: SongSummary): Promise<Answer<Removed>> {
    const answer = await this.#takeOut(summary);
    if (answer.ok) await this.refresh();
    return answer;
  }

  /** Takes those of these songs out that are there; gives the first problem, or null. */
  async removeAll(ids: ReadonlySet<string>): Promise<Problem | null> {
    let problem: Problem | null = null;
    for (const song of this.songs?.filter(({ id }) => ids.has(id)) ?? []) {
      const answer = await this.#takeOut(song);
      if (!answer.ok) problem ??= answer.problem;
    }
    await this.refresh();
    return problem;
  }

  async #takeOut(summary: SongSummary): Promise<Answer<Removed>> {
    const answer = await this.#host.removeSong({ id: summary.id });
    if (!answer.ok) return answer;
    const removed = { summary, ticket: answer.value.ticket };
    this.removed = [...this.removed, removed];
    this.songs = this.songs?.filter((song) => song.id !== summary.id) ?? null;
    return { ok: true, value: removed };
  }

  /** Puts a song back as it was. */
  async restore(removed: Removed): Promise<Answer<StoredSong>> {
    const answer = await this.#host.restoreSong({ ticket: removed.ticket });
    if (!answer.ok) return answer;
    this.removed = this.removed.filter(({ ticket }) => ticket !== removed.ticket);
    await this.refresh();
    return answer;
  }
}

/** Songs that have every word looked for in title, key, meter or tempo, or as a chord of theirs. */
const matching = (songs: readonly SongSummary[], search: string): readonly SongSummary[] => {
  const wanted = plain(search).split(/\s+/).filter(Boolean);
  return songs.filter((song) => {
    const line = plain(`${song.title} ${song.key} ${song.meter} ${song.tempo}`);
    const chords = song.chords.map(plain);
    return wanted.every((word) => line.includes(word) || chords.includes(word));
  });
};

/** A title for a copy that no song has. */
const freeTitle = (title: string, taken: ReadonlySet<string>): string => {
  for (let count = 1; ; count += 1) {
    // A title is at most 200 characters for the host.
    const name = words.songbook.copyOf(title.slice(0, 180), count);
    if (!taken.has(name)) return name;
  }
};

const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replaceAll(/\p{Diacritic}/gu, "")
    .toLowerCase();
