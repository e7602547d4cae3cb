/** Which songs are chosen in the list, as lists are chosen from everywhere. */
export class Choice {
  ids: ReadonlySet<string> = $state.raw(new Set());
  /** Where a range begins. */
  #from: string | null = null;

  has(id: string): boolean {
    return this.ids.has(id);
  }

  /** Chooses one, or lets it go. */
  toggle(id: string): void {
    this.#from = id;
    const others = [...this.ids].filter((other) => other !== id);
    this.ids = new Set(this.ids.has(id) ? others : [...others, id]);
  }

  /** Chooses all from the last one that was chosen or let go to this one, in this order. */
  through(id: string, order: readonly string[]): void {
    const from = this.#from === null ? -1 : order.indexOf(this.#from);
    const to = order.indexOf(id);
    if (from < 0) this.#from = id;
    const [first, last] = from < 0 ? [to, to] : [Math.min(from, to), Math.max(from, to)];
    this.ids = new Set([...this.ids, ...order.slice(first, last + 1)]);
  }

  /** A range that begins here is drawn from now on. */
  beginAt(id: string): void {
    if (this.ids.size === 0) this.#from = id;
  }

  all(order: readonly string[]): void {
    this.ids = new Set(order);
  }

  none(): void {
    this.ids = new Set();
    this.#from = null;
  }

  /** Lets go what is no longer there. */
  keep(there: ReadonlySet<string>): void {
    const left = [...this.ids].filter((id) => there.has(id));
    if (left.length < this.ids.size) this.ids = new Set(left);
  }
}
