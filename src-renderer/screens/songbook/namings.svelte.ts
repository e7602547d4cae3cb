import { MOST_NAME_CHARACTERS, type SetList } from "../../../src-shared/book/shelf.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { BookSong } from "../../state/findSongs.ts";
import type { ShelfActions } from "./shelfActions.ts";
import type { SongbookActions } from "./songbookActions.ts";

/** What is being named: its dialog, and what is done with the name. */
export type Naming = {
  readonly title: string;
  readonly name: string;
  readonly keep: string;
  readonly most: number;
  readonly onName: (name: string) => void;
};

/** A title is at most this long for the host. */
const MOST_TITLE = 200;

/** The one dialog in which songs, tags and set lists get their names. */
export class Namings {
  now: Naming | null = $state.raw(null);
  readonly #songs: SongbookActions;
  readonly #shelf: ShelfActions;

  constructor(songs: SongbookActions, shelf: ShelfActions) {
    this.#songs = songs;
    this.#shelf = shelf;
  }

  #ask(
    title: string,
    name: string,
    onName: (name: string) => void,
    most = MOST_NAME_CHARACTERS,
  ): void {
    const { keep, make } = words.songbook.nameDialog;
    this.now = { title, name, most, onName, keep: name === "" ? make : keep };
  }

  song(song: BookSong): void {
    const { title } = song;
    const done = (name: string): void => void this.#songs.rename(song, name);
    this.#ask(words.songbook.nameDialog.song, title, done, MOST_TITLE);
  }

  tag(tag: string): void {
    this.#ask(words.songbook.nameDialog.tag, tag, (name) => void this.#shelf.renameTag(tag, name));
  }

  setList(list: SetList): void {
    const done = (name: string): void => void this.#shelf.rename(list, name);
    this.#ask(words.songbook.nameDialog.setList, list.name, done);
  }

  newSetList(): void {
    this.#ask(words.songbook.nameDialog.fresh, "", (name) => void this.#shelf.make(name));
  }
}
