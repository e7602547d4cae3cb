import { patternFileOf, takenIn } from "../../../src-shared/exchange/patternFile.ts";
import type { Problem } from "../../../src-shared/host.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { download } from "../download.ts";
import { readFile, sayTakenIn } from "./benchWords.ts";
import type { Workbench } from "./workbench.svelte.ts";

/** The name of an exported file. */
const FILE_NAME = "my-patterns.json";

/** Patterns from files and into them, and what there is to say about it. */
export class BenchFiles {
  /** What was done, in words; null where nothing is to be said. */
  says: string | null = $state(null);
  /** What went wrong, in words. */
  problem: string | null = $state(null);
  readonly #bench: Workbench;

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** Shows a problem, or takes the last words away where there is none. */
  complain(problem: Pick<Problem, "says" | "try"> | null): void {
    this.says = null;
    this.problem = problem && `${problem.says} ${problem.try}`;
  }

  /** Hands the player a file with all their patterns. */
  export(): void {
    download(patternFileOf(this.#bench.all), "application/json", FILE_NAME);
  }

  async import(file: File): Promise<void> {
    try {
      const read = await readFile(file);
      if (!read.ok) return this.complain(read.problem);
      const { all } = this.#bench;
      const taken = takenIn(all, read.patterns);
      this.complain(this.#bench.takeIn(taken.patterns));
      if (this.problem === null) this.says = sayTakenIn(taken, all.length);
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      this.complain({
        says: words.bench.unreadable(file.name, reason),
        try: words.bench.unreadableTry,
      });
    }
  }

  /** A file let fall on the bench; anything else is left to the browser. */
  drop(event: DragEvent): void {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void this.import(file);
  }
}
