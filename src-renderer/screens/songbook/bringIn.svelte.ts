import { withOwnNames } from "../../../src-shared/book/sharedSongs.ts";
import { MAX_IMPORT_BYTES } from "../../../src-shared/exchange/importing.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { FoundRow, Progress, SharedExtras, SourceFile } from "../../parts/foundSongs.ts";
import type { Chart, KeptSongs, Songbook } from "../../state/songbook.svelte.ts";
import type { ReadFiles } from "./readingMessage.ts";

/** Where the bringing in stands. Nothing is kept before "keeping". */
export type Stage =
  | { readonly kind: "choosing" }
  | { readonly kind: "reading"; readonly progress: Progress }
  | { readonly kind: "found"; readonly rows: readonly FoundRow[] }
  | {
      readonly kind: "keeping";
      readonly rows: readonly FoundRow[];
      readonly progress: Progress;
    };

/** A song that is to be kept, with what it was shared with. */
type Wanted = {
  readonly title: string;
  readonly text: string;
  readonly shared: SharedExtras | null;
};

/** Takes patterns in beside the player's own; gives the new name of each that had to have one. */
export type TakePatterns = (patterns: readonly Pattern[]) => ReadonlyMap<string, string>;

/** Songs from files or pasted text on their way into the songbook. */
export class BringIn {
  stage: Stage = $state.raw({ kind: "choosing" });
  /** What went wrong, in words. */
  problem: string | null = $state(null);
  /** Pasted text; stays until songs are kept. */
  text: string = $state("");
  filter: string = $state("");
  /** Which rows are to be kept. */
  chosen: ReadonlySet<number> = $state.raw(new Set());
  readonly #songbook: Songbook;
  readonly #read: ReadFiles;
  readonly #takePatterns: TakePatterns;
  #stop: AbortController | null = null;

  constructor(songbook: Songbook, read: ReadFiles, takePatterns: TakePatterns) {
    this.#takePatterns = takePatterns;
    this.#songbook = songbook;
    this.#read = read;
  }

  /** Titles that the songbook has. */
  get known(): ReadonlySet<string> {
    return new Set(this.#songbook.songs?.map(({ title }) => title));
  }

  async readFiles(files: readonly File[]): Promise<void> {
    if (files.length === 0 || this.stage.kind === "keeping") return;
    const says = files.length === 1 ? (files[0]?.name ?? "") : words.found.fileCount(files.length);
    await this.#reading(says, () =>
      Promise.all(
        files.map(async (file) => ({
          name: file.name,
          // One byte more than may be: what is too large need not be read whole to be refused.
          bytes: new Uint8Array(await file.slice(0, MAX_IMPORT_BYTES + 1).arrayBuffer()),
        })),
      ),
    );
  }

  async readText(): Promise<void> {
    if (this.text.trim() === "") {
      this.problem = words.found.noText;
      return;
    }
    const bytes = new TextEncoder().encode(this.text);
    await this.#reading(words.found.theText, async () => [{ name: words.found.pasted, bytes }]);
  }

  async #reading(says: string, filesOf: () => Promise<readonly SourceFile[]>): Promise<void> {
    this.cancel();
    const stop = new AbortController();
    this.#stop = stop;
    this.stage = { kind: "reading", progress: { done: 0, of: 1, says } };
    try {
      const files = await filesOf();
      stop.signal.throwIfAborted();
      const progress = (now: Progress): void => {
        if (!stop.signal.aborted) this.stage = { kind: "reading", progress: now };
      };
      const rows = await this.#read(files, progress, stop.signal);
      stop.signal.throwIfAborted();
      const { known } = this;
      this.filter = "";
      this.chosen = new Set(
        rows.flatMap((row, index) => (row.kind === "song" && !known.has(row.title) ? [index] : [])),
      );
      this.stage = { kind: "found", rows };
    } catch (thrown) {
      if (stop.signal.aborted) return;
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      this.stage = { kind: "choosing" };
      this.problem = words.found.unreadable(reason || words.found.readerEnded);
    }
  }

  choose(indexes: Iterable<number>, wanted: boolean): void {
    const these = new Set(indexes);
    const others = [...this.chosen].filter((index) => !these.has(index));
    this.chosen = new Set(wanted ? [...others, ...these] : others);
  }

  /** Keeps what is chosen; what could not be kept stays in the list, with the reason. */
  async keep(): Promise<KeptSongs> {
    const nothing: KeptSongs = { kept: [], problem: null };
    const { stage } = this;
    if (stage.kind !== "found") return nothing;
    const { rows } = stage;
    const wanted = [...this.chosen].toSorted((one, other) => one - other);
    const charts = wanted.flatMap((index): readonly Wanted[] => {
      const row = rows[index];
      if (row?.kind !== "song") return [];
      const { title, text, shared } = row;
      return [{ title: title.slice(0, 200), text, shared }];
    });
    const stop = new AbortController();
    this.#stop = stop;
    const at = (done: number): void => {
      const says = charts[done]?.title ?? "";
      this.stage = { kind: "keeping", rows, progress: { done, of: charts.length, says } };
    };
    this.problem = null;
    at(0);
    const result = await this.#keepAll(charts, at, stop.signal);
    if (result.problem || stop.signal.aborted) {
      this.chosen = new Set(wanted.slice(result.kept.length));
      this.stage = { kind: "found", rows };
      this.problem = result.problem && `${result.problem.says} ${result.problem.try}`;
    } else {
      this.text = "";
      this.back();
    }
    return result;
  }

  /** Patterns first, as the songs name them; tags last, as they need the songs' ids. */
  async #keepAll(
    wanted: readonly Wanted[],
    at: (done: number) => void,
    signal: AbortSignal,
  ): Promise<KeptSongs> {
    /** What a pattern is called here, by all that it is. */
    const taken = new Map<string, string>();
    const nameOf = (pattern: Pattern): string => {
      const spelled = JSON.stringify(pattern);
      const name =
        taken.get(spelled) ?? this.#takePatterns([pattern]).get(pattern.name) ?? pattern.name;
      taken.set(spelled, name);
      return name;
    };
    const charts = wanted.map(({ title, text, shared }): Chart => {
      if (!shared) return { title, text, settings: null };
      const { settings } = shared;
      const names = new Map(shared.patterns.map((each) => [each.name, nameOf(each)] as const));
      const picking = withOwnNames(settings.picking, names);
      return { title, text, settings: { ...settings, picking } };
    });
    const result = await this.#songbook.createAll(charts, at, signal);
    const tags = new Map(
      result.kept.map(({ id }, index) => [id, wanted[index]?.shared?.tags ?? []] as const),
    );
    const untagged = await this.#songbook.tag(tags);
    return { ...result, problem: result.problem ?? untagged };
  }

  /** Ends what is going on. Reading leaves nothing behind; what was kept is kept. */
  cancel(): void {
    this.#stop?.abort();
    this.#stop = null;
    this.problem = null;
    if (this.stage.kind === "reading") this.stage = { kind: "choosing" };
  }

  /** Back to choosing files; the list is let go. */
  back(): void {
    this.cancel();
    this.chosen = new Set();
    this.stage = { kind: "choosing" };
  }
}
