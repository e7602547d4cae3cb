import type { ActionName } from "../../../src-shared/control/actionTable.ts";
import { actionFor, type Rebindings, rebind } from "../../../src-shared/control/bindings.ts";
import { keyRefusal } from "../../../src-shared/control/keyPress.ts";
import type { Trigger } from "../../../src-shared/control/trigger.ts";
import { sayAction, sayKeyRefusal, sayTrigger } from "../../../src-shared/wording/sayAction.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";

/** A trigger that another action has already. */
export type Conflict = {
  readonly trigger: Trigger;
  readonly has: ActionName;
  readonly wants: ActionName;
};

/** The player changes what a key, a pedal or a switch does; every step can be taken back. */
export class Learning {
  /** The action that waits for a press; null while none does. */
  action: ActionName | null = $state(null);
  /** What has just happened, in words. */
  says: string = $state("");
  conflict: Conflict | null = $state.raw(null);
  #past: readonly Rebindings[] = $state.raw([]);
  readonly #preferences: PreferencesState;

  constructor(preferences: PreferencesState) {
    this.#preferences = preferences;
  }

  get own(): Rebindings {
    return this.#preferences.value.bindings;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  /** The next press is for this action. */
  start(action: ActionName): void {
    this.action = action;
    this.conflict = null;
    this.says = words.keys.press(sayAction(action));
  }

  leave(): void {
    this.action = null;
    this.conflict = null;
    this.says = "";
  }

  /** A press while an action waits; at any other time it says what the press does. */
  hear(trigger: Trigger): void {
    const wants = this.action;
    const has = actionFor(this.own, trigger);
    if (wants === null) {
      this.says = words.keys.does(
        sayTrigger(trigger),
        has ? sayAction(has) : words.keys.nothingYet,
      );
      return;
    }
    const refusal = trigger.kind === "key" ? keyRefusal(trigger.key) : null;
    if (trigger.kind === "key" && refusal) {
      this.says = sayKeyRefusal(sayTrigger(trigger), refusal);
      return;
    }
    this.action = null;
    if (has === wants) this.says = words.keys.doesAlready(sayTrigger(trigger));
    else if (has === null) this.#give(trigger, wants);
    else {
      this.conflict = { trigger, has, wants };
      this.says = words.keys.taken(sayTrigger(trigger), sayAction(has));
    }
  }

  /** Takes the trigger from the action that has it. */
  settle(): void {
    if (this.conflict) this.#give(this.conflict.trigger, this.conflict.wants);
  }

  remove(trigger: Trigger): void {
    this.#change(rebind(this.own, trigger, null), words.keys.nothingNow(sayTrigger(trigger)));
  }

  backToUsual(): void {
    this.#change([], words.keys.allUsual);
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (!before) return;
    this.#past = this.#past.slice(0, -1);
    this.leave();
    this.#preferences.change({ bindings: before });
    this.says = words.keys.takenBack;
  }

  #give(trigger: Trigger, action: ActionName): void {
    this.#change(
      rebind(this.own, trigger, action),
      words.keys.nowDoes(sayTrigger(trigger), sayAction(action)),
    );
  }

  #change(bindings: Rebindings, says: string): void {
    this.#past = [...this.#past, this.own];
    this.leave();
    this.#preferences.change({ bindings });
    this.says = says;
  }
}
