import type { ErrorLog, Host, Problem, ScreenError } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import type { Notices } from "./notices.svelte.ts";

/** An error in a loop may come thousands of times; so many different ones are written down. */
export const MOST_NOTED = 100;
const MOST_SAYS = 4_000;
const MOST_AT = 8_000;

const errorOf = (thrown: unknown): ScreenError =>
  thrown instanceof Error
    ? {
        says: `${thrown.name}: ${thrown.message}`.slice(0, MOST_SAYS),
        at: (thrown.stack ?? "").slice(0, MOST_AT),
      }
    : { says: String(thrown).slice(0, MOST_SAYS), at: "" };

/** What went wrong on the screen: told to the player, written to the log, and the log to look at. */
export class Trouble {
  /** The log is looked at. */
  open: boolean = $state(false);
  /** null until it has arrived. */
  log: ErrorLog | null = $state.raw(null);
  problem: Problem | null = $state.raw(null);
  readonly #host: Host;
  readonly #notices: Notices;
  readonly #noted = new Set<string>();

  constructor(host: Host, notices: Notices) {
    this.#host = host;
    this.#notices = notices;
  }

  /** Shows that something went wrong, with a way on, and writes it down. */
  async tell(thrown: unknown): Promise<void> {
    const { songKept, showLog } = words.trouble;
    const error = errorOf(thrown);
    this.#notices.complain(
      { code: "bug", says: words.trouble.wrong(error.says), try: songKept },
      { label: showLog, run: () => void this.look() },
    );
    await this.note(thrown);
  }

  /** Writes down what is shown elsewhere. */
  async note(thrown: unknown): Promise<void> {
    const error = errorOf(thrown);
    const known = `${error.says}\n${error.at}`;
    if (this.#noted.has(known) || this.#noted.size >= MOST_NOTED) return;
    this.#noted.add(known);
    const answer = await this.#host.noteError(error);
    // Without the machine there is no log either; the player has been told what happened.
    if (!answer.ok && answer.problem.code !== "unreachable") this.#notices.complain(answer.problem);
  }

  /** Opens the log. */
  async look(): Promise<void> {
    this.open = true;
    this.log = null;
    const answer = await this.#host.readErrors(null);
    this.problem = answer.ok ? null : answer.problem;
    this.log = answer.ok ? answer.value : null;
  }
}
