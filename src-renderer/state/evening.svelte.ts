import { setListOf, songMeant } from "../../src-shared/book/editSetLists.ts";
import type { SetList, SetSong } from "../../src-shared/book/shelf.ts";
import type { Problem } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import type { BookSong } from "./findSongs.ts";
import type { MusicStand } from "./musicStand.svelte.ts";
import type { Navigation } from "./navigation.svelte.ts";
import type { Songbook } from "./songbook.svelte.ts";

/** A song of the set list with what the songbook has of it. */
export type Item = { readonly index: number; readonly song: BookSong; readonly set: SetSong };

/** The set list that is being played, and how far it has got. */
export class Evening {
  #at: { readonly list: string; readonly index: number } | null = $state.raw(null);
  /** The song that has come up by itself is to be played at once. */
  startsNow: boolean = $state(false);
  readonly list: SetList | null;
  /** Those of its songs that are in the songbook, in their order. */
  readonly #items: readonly Item[];
  readonly #place: number;
  readonly #stand: MusicStand;
  readonly #navigation: Navigation;

  constructor(songbook: Songbook, stand: MusicStand, navigation: Navigation) {
    this.#stand = stand;
    this.#navigation = navigation;
    this.list = $derived(this.#at && setListOf(songbook.shelf.value, this.#at.list));
    this.#items = $derived(
      (this.list?.songs ?? []).flatMap((set, index): readonly Item[] => {
        const song = songMeant(songbook.all, set);
        return song ? [{ index, song, set }] : [];
      }),
    );
    this.#place = $derived(this.#items.findIndex(({ index }) => index === this.#at?.index));
  }

  /** The song that is played; null outside an evening. */
  get current(): Item | null {
    return this.#items[this.#place] ?? null;
  }

  get next(): Item | null {
    return this.#place < 0 ? null : (this.#items[this.#place + 1] ?? null);
  }

  get previous(): Item | null {
    return this.#items[this.#place - 1] ?? null;
  }

  /** Where the list has got, from 1, and how many songs there are to play. */
  get progress(): { readonly place: number; readonly of: number } {
    return { place: this.#place + 1, of: this.#items.length };
  }

  /** Whether this song is up in the evening. */
  has(id: string): boolean {
    return this.current?.song.id === id;
  }

  /** Plays a set list from its song `index`, from 0; gives why not, or null. */
  async begin(list: string, index: number): Promise<Problem | null> {
    this.#at = { list, index };
    const item = this.#items.find((each) => each.index >= index) ?? null;
    if (!item) {
      this.#at = null;
      const { missing, empty } = words.songbook.setList;
      return { code: "not-found", says: missing, try: empty };
    }
    return this.#bring(item, false);
  }

  /** Brings up the next song (1) or the one before (-1), where there is one. */
  async step(by: -1 | 1, startsNow: boolean): Promise<Problem | null> {
    const item = by === 1 ? this.next : this.previous;
    return item && this.#bring(item, startsNow);
  }

  /** The set is over: the song that is open stays, in its own key. */
  end(): void {
    this.#at = null;
    this.startsNow = false;
    if (this.#stand.song) this.#stand.song.eveningKey = null;
  }

  /** The key of the evening for the song that is up has changed. */
  inKey(key: string | null): void {
    if (this.#stand.song) this.#stand.song.eveningKey = key;
  }

  async #bring({ index, song, set }: Item, startsNow: boolean): Promise<Problem | null> {
    const list = this.#at?.list;
    await this.#stand.open(song.id);
    const { on } = this.#stand;
    if (on.kind === "failed") return on.problem;
    // Held up by a song that is not saved, or by another one that was asked for meanwhile.
    if (on.kind !== "song" || list === undefined || this.#at?.list !== list) return null;
    const { renamed } = this.#stand;
    const asked = renamed?.from === song.id ? renamed.to : song.id;
    if (asked !== on.song.id) return null;
    this.#at = { list, index };
    on.song.eveningKey = set.key;
    this.startsNow = startsNow;
    this.#navigation.go({ kind: "play", id: on.song.id });
    return null;
  }
}
