import type { Host, Problem } from "../../src-shared/host.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { Autosave, type Saving } from "./autosave.svelte.ts";
import { type Later, later } from "./later.ts";

/** What the player likes, whatever the song; a change is kept by the host. */
export class PreferencesState {
  value: Preferences;
  readonly #autosave: Autosave<Preferences>;

  constructor(host: Host, initial: Preferences, wait: Later = later) {
    this.value = $state.raw(initial);
    this.#autosave = new Autosave((value) => host.writePreferences(value), wait);
  }

  get saving(): Saving {
    return this.#autosave.state;
  }

  get problem(): Problem | null {
    return this.#autosave.problem;
  }

  change(part: Partial<Omit<Preferences, "version">>): void {
    this.value = { ...this.value, ...part };
    this.#autosave.offer(this.value);
  }

  save(): Promise<void> {
    return this.#autosave.flush();
  }
}
