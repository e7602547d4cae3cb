import type { Answer, Host, Problem, SongSummary, StoredSong } from "../../src-shared/host.ts";
import { newSongSettings } from "../../src-shared/settings.ts";

/** A song that has been taken out and can be put back. */
export type Removed = { readonly summary: SongSummary; readonly ticket: string };

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

  /** Takes a song out; `restore` puts it back. */
  async remove(summary: SongSummary): Promise<Answer<Removed>> {
    const answer = await this.#host.removeSong({ id: summary.id });
    if (!answer.ok) return answer;
    const removed = { summary, ticket: answer.value.ticket };
    this.removed = [...this.removed, removed];
    this.songs = this.songs?.filter((song) => song.id !== summary.id) ?? null;
    await this.refresh();
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

/** Songs whose title or key contains every word looked for, whatever its case or accents. */
const matching = (songs: readonly SongSummary[], search: string): readonly SongSummary[] => {
  const words = plain(search).split(/\s+/).filter(Boolean);
  return songs.filter((song) => {
    const line = plain(`${song.title} ${song.key} ${song.meter}`);
    return words.every((word) => line.includes(word));
  });
};

const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replaceAll(/\p{Diacritic}/gu, "")
    .toLowerCase();
