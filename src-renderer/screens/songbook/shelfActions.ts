import {
  setListOf,
  withoutSetList,
  withoutSong,
  withSetList,
  withSetListAt,
  withSongChanged,
  withSongMoved,
  withSongs,
} from "../../../src-shared/book/editSetLists.ts";
import {
  type ShelfEdit,
  tagsOf,
  withTag,
  withTagRenamed,
  withTags,
} from "../../../src-shared/book/editShelf.ts";
import type { SetList, SetSong } from "../../../src-shared/book/shelf.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { BookSong } from "../../state/findSongs.ts";
import type { Songbook } from "../../state/songbook.svelte.ts";
import type { BookUndo } from "./bookUndo.ts";

/** What one can do with tags and set lists; every step can be undone. */
export class ShelfActions {
  readonly #songbook: Songbook;
  readonly #undo: BookUndo;
  /** A name for a new set list that no other has, now or later. */
  readonly #freshId: () => string;

  constructor(
    songbook: Songbook,
    undo: BookUndo,
    freshId: () => string = () => crypto.randomUUID(),
  ) {
    this.#songbook = songbook;
    this.#undo = undo;
    this.#freshId = freshId;
  }

  /** Puts tags on songs (true) or takes them off (false). */
  async tag(songs: readonly BookSong[], tags: ReadonlyMap<string, boolean>): Promise<void> {
    const { ids } = this.#songbook;
    const before = songs.map(({ id, tags: own }) => [id, own] as const);
    const forth: ShelfEdit = (shelf) =>
      [...tags].reduce(
        (now, [tag, wanted]) =>
          withTag(
            now,
            before.map(([id]) => ids.now(id)),
            tag,
            wanted,
          ),
        shelf,
      );
    const back: ShelfEdit = (shelf) =>
      before.reduce((now, [id, own]) => withTags(now, ids.now(id), own), shelf);
    const step = words.songbook.steps.tag(songs.length);
    await this.#undo.edit(step, forth, back, words.songbook.redone(step));
  }

  async renameTag(from: string, to: string): Promise<void> {
    const step = words.songbook.steps.renameTag(from);
    const done = await this.#onTagged(from, step, (shelf) => withTagRenamed(shelf, from, to));
    if (done) this.#songbook.view = { kind: "tag", tag: to };
  }

  async dropTag(tag: string): Promise<void> {
    const step = words.songbook.steps.dropTag(tag);
    const ids = this.#tagged(tag);
    const done = await this.#onTagged(tag, step, (shelf) => withTag(shelf, ids, tag, false));
    if (done) this.#songbook.view = { kind: "all" };
  }

  async #onTagged(tag: string, step: string, forth: ShelfEdit): Promise<boolean> {
    const { ids, shelf: now } = this.#songbook;
    const before = this.#tagged(tag).map((id) => [id, tagsOf(now.value, id)] as const);
    const back: ShelfEdit = (shelf) =>
      before.reduce((each, [id, own]) => withTags(each, ids.now(id), own), shelf);
    return this.#undo.edit(step, forth, back, words.songbook.redone(step));
  }

  #tagged(tag: string): readonly string[] {
    return this.#songbook.shelf.value.tags.flatMap(({ id, tags }) =>
      tags.includes(tag) ? [id] : [],
    );
  }

  /** A new set list, with songs where some are given; it is looked at when it has none. */
  async make(name: string, songs: readonly BookSong[] = []): Promise<void> {
    const list = withSongs({ id: this.#freshId(), name, goesOn: true, songs: [] }, songs);
    const { steps, setDialog, redone } = words.songbook;
    const step = steps.newSetList(name);
    const says = songs.length > 0 ? setDialog.done(name, songs.length) : redone(step);
    const done = await this.#undo.edit(
      step,
      (shelf) => withSetList(shelf, list),
      (shelf) => withoutSetList(shelf, list.id),
      says,
    );
    if (done && songs.length === 0) this.#songbook.view = { kind: "setList", id: list.id };
  }

  /** Puts songs at the end of a set list. */
  async put(list: SetList, songs: readonly BookSong[]): Promise<void> {
    const { steps, setDialog } = words.songbook;
    const says = setDialog.done(list.name, songs.length);
    await this.#change(list, steps.putIn(list.name), (now) => withSongs(now, songs), says);
  }

  async rename(list: SetList, name: string): Promise<void> {
    await this.#change(list, words.songbook.steps.renameSetList(list.name), (now) => ({
      ...now,
      name,
    }));
  }

  async goesOn(list: SetList, goesOn: boolean): Promise<void> {
    await this.#change(list, words.songbook.steps.goesOn(list.name), (now) => ({ ...now, goesOn }));
  }

  async remove(list: SetList): Promise<void> {
    const step = words.songbook.steps.deleteSetList(list.name);
    const at = this.#songbook.shelf.value.setLists.findIndex(({ id }) => id === list.id);
    const done = await this.#undo.edit(
      step,
      (shelf) => withoutSetList(shelf, list.id),
      (shelf) => withSetListAt(shelf, list, at),
      words.songbook.redone(step),
    );
    if (done) this.#songbook.view = { kind: "all" };
  }

  async move(list: SetList, from: number, to: number): Promise<void> {
    const step = words.songbook.steps.move(list.songs[from]?.title ?? "");
    await this.#change(list, step, (now) => withSongMoved(now, from, to));
  }

  async change(
    list: SetList,
    at: number,
    part: Partial<Pick<SetSong, "key" | "times">>,
  ): Promise<void> {
    const { steps } = words.songbook;
    const title = list.songs[at]?.title ?? "";
    const step = "key" in part ? steps.eveningKey(title) : steps.times(title);
    await this.#change(list, step, (now) => withSongChanged(now, at, part));
  }

  async takeOut(list: SetList, at: number): Promise<void> {
    const step = words.songbook.steps.takeFrom(list.songs[at]?.title ?? "", list.name);
    await this.#change(list, step, (now) => withoutSong(now, at));
  }

  /** Undo puts the list as a whole back as it was, with the ids that its songs have by then. */
  async #change(
    { id }: SetList,
    step: string,
    edit: (list: SetList) => SetList,
    says: string = words.songbook.redone(step),
  ): Promise<void> {
    const { ids, shelf } = this.#songbook;
    const before = setListOf(shelf.value, id);
    if (!before || edit(before) === before) return;
    const forth: ShelfEdit = (now) => {
      const list = setListOf(now, id);
      return list ? withSetList(now, edit(list)) : now;
    };
    const back: ShelfEdit = (now) => {
      const songs = before.songs.map((song) => ({ ...song, id: ids.now(song.id) }));
      return setListOf(now, id) ? withSetList(now, { ...before, songs }) : now;
    };
    await this.#undo.edit(step, forth, back, says);
  }
}
