import * as v from "valibot";

const KEPT_AS = "shortslide.cameFrom";
const schema = v.object({ id: v.string(), bar: v.pipe(v.number(), v.integer(), v.minValue(0)) });

/** What of the browser outlives a reload and a crash of the page, but not the tab. */
export type TabStore = Pick<Storage, "getItem" | "setItem">;

/**
 * Where in which song one was, so that a page that is loaded again comes back there: the place and
 * the song are in the address, the loop in the song's settings, and the bar is here.
 */
export class CameFrom {
  readonly #store: TabStore;

  constructor(store: TabStore) {
    this.#store = store;
  }

  /** The bar one was at in this song, 0-based; null where one was not. */
  barIn(id: string): number | null {
    const text = this.#store.getItem(KEPT_AS);
    const read = v.safeParse(v.pipe(v.string(), v.parseJson(), schema), text);
    return read.success && read.output.id === id ? read.output.bar : null;
  }

  /** Notes the bar; at most once a bar, so it costs nothing while it plays. */
  note(id: string, bar: number): void {
    this.#store.setItem(KEPT_AS, JSON.stringify({ id, bar }));
  }

  /** The song has another id from now on. */
  moved(from: string, to: string): void {
    const bar = this.barIn(from);
    if (bar !== null) this.note(to, bar);
  }
}
