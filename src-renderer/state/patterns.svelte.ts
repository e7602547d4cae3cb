import type { Host, Problem } from "../../src-shared/host.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import { breachesOf } from "../../src-shared/roll/rollRules.ts";
import { Autosave, type Saving } from "./autosave.svelte.ts";
import { type Later, later } from "./later.ts";

/** The player's own right-hand patterns, whatever the song; a change is kept by the host. */
export class PatternsState {
  value: readonly Pattern[];
  /** Those that songs can use: the others are drafts, since they break a rule of the hand. */
  readonly playable: readonly Pattern[];
  readonly #autosave: Autosave<readonly Pattern[]>;

  constructor(host: Host, initial: readonly Pattern[], wait: Later = later) {
    this.value = $state.raw(initial);
    this.playable = $derived(this.value.filter((pattern) => breachesOf(pattern).length === 0));
    this.#autosave = new Autosave((value) => host.writePatterns(value), wait);
  }

  get saving(): Saving {
    return this.#autosave.state;
  }

  get problem(): Problem | null {
    return this.#autosave.problem;
  }

  replace(patterns: readonly Pattern[]): void {
    if (patterns === this.value) return;
    this.value = patterns;
    this.#autosave.offer(patterns);
  }

  save(): Promise<void> {
    return this.#autosave.flush();
  }
}
