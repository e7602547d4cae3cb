import { join } from "node:path";
import { type ShelfEdit, withOpened } from "../../src-shared/book/editShelf.ts";
import { emptyShelf, type Shelf, shelfSchema } from "../../src-shared/book/shelf.ts";
import type { Answer } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import type { Disk } from "./disk.ts";
import { readKept, writeJson } from "./jsonFile.ts";
import { refuseNewer } from "./newerFile.ts";

/** Tags, set lists and what was opened last, on disk. */
export type ShelfFile = {
  readonly read: () => Promise<Answer<Shelf>>;
  readonly write: (shelf: Shelf) => Promise<Answer<{ readonly revision: number }>>;
  readonly opened: (id: string) => Promise<Answer<null>>;
  /** Changes it from this side, where songs get another id; a change of nothing writes nothing. */
  readonly edit: (edit: ShelfEdit) => Promise<Answer<null>>;
};

const KNOWN_VERSION = 1;

/**
 * Keeps the shelf in one file of the home folder. A damaged file is set aside and said with the next
 * reading; from then on the shelf is empty.
 */
export const makeShelf = (home: string, disk: Disk, nowMs: () => number): ShelfFile => {
  const path = join(home, "shelf.json");
  let asideUnsaid: string | null = null;

  const load = async (): Promise<Answer<Shelf>> => {
    const known = await refuseNewer(path, KNOWN_VERSION);
    if (!known.ok) {
      return known;
    }
    const kept = await readKept(disk, path, shelfSchema);
    if (kept.kind === "damaged") {
      asideUnsaid = kept.aside;
    }
    return given(kept.kind === "value" ? kept.value : emptyShelf);
  };

  return {
    read: async () => {
      const shelf = await load();
      if (asideUnsaid === null) {
        return shelf;
      }
      const aside = asideUnsaid;
      asideUnsaid = null;
      return failed("damaged", words.shelf.damaged, words.shelf.damagedTry(aside));
    },

    write: async (next) => {
      const now = await load();
      if (!now.ok) {
        return now;
      }
      const { revision, opened } = now.value;
      if (next.revision !== revision) {
        return failed("changed", words.shelf.changed, words.shelf.changedTry);
      }
      await writeJson(disk, path, { ...next, opened, revision: revision + 1 });
      return given({ revision: revision + 1 });
    },

    opened: async (id) => {
      const now = await load();
      if (now.ok) {
        await writeJson(disk, path, withOpened(now.value, id, nowMs()));
      }
      return now.ok ? given(null) : now;
    },

    edit: async (edit) => {
      const now = await load();
      if (!now.ok) {
        return now;
      }
      const next = edit(now.value);
      if (JSON.stringify(next) !== JSON.stringify(now.value)) {
        await writeJson(disk, path, { ...next, revision: now.value.revision + 1 });
      }
      return given(null);
    },
  };
};
