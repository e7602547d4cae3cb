import type { Trigger } from "./trigger.ts";

/** The parts of a key press that matter. */
export type KeyPress = {
  /** What the key writes or is called. */
  readonly key: string;
  /** Where it lies: "Digit5" is the 5 of the top row, whatever the layout writes there. */
  readonly code: string;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
};

/**
 * What a key press may be bound by, the likeliest first: the character, and for the row of figures
 * and the number pad the figure, which Shift and some layouts hide. Empty with Ctrl, Alt or the
 * command key: those belong to browser and system.
 * @example keyTriggers({ key: "L", code: "KeyL", ctrlKey: false, altKey: false, metaKey: false }) // => [{ kind: "key", key: "l" }]
 * @example keyTriggers({ key: "%", code: "Digit5", ctrlKey: false, altKey: false, metaKey: false }).length // => 2
 */
export const keyTriggers = (press: KeyPress): readonly Trigger[] => {
  if (press.ctrlKey || press.altKey || press.metaKey) return [];
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  const figure = /^(?:Digit|Numpad)(\d)$/.exec(press.code)?.[1];
  // A number pad without its lock sends arrows and Home: then those are meant.
  const hidden = figure !== undefined && figure !== key && key.length === 1;
  return [
    { kind: "key", key },
    ...(hidden && figure !== undefined ? [{ kind: "key" as const, key: figure }] : []),
  ];
};

/** Why a key cannot be given to an action. */
export type KeyRefusal = "leaves" | "modifier" | "system";

const leaves = ["Escape", "Tab"];
const modifiers = ["Shift", "Control", "Alt", "AltGraph", "Meta", "CapsLock", "NumLock", "Fn"];
const unknown = ["Dead", "Process", "Unidentified"];

/**
 * Why a key cannot be given to an action; null where it can.
 * @example keyRefusal("Escape") // => "leaves"
 * @example keyRefusal("F5") // => "system"
 * @example keyRefusal("PageDown") // => null
 */
export const keyRefusal = (key: string): KeyRefusal | null => {
  if (leaves.includes(key)) return "leaves";
  if (modifiers.includes(key)) return "modifier";
  return unknown.includes(key) || /^F\d+$/.test(key) ? "system" : null;
};
