import type { Answer, SongSummary, StoredSong } from "../../../src-shared/host.ts";
import { sayCount } from "../../parts/facts.ts";
import type { AppState } from "../../state/context.ts";
import { bestPlace, songbookPlace } from "../../state/place.ts";
import type { KeptSongs, Removed } from "../../state/songbook.svelte.ts";
import type { Demo } from "./demoSongs.ts";
import { STARTER_TITLE, starterText } from "./starterText.ts";

/** What one can do in the songbook; what goes wrong is said in a message. */
export class SongbookActions {
  readonly #app: AppState;
  /** Puts the focus on a song's line, or near it where there is none. */
  readonly #focusSong: (id: string | undefined) => void;
  #creating = false;

  constructor(app: AppState, focusSong: (id: string | undefined) => void) {
    this.#app = app;
    this.#focusSong = focusSong;
  }

  /** Reads the list anew; what is still being typed in a chart goes into it first. */
  async arrive(): Promise<void> {
    await this.#app.stand.song?.save();
    await this.#app.songbook.refresh();
  }

  async open(id: string): Promise<void> {
    const { stand, navigation, notices } = this.#app;
    await stand.open(id);
    if (stand.song?.id === id) navigation.go(bestPlace(stand.song));
    else if (stand.on.kind === "failed") notices.complain(stand.on.problem);
  }

  edit(id: string): void {
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

  async remove(song: SongSummary): Promise<void> {
    const { songbook, stand, notices } = this.#app;
    const at = songbook.found.findIndex(({ id }) => id === song.id);
    const next = songbook.found[at + 1] ?? songbook.found[at - 1];
    // The bin is to have it as it was last seen.
    if (stand.song?.id === song.id) await stand.song.save();
    const removed = this.#valueOf(await songbook.remove(song));
    if (!removed) return;
    stand.clear(song.id);
    const run = (): void => void this.putBack(removed);
    notices.say(`“${song.title}” is deleted.`, { label: "Undo", run }, removed.ticket);
    this.#focusSong(next?.id);
  }

  async putBack(removed: Removed): Promise<void> {
    this.#app.notices.dismissAbout(removed.ticket);
    const song = this.#valueOf(await this.#app.songbook.restore(removed));
    if (song) this.#focusSong(song.id);
  }

  /** A second song like the first, to try something else on. */
  async duplicate(song: SongSummary): Promise<void> {
    if (this.#creating) return;
    this.#creating = true;
    if (this.#app.stand.song?.id === song.id) await this.#app.stand.song.save();
    const answer = await this.#app.songbook.duplicate(song);
    this.#creating = false;
    const copy = this.#valueOf(answer);
    if (!copy) return;
    this.#sayKept([copy.id], `“${song.title}” is in the songbook a second time.`);
    this.#focusSong(copy.id);
  }

  /** Tells what has come in, and how to be rid of it again. */
  tellKept({ kept }: KeptSongs): void {
    const ids = kept.map(({ id }) => id);
    this.#sayKept(ids, `${sayCount(ids.length, "song")} kept.`);
  }

  #sayKept(ids: readonly string[], says: string): void {
    const run = (): void => void this.#takeBack(new Set(ids));
    this.#app.notices.say(says, { label: "Undo", run }, ids.join(" "));
  }

  async #takeBack(ids: ReadonlySet<string>): Promise<void> {
    const { navigation, songbook, stand, notices } = this.#app;
    const { song } = stand;
    const { place } = navigation;
    // What is on the screen is about to go: the songbook takes its place.
    if ("id" in place && ids.has(place.id)) navigation.go(songbookPlace);
    // The bin is to have it as it was last seen.
    if (song && ids.has(song.id)) await song.save();
    const problem = await songbook.removeAll(ids);
    if (song && ids.has(song.id) && !problem) stand.clear(song.id);
    if (problem) notices.complain(problem);
    this.#focusSong(undefined);
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
