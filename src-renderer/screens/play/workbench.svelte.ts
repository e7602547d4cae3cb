import type { Problem } from "../../../src-shared/host.ts";
import { MOST_PATTERNS } from "../../../src-shared/host.ts";
import {
  freeName,
  nextFinger,
  rest,
  withMark,
  withPick,
  withStroke,
} from "../../../src-shared/roll/editPattern.ts";
import { ownStyle, withStyleRenamed } from "../../../src-shared/roll/editPicking.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { words } from "../../../src-shared/wordTable.ts";
import {
  cellFrom,
  cellWithin,
  type GridCell,
  type GridRow,
  rowsFor,
} from "../../geometry/patternCells.ts";
import type { GridAction } from "../../parts/patternKeys.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { PatternsState } from "../../state/patterns.svelte.ts";

/** What undo brings back: the player's patterns, and which of them is on the bench. */
type BenchVersion = { readonly patterns: readonly Pattern[]; readonly at: number };

const LONGEST_PAST = 300;
const firstCell: GridCell = { eighth: 0, row: 3 };
const FULL: Problem = {
  code: "bad-argument",
  says: words.bench.full(MOST_PATTERNS),
  try: words.bench.fullTry,
};

/** The player's own patterns at work: which one is on the bench, every change to it, and undo. */
export class Workbench {
  /** Index of the pattern on the bench. */
  at: number;
  cursor: GridCell = $state.raw(firstCell);
  readonly pattern: Pattern | null;
  readonly rows: readonly GridRow[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  #past: readonly BenchVersion[] = $state.raw([]);
  #future: readonly BenchVersion[] = $state.raw([]);
  readonly #patterns: PatternsState;
  readonly #song: OpenSong;

  /** `strings`: how many the chord held now has. */
  constructor(patterns: PatternsState, song: OpenSong, strings: () => 3 | 4) {
    this.#patterns = patterns;
    this.#song = song;
    this.at = $state(0);
    this.pattern = $derived(patterns.value[this.at] ?? null);
    this.rows = $derived(this.pattern ? rowsFor(this.pattern, strings()) : []);
    this.canUndo = $derived(this.#past.length > 0);
    this.canRedo = $derived(this.#future.length > 0);
  }

  get all(): readonly Pattern[] {
    return this.#patterns.value;
  }

  /** Puts a pattern on the bench. */
  take(at: number): void {
    this.at = at;
    this.cursor = firstCell;
  }

  /** The pattern on the bench is now this one. */
  edit(pattern: Pattern): void {
    if (pattern === this.pattern || this.pattern === null) return;
    this.#become({ patterns: this.all.with(this.at, pattern), at: this.at });
  }

  /** A copy of a pattern, behind the others and on the bench; the answer says why not. */
  add(pattern: Pattern): Problem | null {
    if (this.all.length >= MOST_PATTERNS) return FULL;
    const name = freeName(pattern.name, this.#names);
    this.#become({ patterns: [...this.all, { ...pattern, name }], at: this.all.length });
    this.cursor = firstCell;
    return null;
  }

  /** A second one of the pattern on the bench; the answer says why not. */
  copy(): Problem | null {
    return this.pattern && this.add(this.pattern);
  }

  /** Patterns from elsewhere, behind the others; the first of them on the bench. */
  takeIn(patterns: readonly Pattern[]): Problem | null {
    if (patterns.length > MOST_PATTERNS) return FULL;
    if (patterns.length > this.all.length) this.#become({ patterns, at: this.all.length });
    return null;
  }

  /** Names the pattern on the bench anew, and the song's use of it too; the answer says why not. */
  rename(to: string): string | null {
    const name = to.trim();
    if (!this.pattern || name === this.pattern.name) return null;
    if (name === "") return words.bench.needsName;
    if (name.length > 60) return words.bench.nameTooLong;
    if (this.#names.includes(name)) return words.bench.nameTaken;
    this.edit({ ...this.pattern, name });
    return null;
  }

  /** Takes the pattern off the bench and out of the list; undo brings it back. */
  remove(): Pattern | null {
    const gone = this.pattern;
    if (!gone) return null;
    const patterns = this.all.toSpliced(this.at, 1);
    this.#become({ patterns, at: Math.max(0, Math.min(this.at, patterns.length - 1)) });
    return gone;
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (!before) return;
    this.#past = this.#past.slice(0, -1);
    this.#future = [...this.#future, this.#now];
    this.#show(before);
  }

  redo(): void {
    const after = this.#future.at(-1);
    if (!after) return;
    this.#future = this.#future.slice(0, -1);
    this.#past = [...this.#past, this.#now];
    this.#show(after);
  }

  /** Does what the player asks for at the cursor. */
  act(action: GridAction): void {
    const { pattern, cursor } = this;
    if (!pattern) return;
    const { eighth, row } = cursor;
    switch (action.kind) {
      case "move":
        this.cursor = cellFrom(cursor, action, this.rows, pattern.strokes.length);
        break;
      case "rest":
        this.edit(withStroke(pattern, eighth, () => rest));
        break;
      case "accent":
      case "damped":
        this.edit(withMark(pattern, eighth, action.kind));
        break;
      case "next":
        if (row === "accent" || row === "damped") this.edit(withMark(pattern, eighth, row));
        else this.edit(withPick(pattern, eighth, row, nextFinger(pattern, eighth, row)));
        break;
      case "finger":
        if (row !== "accent" && row !== "damped")
          this.edit(withPick(pattern, eighth, row, action.finger));
        break;
    }
  }

  get #names(): readonly string[] {
    return this.all.map(({ name }) => name);
  }

  get #now(): BenchVersion {
    return { patterns: this.all, at: this.at };
  }

  #become(version: BenchVersion): void {
    this.#past = [...this.#past, this.#now].slice(-LONGEST_PAST);
    this.#future = [];
    this.#show(version);
  }

  #show({ patterns, at }: BenchVersion): void {
    const before = this.all;
    this.#patterns.replace(patterns);
    this.at = at;
    this.#followName(before, patterns, at);
    if (this.pattern) {
      this.cursor = cellWithin(this.cursor, this.rows, this.pattern.strokes.length);
    }
  }

  /** Where only a pattern's name has changed, the song goes on with the pattern. */
  #followName(before: readonly Pattern[], after: readonly Pattern[], at: number): void {
    const from = before[at]?.name;
    const to = after[at]?.name;
    if (before.length !== after.length || from === undefined || to === undefined || from === to)
      return;
    const { picking } = this.#song.settings;
    this.#song.change({ picking: withStyleRenamed(picking, ownStyle(from), ownStyle(to)) });
  }
}
