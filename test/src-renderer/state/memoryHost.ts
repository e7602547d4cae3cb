import { emptyShelf, type Shelf } from "../../../src-shared/book/shelf.ts";
import type {
  Answer,
  Host,
  Problem,
  ScreenError,
  SongVersionFile,
  StoredSong,
} from "../../../src-shared/host.ts";
import type { LogLine } from "../../../src-shared/practice/logLine.ts";
import { withLines } from "../../../src-shared/practice/readLog.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import {
  firstPreferences,
  newSongSettings,
  type Preferences,
} from "../../../src-shared/settings.ts";

/** A disk that says no. */
export const diskFull: Problem = {
  code: "disk",
  says: "The disk is full.",
  try: "Make room on it.",
};

/** Another has written the song. */
export const changedElsewhere: Problem = {
  code: "changed",
  says: "This song was changed elsewhere.",
  try: "Another window has saved it.",
};

/** A host that keeps its songs in memory, and whose writing can be held up or made to fail. */
export class MemoryHost {
  readonly songs: Map<string, StoredSong> = new Map();
  readonly bin: Map<string, StoredSong> = new Map();
  readonly written: StoredSong[] = [];
  readonly versions: Map<string, readonly SongVersionFile[]> = new Map();
  readonly errors: ScreenError[] = [];
  preferences: Preferences = firstPreferences;
  patterns: readonly Pattern[] = [];
  log: readonly LogLine[] = [];
  shelf: Shelf = emptyShelf;
  readonly opened: string[] = [];
  /** Ids that songs get when they are settled. */
  readonly settled: Map<string, string> = new Map();
  failing: Problem | null = null;
  #gate: Promise<void> | null = null;
  #open: () => void = () => undefined;

  constructor(songs: readonly StoredSong[] = []) {
    for (const song of songs) this.songs.set(song.id, song);
  }

  /** From now on calls wait until `letThrough`. */
  holdUp(): void {
    this.#gate = new Promise((open) => {
      this.#open = open;
    });
  }

  letThrough(): void {
    this.#gate = null;
    this.#open();
  }

  async #answer<T>(work: () => T | Problem): Promise<Answer<T>> {
    await this.#gate;
    if (this.failing) return { ok: false, problem: this.failing };
    const result = work();
    return isProblem(result) ? { ok: false, problem: result } : { ok: true, value: result };
  }

  #settle(id: string): { readonly id: string } | Problem {
    const song = this.songs.get(id);
    const to = this.settled.get(id);
    if (!song) return unknownSong;
    if (to === undefined) return { id };
    this.songs.delete(id);
    this.songs.set(to, { ...song, id: to });
    return { id: to };
  }

  readonly host: Host = {
    listSongs: () =>
      this.#answer(() =>
        [...this.songs.values()].map(({ id, text }) => ({
          id,
          title: /^Title: (.*)$/m.exec(text)?.[1] ?? id,
          key: "G",
          meter: "4/4",
          tempo: 100,
          chords: ["G", "F#m"],
          changedMs: 7,
        })),
      ),
    readSong: ({ id }) => this.#answer(() => this.songs.get(id) ?? unknownSong),
    createSong: ({ title, text, settings }) =>
      this.#answer(() => {
        const song = { id: `${title} ${this.songs.size + 1}`, text, settings };
        this.songs.set(song.id, song);
        return song;
      }),
    writeSong: ({ before, settingsBefore, ...song }) =>
      this.#answer(() => {
        const kept = this.songs.get(song.id);
        if (!kept) return unknownSong;
        if (kept.text !== before && kept.text !== song.text) return changedElsewhere;
        const known = [settingsBefore, song.settings].map((settings) => JSON.stringify(settings));
        if (settingsBefore && !known.includes(JSON.stringify(kept.settings))) {
          return changedElsewhere;
        }
        this.songs.set(song.id, song);
        this.written.push(song);
        return null;
      }),
    removeSong: ({ id }) =>
      this.#answer(() => {
        const song = this.songs.get(id);
        if (!song) return unknownSong;
        this.songs.delete(id);
        this.bin.set(`ticket ${id}`, song);
        return { ticket: `ticket ${id}` };
      }),
    restoreSong: ({ ticket }) =>
      this.#answer(() => {
        const song = this.bin.get(ticket);
        if (!song) return unknownSong;
        this.songs.set(song.id, song);
        this.bin.delete(ticket);
        return song;
      }),
    listVersions: ({ id }) =>
      this.#answer(() =>
        (this.versions.get(id) ?? []).map(({ savedMs }) => ({ version: `${savedMs}`, savedMs })),
      ),
    readVersion: ({ id, version }) =>
      this.#answer(
        () => this.versions.get(id)?.find(({ savedMs }) => `${savedMs}` === version) ?? unknownSong,
      ),
    mendSong: ({ id }) => this.#answer(() => this.songs.get(id) ?? unknownSong),
    noteError: (error) =>
      this.#answer(() => {
        this.errors.push(error);
        return null;
      }),
    readErrors: () =>
      this.#answer(() => ({
        path: "/home/log/errors.log",
        text: this.errors.map(({ says }) => says).join("\n"),
      })),
    listRemoved: () =>
      this.#answer(() =>
        [...this.bin].map(([ticket, { id }]) => ({ ticket, title: id, removedMs: 11 })),
      ),
    eraseRemoved: ({ tickets }) =>
      this.#answer(() => {
        for (const ticket of tickets) this.bin.delete(ticket);
        return null;
      }),
    settleSong: ({ id }) => this.#answer(() => this.#settle(id)),
    markOpened: ({ id }) =>
      this.#answer(() => {
        this.opened.push(id);
        return null;
      }),
    readShelf: () => this.#answer(() => this.shelf),
    writeShelf: (shelf) =>
      this.#answer(() => {
        if (shelf.revision !== this.shelf.revision) return changedElsewhere;
        this.shelf = { ...shelf, revision: shelf.revision + 1 };
        return { revision: this.shelf.revision };
      }),
    takeFiles: () => this.#answer(() => []),
    readPreferences: () => this.#answer(() => this.preferences),
    writePreferences: (preferences) =>
      this.#answer(() => {
        this.preferences = preferences;
        return null;
      }),
    readPatterns: () => this.#answer(() => this.patterns),
    writePatterns: (patterns) =>
      this.#answer(() => {
        this.patterns = patterns;
        return null;
      }),
    readLog: () => this.#answer(() => ({ entries: withLines([], this.log), passedOver: [] })),
    appendLog: (line) =>
      this.#answer(() => {
        this.log = [...this.log, line];
        return null;
      }),
  };
}

const unknownSong: Problem = {
  code: "not-found",
  says: "There is no such song.",
  try: "Look for it in the songbook.",
};

const isProblem = (value: unknown): value is Problem =>
  typeof value === "object" && value !== null && "says" in value;

/** A song as it is kept, with this text. */
export const storedSong = (id: string, text: string): StoredSong => ({
  id,
  text,
  settings: newSongSettings,
});
