import type { Answer, Host, Problem } from "../../src-shared/host.ts";
import {
  LONGEST_TITLE,
  type LogEntry,
  type LoggedSong,
  type LogLine,
} from "../../src-shared/practice/logLine.ts";
import type { Round } from "../../src-shared/practice/practice.ts";
import { type PassedOver, withLines } from "../../src-shared/practice/readLog.ts";
import { words } from "../../src-shared/wordTable.ts";

/** How far the log's own file has been read: `not-yet` until someone looks at it. */
export type LogReading = "not-yet" | "reading" | "read" | "failed";

const ourMistake = (thrown: unknown): Problem => ({
  code: "bug",
  says: thrown instanceof Error ? thrown.message : String(thrown),
  try: words.save.roundsTry,
});

const newId = (): string => crypto.randomUUID();

/**
 * What was practised. Rounds go to the disk one after the other as they are played; what could not be
 * written is kept, and goes out before the next one. The file is read when it is first asked for.
 */
export class PracticeLog {
  reading: LogReading = $state("not-yet");
  /** Why it could not be read; null where it could. */
  readProblem: Problem | null = $state.raw(null);
  /** Lines of the file that could not be read. */
  passedOver: readonly PassedOver[] = $state.raw([]);
  saving: "saved" | "saving" | "failed" = $state("saved");
  problem: Problem | null = $state.raw(null);
  readonly #host: Host;
  readonly #newId: () => string;
  #read: readonly LogEntry[] = $state.raw([]);
  /** Every line of this sitting, whether it is on the disk or waits. */
  #lines: readonly LogLine[] = $state.raw([]);
  /** All rounds but those taken out, in the order they were written. */
  readonly entries: readonly LogEntry[] = $derived(withLines(this.#read, this.#lines));
  #waiting: readonly LogLine[] = [];
  #writing: Promise<void> | null = null;

  constructor(host: Host, makeId: () => string = newId) {
    this.#host = host;
    this.#newId = makeId;
  }

  /** How many lines are not on the disk yet. */
  get unsaved(): number {
    return this.saving === "saved" ? 0 : this.#waiting.length;
  }

  /** Reads the file, unless that is done. */
  async open(): Promise<void> {
    if (this.reading === "reading" || this.reading === "read") return;
    this.reading = "reading";
    const answer = await attempt(() => this.#host.readLog(null));
    if (answer.ok) {
      this.#read = answer.value.entries;
      this.passedOver = answer.value.passedOver;
    }
    this.readProblem = answer.ok ? null : answer.problem;
    this.reading = answer.ok ? "read" : "failed";
  }

  /** Writes down a round; `song` is null for an exercise. */
  keep(song: LoggedSong | null, round: Round): void {
    const title = song?.title.slice(0, LONGEST_TITLE) ?? "";
    const kept = song && { id: song.id, title };
    this.#add({ version: 1, kind: "round", id: this.#newId(), song: kept, round });
  }

  /** Takes a round out; `restore` brings it back. */
  delete(id: string): void {
    this.#add({ version: 1, kind: "deleted", id });
  }

  restore(id: string): void {
    this.#add({ version: 1, kind: "restored", id });
  }

  /** Writes what waits; done when all is written, or one could not be. */
  save(): Promise<void> {
    this.#writing ??= this.#drain().finally(() => {
      this.#writing = null;
    });
    return this.#writing;
  }

  #add(line: LogLine): void {
    this.#lines = [...this.#lines, line];
    this.#waiting = [...this.#waiting, line];
    void this.save();
  }

  /** A line that is refused for what it is would be refused for ever: it lets the others pass. */
  async #drain(): Promise<void> {
    const refused: LogLine[] = [];
    for (let next = this.#waiting[0]; next !== undefined; next = this.#waiting[0]) {
      const line = next;
      this.saving = "saving";
      const answer = await attempt(() => this.#host.appendLog(line));
      if (!answer.ok) {
        this.problem = answer.problem;
        if (answer.problem.code !== "bad-argument") {
          this.#waiting = [...refused, ...this.#waiting];
          this.saving = "failed";
          return;
        }
        refused.push(line);
      }
      this.#waiting = this.#waiting.slice(1);
    }
    this.#waiting = refused;
    if (refused.length > 0) {
      this.saving = "failed";
      return;
    }
    this.problem = null;
    this.saving = "saved";
  }
}

const attempt = async <T>(call: () => Promise<Answer<T>>): Promise<Answer<T>> => {
  try {
    return await call();
  } catch (thrown) {
    return { ok: false, problem: ourMistake(thrown) };
  }
};
