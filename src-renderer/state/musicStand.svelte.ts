import { setHeader } from "../../src-shared/chart/edits.ts";
import type { Host, Problem, StoredSong } from "../../src-shared/host.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import type { Hand } from "../../src-shared/route/movement.ts";
import { words } from "../../src-shared/wordTable.ts";
import { OpenSong, type SongClock, wallClock } from "./openSong.svelte.ts";

/** What lies on the stand: nothing, a song on its way, a song, or the reason why there is none. */
export type OnStand =
  | { readonly kind: "nothing" }
  | { readonly kind: "opening"; readonly id: string }
  | { readonly kind: "song"; readonly song: OpenSong }
  | { readonly kind: "failed"; readonly id: string; readonly problem: Problem };

/** Holds the one song that is open, and sees that it is saved before another takes its place. */
export class MusicStand {
  on: OnStand = $state.raw({ kind: "nothing" });
  /** The song that waits because the open one could not be saved. */
  heldUp: { readonly id: string } | null = $state.raw(null);
  /** The song that was asked for, or lay here, under an id that it has no more. */
  renamed: { readonly from: string; readonly to: string } | null = $state.raw(null);
  readonly song: OpenSong | null = $derived(this.on.kind === "song" ? this.on.song : null);
  readonly #host: Host;
  readonly #clock: SongClock;
  readonly #ownPatterns: () => readonly Pattern[];
  readonly #ownHand: () => Hand | null;
  #asked: string | null = null;
  #justMade: string | null = null;

  constructor(
    host: Host,
    clock: SongClock = wallClock,
    ownPatterns: () => readonly Pattern[] = () => [],
    ownHand: () => Hand | null = () => null,
  ) {
    this.#host = host;
    this.#clock = clock;
    this.#ownPatterns = ownPatterns;
    this.#ownHand = ownHand;
  }

  /** A song has been made a moment ago: its title waits to be typed over. */
  announce(id: string): void {
    this.#justMade = id;
  }

  /** Whether this song was just made; true only the first time one asks. */
  welcomes(id: string): boolean {
    const isNew = this.#justMade === id;
    if (isNew) this.#justMade = null;
    return isNew;
  }

  /** Puts a song on the stand, unless it lies there. */
  async open(id: string): Promise<void> {
    if (this.song?.id === id) {
      this.#asked = id;
      this.heldUp = null;
      return;
    }
    if (this.#asked === id && this.on.kind === "opening") return;
    this.#asked = id;
    const saved = await this.#saved();
    if (this.#asked !== id) return;
    if (saved) await this.#fetch(id);
    else this.heldUp = { id };
  }

  /** Tries again to save the open song and, when that works, opens the one that waits. */
  async retry(): Promise<void> {
    const waiting = this.heldUp;
    if (waiting) {
      this.heldUp = null;
      await this.open(waiting.id);
    } else if (this.on.kind === "failed") {
      await this.#fetch(this.on.id);
    }
  }

  /** Has the damaged song mended that could not be opened, and opens it. */
  async mend(): Promise<void> {
    const { on } = this;
    if (on.kind !== "failed") return;
    const answer = await this.#host.mendSong({ id: on.id });
    if (this.on !== on) return;
    this.on = answer.ok
      ? { kind: "song", song: this.#opened(answer.value) }
      : { ...on, problem: answer.problem };
  }

  /** Opens the song that waits, and gives up what could not be saved. */
  async openAnyway(): Promise<void> {
    const waiting = this.heldUp;
    if (!waiting) return;
    this.heldUp = null;
    this.song?.abandon();
    await this.#fetch(waiting.id);
  }

  /** The player stays with the song that could not be saved. */
  stay(): void {
    this.heldUp = null;
    this.#asked = this.song?.id ?? null;
  }

  /** Lets the song's file be called by its title; gives why it keeps its name, or null. */
  async settle(): Promise<Problem | null> {
    const { song } = this;
    if (song?.saving !== "saved") return null;
    const answer = await this.#host.settleSong({ id: song.id });
    if (!answer.ok) return answer.problem.code === "not-found" ? null : answer.problem;
    this.#moved(song.id, answer.value.id);
    song.movedTo(answer.value.id);
    return null;
  }

  /** Takes the song off, because it is out of the songbook. */
  clear(id: string): void {
    if (this.song?.id !== id) return;
    this.song.abandon();
    this.on = { kind: "nothing" };
    this.#asked = null;
  }

  /**
   * Puts the open song into the songbook a second time and goes on with that one: for a song that was
   * changed elsewhere, or is gone. Answers with why not, else with null.
   */
  async keepMine(): Promise<Problem | null> {
    const mine = this.song;
    if (!mine) return null;
    const isChanged = mine.conflict?.code === "changed";
    const { title: named } = mine.walk.song;
    const title = isChanged ? words.save.mine(named) : named;
    const retitled = (text: string): string => (isChanged ? setHeader(text, "Title", title) : text);
    const { text, ownSettings: settings } = mine;
    const made = { title: title.slice(0, 200), text: retitled(text), settings };
    const answer = await this.#host.createSong(made);
    if (!answer.ok) return answer.problem;
    const song = this.#opened(answer.value);
    // What was typed while the song was being made.
    if (mine.text !== text) song.edit(retitled(mine.text));
    if (mine.ownSettings !== settings) song.change(mine.ownSettings);
    mine.abandon();
    if (!this.heldUp) this.#asked = song.id;
    this.on = { kind: "song", song };
    return null;
  }

  #moved(from: string, to: string): void {
    if (from === to) return;
    if (this.#asked === from) this.#asked = to;
    this.renamed = { from, to };
  }

  #opened(stored: StoredSong): OpenSong {
    return new OpenSong(this.#host, stored, this.#clock, this.#ownPatterns, this.#ownHand);
  }

  async #saved(): Promise<boolean> {
    const leaving = this.song;
    if (!leaving) return true;
    await leaving.save();
    if (leaving.saving !== "saved") return false;
    // It goes on under its old name where it cannot have the new one; the songbook then says why.
    await this.settle();
    return true;
  }

  async #fetch(id: string): Promise<void> {
    this.#asked = id;
    this.on = { kind: "opening", id };
    // A song that was left in the middle has its title's name from here on.
    const settled = await this.#host.settleSong({ id });
    if (this.#asked !== id) return;
    const answer = await this.#host.readSong({ id: settled.ok ? settled.value.id : id });
    if (this.#asked !== id) return;
    if (answer.ok) this.#moved(id, answer.value.id);
    this.on = answer.ok
      ? { kind: "song", song: this.#opened(answer.value) }
      : { kind: "failed", id, problem: answer.problem };
  }
}
