import type { ShelfEdit } from "../../../src-shared/book/editShelf.ts";
import type { Problem } from "../../../src-shared/host.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { AppState } from "../../state/context.ts";
import { songbookPlace } from "../../state/place.ts";
import type { SongsOutAndIn } from "../../state/songsOutAndIn.ts";

/** What the last message of the songbook is about: one at a time has a way to undo. */
const ABOUT = "the songbook's last step";

/** Does things in the songbook so that each can be undone and done again, and says them. */
export class BookUndo {
  readonly #app: AppState;
  /** Something has changed in the list: the focus goes to the first of these songs, or near. */
  readonly #onChanged: (ids: readonly string[]) => void;

  constructor(app: AppState, onChanged: (ids: readonly string[]) => void) {
    this.#app = app;
    this.#onChanged = onChanged;
  }

  /** Makes an edit of tags or set lists; `back` is what undoes it. `says` is told, or null nothing. */
  async edit(
    step: string,
    forth: ShelfEdit,
    back: ShelfEdit,
    says: string | null,
  ): Promise<boolean> {
    const { shelf, history } = this.#app.songbook;
    const problem = await shelf.edit(forth);
    if (problem) {
      this.#complain(problem);
      return false;
    }
    history.record({
      says: step,
      undo: () => shelf.edit(back),
      redo: () => shelf.edit(forth),
    });
    this.say(says ?? "");
    return true;
  }

  /** Notes that songs went out or came in, so that undo turns it round. */
  recordMove(step: string, songs: SongsOutAndIn, way: "in" | "out", says: string): void {
    const out = (): Promise<Problem | null> => this.#takeOut(songs);
    const back = (): Promise<Problem | null> => this.#putBack(songs);
    const [undo, redo] = way === "out" ? [back, out] : [out, back];
    this.#app.songbook.history.record({ says: step, undo, redo });
    this.say(says);
  }

  /** Takes songs out; what is on the stand is saved first, as it was last seen. */
  async #takeOut(songs: SongsOutAndIn): Promise<Problem | null> {
    const { navigation, stand, songbook } = this.#app;
    const { place } = navigation;
    // What is on the screen is about to go: the songbook takes its place.
    if ("id" in place && songs.within.includes(place.id)) navigation.go(songbookPlace);
    const open = stand.song && songs.within.includes(stand.song.id) ? stand.song : null;
    await open?.save();
    const problem = await songs.takeOut();
    if (open && !songs.within.includes(open.id)) stand.clear(open.id);
    await songbook.refresh();
    this.#onChanged([]);
    return problem;
  }

  async #putBack(songs: SongsOutAndIn): Promise<Problem | null> {
    const problem = await songs.putBack();
    await this.#app.songbook.refresh();
    this.#onChanged(songs.within);
    return problem;
  }

  /** Takes songs out for the first time; true where all are. */
  async takeOut(songs: SongsOutAndIn): Promise<boolean> {
    const problem = await this.#takeOut(songs);
    if (problem) this.#complain(problem);
    return !problem;
  }

  /** Puts songs back for the first time; true where all are. */
  async putBack(songs: SongsOutAndIn): Promise<boolean> {
    const problem = await this.#putBack(songs);
    if (problem) this.#complain(problem);
    return !problem;
  }

  async undo(): Promise<void> {
    const { history } = this.#app.songbook;
    const { undone, redo, nothingToUndo } = words.songbook;
    const taken = await history.undo();
    const run = (): void => void this.redo();
    if (!taken) this.#app.notices.say(nothingToUndo, null, ABOUT);
    else if (taken.problem) this.#complain(taken.problem);
    else this.#say(undone(taken.step.says), { label: redo, run });
  }

  async redo(): Promise<void> {
    const taken = await this.#app.songbook.history.redo();
    if (taken?.problem) this.#complain(taken.problem);
    else if (taken) this.say(words.songbook.redone(taken.step.says));
  }

  /** Says what was done last, with a button that undoes it; nothing takes the last message away. */
  say(says: string): void {
    const run = (): void => void this.undo();
    this.#say(says, { label: words.songbook.undo, run });
  }

  #say(says: string, action: { readonly label: string; readonly run: () => void }): void {
    const { notices } = this.#app;
    notices.dismissAbout(ABOUT);
    if (says !== "") notices.say(says, action, ABOUT);
  }

  #complain(problem: Problem): void {
    this.#app.notices.complain(problem);
  }
}
