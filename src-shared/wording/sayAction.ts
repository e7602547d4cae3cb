import type { ActionGroup, ActionName } from "../control/actionTable.ts";
import type { KeyRefusal } from "../control/keyPress.ts";
import type { Trigger } from "../control/trigger.ts";
import { words } from "../wordTable.ts";

/**
 * What an action does, in words.
 * @example sayAction("barOn") // => "One bar on"
 */
export const sayAction = (action: ActionName): string => words.keys.actions[action];

/**
 * What a group of actions is about.
 * @example sayGroup("loop") // => "Loop"
 */
export const sayGroup = (group: ActionGroup): string => words.keys.groups[group];

const keys: ReadonlyMap<string, string> = new Map([
  [" ", words.keys.named.space],
  ["ArrowLeft", "←"],
  ["ArrowRight", "→"],
  ["ArrowUp", "↑"],
  ["ArrowDown", "↓"],
  ["PageUp", words.keys.named.pageUp],
  ["PageDown", words.keys.named.pageDown],
  [",", words.keys.named.comma],
  [".", words.keys.named.fullStop],
  ["-", "−"],
  ["−", words.keys.named.minus],
]);

/**
 * A key as it is labelled, or a switch of a MIDI controller by what it sends.
 * @example sayTrigger({ kind: "key", key: "l" }) // => "L"
 * @example sayTrigger({ kind: "control", channel: 1, number: 64 }) // => "MIDI control 64, channel 1"
 */
export const sayTrigger = (trigger: Trigger): string =>
  trigger.kind === "key"
    ? (keys.get(trigger.key) ??
      (trigger.key.length === 1 ? trigger.key.toUpperCase() : trigger.key))
    : words.keys.midiTrigger(words.keys.midiKinds[trigger.kind], trigger.number, trigger.channel);

/**
 * Why a key cannot be given to an action, and what to do.
 * @example sayKeyRefusal("Tab", "leaves") // => "Tab leads out of here and stays as it is. Press another key."
 */
export const sayKeyRefusal = (key: string, refusal: KeyRefusal): string => {
  switch (refusal) {
    case "leaves":
      return words.keys.leads(key);
    case "modifier":
      return words.keys.modifier(key);
    case "system":
      return words.keys.system(key);
  }
};
