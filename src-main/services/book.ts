import { join } from "node:path";
import { removedId, withoutSongs, withSongRenamed } from "../../src-shared/book/editShelf.ts";
import type { Answer, StoredSong } from "../../src-shared/host.ts";
import { given } from "./answer.ts";
import type { Disk } from "./disk.ts";
import { pathIn } from "./fileName.ts";
import { refuseNewer } from "./newerFile.ts";
import { type Remark, remarkTo } from "./remarks.ts";
import { makeRemovedSongs, type RemovedSongs } from "./removedSongs.ts";
import { settleSong } from "./settleSong.ts";
import { makeShelf, type ShelfFile } from "./shelf.ts";
import { makeSongbook, type Songbook } from "./songbook.ts";

/** The songbook together with its shelf: where a song gets another id, tags and set lists follow. */
export type Book = Songbook & {
  readonly shelf: ShelfFile;
  readonly settle: (id: string) => Promise<Answer<{ readonly id: string }>>;
  readonly listRemoved: RemovedSongs["list"];
  readonly erase: RemovedSongs["erase"];
};

const KNOWN_SETTINGS = 1;

/** Keeps a songbook and its shelf in a home folder. */
export const makeBook = (home: string, disk: Disk, remark: Remark = remarkTo(disk.log)): Book => {
  const folder = join(home, "songbook");
  const songbook = makeSongbook(folder, disk, remark);
  const shelf = makeShelf(home, disk, () => Date.now());
  const removed = makeRemovedSongs(join(folder, ".removed"));
  /** Old ids of songs that were settled: another window may still know them by these. */
  const later = new Map<string, string>();

  /** Does work on a song under the id it has now, unless a later Shortslide wrote its settings. */
  const on = async <T>(
    id: string,
    work: (id: string) => Promise<Answer<T>>,
  ): Promise<Answer<T>> => {
    const path = pathIn(folder, id, ".json");
    const known = path === null ? given(null) : await refuseNewer(path, KNOWN_SETTINGS);
    const answer = known.ok ? await work(id) : known;
    const next = later.get(id);
    return next !== undefined && !answer.ok && answer.problem.code === "not-found"
      ? on(next, work)
      : answer;
  };

  /** Moves a song, and its place on the shelf with it; puts it back where the shelf cannot follow. */
  const withShelf = async (
    from: string,
    to: string,
    putBack: () => Promise<unknown>,
  ): Promise<Answer<null>> => {
    let followed = false;
    try {
      const edited = await shelf.edit((now) => withSongRenamed(now, from, to));
      followed = edited.ok;
      return edited;
    } finally {
      if (!followed) {
        await putBack();
      }
    }
  };

  return {
    shelf,
    list: () => songbook.list(),
    read: (id) => on(id, (now) => songbook.read(now)),
    create: (title, text, settings) => songbook.create(title, text, settings),
    write: (song) => on(song.id, (id) => songbook.write({ ...song, id })),

    remove: (id) =>
      on(id, async (now) => {
        const taken = await songbook.remove(now);
        if (!taken.ok) {
          return taken;
        }
        const { ticket } = taken.value;
        const followed = await withShelf(now, removedId(ticket), () => songbook.restore(ticket));
        return followed.ok ? taken : followed;
      }),

    restore: async (ticket): Promise<Answer<StoredSong>> => {
      const back = await songbook.restore(ticket);
      if (!back.ok) {
        return back;
      }
      const { id } = back.value;
      const followed = await withShelf(removedId(ticket), id, () => songbook.remove(id));
      return followed.ok ? back : followed;
    },

    listVersions: (id) => on(id, (now) => songbook.listVersions(now)),
    readVersion: (id, version) => on(id, (now) => songbook.readVersion(now, version)),
    mend: (id) => on(id, (now) => songbook.mend(now)),

    settle: (id) =>
      on(id, async (now) => {
        const settled = await settleSong(songbook, now);
        if (!settled.ok || settled.value.id === now) {
          return settled;
        }
        later.delete(settled.value.id);
        later.set(now, settled.value.id);
        const followed = await shelf.edit((each) => withSongRenamed(each, now, settled.value.id));
        return followed.ok ? settled : followed;
      }),

    listRemoved: () => removed.list(),
    erase: async (tickets) => {
      const erased = await removed.erase(tickets);
      const gone = new Set(tickets.map(removedId));
      return erased.ok ? shelf.edit((now) => withoutSongs(now, gone)) : erased;
    },
  };
};
