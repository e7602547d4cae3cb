import type { Answer, RemovedSong, StoredSong } from "../../../src-shared/host.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { AppState } from "../../state/context.ts";
import type { BookSong } from "../../state/findSongs.ts";
import { bestPlace } from "../../state/place.ts";
import type { KeptSongs } from "../../state/songbook.svelte.ts";
import { BookUndo } from "./bookUndo.ts";
import type { Demo } from "./demoSongs.ts";
import { STARTER_TITLE, starterText } from "./starterText.ts";

/** What one can do with songs in the songbook; what goes wrong is said in a message. */
export class SongbookActions {
  readonly undo: BookUndo;
  readonly #app: AppState;
  /** Puts the focus on a song's line, or near it where there is none. */
  readonly #focusSong: (id: string | undefined) => void;
  #creating = false;

  constructor(app: AppState, focusSong: (id: string | undefined) => void) {
    this.#app = app;
    this.#focusSong = focusSong;
    this.undo = new BookUndo(app, ([first]) => focusSong(first));
  }

  /** Reads the list anew; what is still being typed in a chart goes into it first. */
  async arrive(): Promise<void> {
    const { stand, songbook, notices } = this.#app;
    await stand.song?.save();
    const problem = await stand.settle();
    if (problem) notices.complain(problem);
    await songbook.refresh();
  }

  async open(id: string): Promise<void> {
    const { evening, stand, navigation, notices } = this.#app;
    evening.end();
    await stand.open(id);
    if (stand.on.kind === "failed") notices.complain(stand.on.problem);
    else if (stand.song && !stand.heldUp) navigation.go(bestPlace(stand.song));
  }

  edit(id: string): void {
    this.#app.evening.end();
    this.#app.navigation.go({ kind: "chart", id });
  }

  async addNew(): Promise<void> {
    const made = await this.#create(STARTER_TITLE, starterText);
    if (!made) return;
    this.#app.stand.announce(made.id);
    this.edit(made.id);
  }

  /** Opens the copy of a demo that is in the book already, or makes one. */
  async openDemo(demo: Demo): Promise<void> {
    const { title } = demo.song;
    const copy = this.#app.songbook.songs?.find((song) => song.title === title);
    const id = copy?.id ?? (await this.#create(title, demo.text))?.id;
    if (id !== undefined) await this.open(id);
  }

  async remove(songs: readonly BookSong[]): Promise<void> {
    const { found } = this.#app.songbook;
    const gone = new Set(songs.map(({ id }) => id));
    const last = found.findLastIndex(({ id }) => gone.has(id));
    const next =
      found.slice(last).find(({ id }) => !gone.has(id)) ??
      found.findLast(({ id }) => !gone.has(id));
    const together = this.#app.songbook.together([...gone]);
    await this.undo.takeOut(together);
    const titles = songs.slice(0, together.out).map(({ title }) => title);
    if (titles.length === 0) return;
    const { steps, deleted } = words.songbook;
    this.undo.recordMove(steps.delete(titles), together, "out", deleted(titles));
    this.#focusSong(next?.id);
  }

  /** Second songs like the first ones, to try something else on. */
  async duplicate(songs: readonly BookSong[]): Promise<void> {
    if (this.#creating) return;
    this.#creating = true;
    const { stand, songbook, notices } = this.#app;
    const ids = songs.map(({ id }) => id);
    if (stand.song && ids.includes(stand.song.id)) await stand.song.save();
    const { kept, problem } = await songbook.duplicate(ids);
    this.#creating = false;
    if (problem) notices.complain(problem);
    if (kept.length === 0) return;
    const together = songbook.together(kept.map(({ id }) => id));
    const { steps, duplicated } = words.songbook;
    const titles = songs.map(({ title }) => title);
    this.undo.recordMove(steps.duplicate(kept.length), together, "in", duplicated(titles));
    this.#focusSong(kept[0]?.id);
  }

  async rename(song: BookSong, title: string): Promise<void> {
    const { songbook, stand } = this.#app;
    if (stand.song?.id === song.id) {
      await stand.song.save();
      stand.clear(song.id);
    }
    const to = async (name: string): Promise<Answer<{ readonly id: string }>> =>
      songbook.rename(songbook.ids.now(song.id), name);
    const renamed = this.#valueOf(await to(title));
    if (!renamed) return;
    const problemOf = (answer: Answer<unknown>) => (answer.ok ? null : answer.problem);
    const says = words.songbook.steps.rename(song.title, title);
    songbook.history.record({
      says,
      undo: async () => problemOf(await to(song.title)),
      redo: async () => problemOf(await to(title)),
    });
    this.undo.say(words.songbook.redone(says));
    this.#focusSong(renamed.id);
  }

  /** Brings removed songs back. */
  async putBack(removed: readonly RemovedSong[]): Promise<void> {
    const together = this.#app.songbook.removed(removed);
    await this.undo.putBack(together);
    const back = together.within.length;
    if (back === 0) return;
    const { steps, removedView, kept } = words.songbook;
    const [first] = removed;
    const says = back === 1 && first ? removedView.back(first.title) : kept(back);
    this.undo.recordMove(steps.putBack(back), together, "in", says);
  }

  /** Tells what has come in, and how to be rid of it again. */
  tellKept({ kept }: KeptSongs): void {
    const { songbook } = this.#app;
    const ids = kept.map(({ id }) => id);
    const together = songbook.together(ids);
    const { steps, kept: says } = words.songbook;
    this.undo.recordMove(steps.bringIn(ids.length), together, "in", says(ids.length));
  }

  /** One create at a time: a double click makes one song. */
  async #create(title: string, text: string): Promise<StoredSong | null> {
    if (this.#creating) return null;
    this.#creating = true;
    const answer = await this.#app.songbook.create(title, text);
    this.#creating = false;
    return this.#valueOf(answer);
  }

  #valueOf<T>(answer: Answer<T>): T | null {
    if (answer.ok) return answer.value;
    this.#app.notices.complain(answer.problem);
    return null;
  }
}
