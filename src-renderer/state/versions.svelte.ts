import type { Host, KeptVersion, Problem, SongVersionFile } from "../../src-shared/host.ts";

/** The earlier versions of one song as they are looked through. */
export class Versions {
  /** null until they have arrived. */
  all: readonly KeptVersion[] | null = $state.raw(null);
  /** The one that is looked at; null while none is, or it is on its way. */
  shown: (SongVersionFile & KeptVersion) | null = $state.raw(null);
  /** The one that was asked for last. */
  chosen: string | null = $state.raw(null);
  problem: Problem | null = $state.raw(null);
  readonly #host: Host;
  readonly #id: string;

  constructor(host: Host, id: string) {
    this.#host = host;
    this.#id = id;
  }

  /** Asks for the list; what was looked at is let go. */
  async load(): Promise<void> {
    this.chosen = null;
    this.shown = null;
    this.all = null;
    const answer = await this.#host.listVersions({ id: this.#id });
    this.problem = answer.ok ? null : answer.problem;
    this.all = answer.ok ? answer.value : [];
  }

  /** Looks at one of them. */
  async choose(version: string): Promise<void> {
    this.chosen = version;
    const answer = await this.#host.readVersion({ id: this.#id, version });
    if (this.chosen !== version) return;
    this.problem = answer.ok ? null : answer.problem;
    this.shown = answer.ok ? { ...answer.value, version } : null;
  }
}
