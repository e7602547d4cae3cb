import type { Host, Problem } from "../../src-shared/host.ts";

/** Which id a song has now that had another one before: it was renamed, or removed and put back. */
export class SongIds {
  readonly #later = new Map<string, string>();

  moved(from: string, to: string): void {
    if (from === to) return;
    this.#later.delete(to);
    this.#later.set(from, to);
  }

  now(id: string): string {
    const next = this.#later.get(id);
    return next === undefined ? id : this.now(next);
  }
}

/** Songs that go out of the songbook together, and come back together. */
export class SongsOutAndIn {
  readonly #host: Host;
  readonly #ids: SongIds;
  #songs: readonly { readonly id: string; readonly ticket: string | null }[];

  constructor(host: Host, ids: SongIds, songs: readonly string[]) {
    this.#host = host;
    this.#ids = ids;
    this.#songs = songs.map((id) => ({ id, ticket: null }));
  }

  /** The ids of those that are in the songbook. */
  get within(): readonly string[] {
    return this.#songs.flatMap(({ id, ticket }) => (ticket === null ? [this.#ids.now(id)] : []));
  }

  /** How many are out. */
  get out(): number {
    return this.#songs.filter(({ ticket }) => ticket !== null).length;
  }

  /** Those of which a ticket is known already: they are out. */
  static removed(
    host: Host,
    ids: SongIds,
    songs: readonly { readonly id: string; readonly ticket: string }[],
  ): SongsOutAndIn {
    const all = new SongsOutAndIn(host, ids, []);
    all.#songs = songs;
    return all;
  }

  /** Takes out those that are in; stops at the first that cannot be, and says why. */
  async takeOut(): Promise<Problem | null> {
    for (const [index, song] of this.#songs.entries()) {
      if (song.ticket !== null) continue;
      const id = this.#ids.now(song.id);
      const answer = await this.#host.removeSong({ id });
      if (!answer.ok) return answer.problem;
      this.#songs = this.#songs.with(index, { id, ticket: answer.value.ticket });
    }
    return null;
  }

  /** Puts back those that are out; stops at the first that cannot be, and says why. */
  async putBack(): Promise<Problem | null> {
    for (const [index, { id, ticket }] of this.#songs.entries()) {
      if (ticket === null) continue;
      const answer = await this.#host.restoreSong({ ticket });
      if (!answer.ok) return answer.problem;
      this.#ids.moved(id, answer.value.id);
      this.#songs = this.#songs.with(index, { id: answer.value.id, ticket: null });
    }
    return null;
  }
}
