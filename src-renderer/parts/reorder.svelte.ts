/** Rows of a list that are moved by a handle: which one is held, and where it would come to lie. */
export class Reorder {
  /** Index of the row that is held; null where none is. */
  held: number | null = $state(null);
  /** Where it would be put. */
  to: number = $state(0);
  readonly #onMove: (from: number, to: number) => void;

  constructor(onMove: (from: number, to: number) => void) {
    this.#onMove = onMove;
  }

  /** Where the held row would come to lie beside row `index`; null where not there. */
  mark(index: number): "above" | "below" | null {
    const { held, to } = this;
    if (held === null || index !== to || held === to) return null;
    return to < held ? "above" : "below";
  }

  /** Lets a handle of row `index` be dragged up and down, with mouse, pen or finger. */
  grip(index: number): (handle: HTMLElement) => () => void {
    return (handle) => {
      const ending = new AbortController();
      const { signal } = ending;
      const on = <K extends "pointerdown" | "pointermove" | "pointerup" | "pointercancel">(
        name: K,
        hear: (event: PointerEvent) => void,
      ): void => handle.addEventListener(name, hear, { signal });
      on("pointerdown", (event) => {
        if (event.button !== 0) return;
        handle.setPointerCapture(event.pointerId);
        this.held = index;
        this.to = index;
      });
      on("pointermove", (event) => {
        if (this.held === index) this.#follow(handle, event.clientY);
      });
      on("pointerup", () => this.#letGo(index, true));
      on("pointercancel", () => this.#letGo(index, false));
      return () => ending.abort();
    };
  }

  #follow(handle: HTMLElement, y: number): void {
    const rows = [...(handle.closest("ol")?.children ?? [])];
    const under = rows.findIndex((row) => {
      const { top, bottom } = row.getBoundingClientRect();
      return y >= top && y < bottom;
    });
    const [first] = rows;
    if (under >= 0) this.to = under;
    else if (first) this.to = y < first.getBoundingClientRect().top ? 0 : rows.length - 1;
  }

  #letGo(index: number, moved: boolean): void {
    if (this.held !== index) return;
    this.held = null;
    if (moved && this.to !== index) this.#onMove(index, this.to);
  }
}
