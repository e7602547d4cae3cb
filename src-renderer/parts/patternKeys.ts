import type { PickFinger } from "../../src-shared/roll/pattern.ts";

/** What the player does to the cell of the pattern's grid that has the focus. */
export type GridAction =
  | { readonly kind: "move"; readonly eighths: number; readonly rows: number }
  | { readonly kind: "finger"; readonly finger: PickFinger | null }
  | { readonly kind: "next" | "accent" | "damped" | "rest" };

/** Farther than any grid is. */
const ALL = 64;

const actions: ReadonlyMap<string, GridAction> = new Map<string, GridAction>([
  ["ArrowLeft", { kind: "move", eighths: -1, rows: 0 }],
  ["ArrowRight", { kind: "move", eighths: 1, rows: 0 }],
  ["ArrowUp", { kind: "move", eighths: 0, rows: -1 }],
  ["ArrowDown", { kind: "move", eighths: 0, rows: 1 }],
  ["Home", { kind: "move", eighths: -ALL, rows: 0 }],
  ["End", { kind: "move", eighths: ALL, rows: 0 }],
  ["PageUp", { kind: "move", eighths: 0, rows: -ALL }],
  ["PageDown", { kind: "move", eighths: 0, rows: ALL }],
  ["t", { kind: "finger", finger: "T" }],
  ["i", { kind: "finger", finger: "I" }],
  ["m", { kind: "finger", finger: "M" }],
  ["0", { kind: "finger", finger: null }],
  ["delete", { kind: "finger", finger: null }],
  ["backspace", { kind: "finger", finger: null }],
  ["enter", { kind: "next" }],
  [" ", { kind: "next" }],
  ["a", { kind: "accent" }],
  ["d", { kind: "damped" }],
  ["r", { kind: "rest" }],
]);

/** The parts of a key press that matter. */
export type GridPress = Pick<KeyboardEvent, "key" | "ctrlKey" | "altKey" | "metaKey">;

/** What a key does in the grid; null where it does nothing, as with Ctrl, Alt or the command key. */
export const gridAction = (press: GridPress): GridAction | null =>
  press.ctrlKey || press.altKey || press.metaKey
    ? null
    : (actions.get(press.key) ?? actions.get(press.key.toLowerCase()) ?? null);
