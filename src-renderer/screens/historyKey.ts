/** The parts of a key press that matter. */
export type HistoryPress = Pick<
  KeyboardEvent,
  "key" | "ctrlKey" | "metaKey" | "shiftKey" | "altKey" | "defaultPrevented" | "target"
>;

const TYPED_INTO = "input:not([type=checkbox], [type=radio]), textarea, [contenteditable]";

/**
 * Whether a key press asks for undo or redo: Ctrl or the command key with Z, with Shift-Z or with Y.
 * null where something that is typed into has the focus, which undoes its own typing.
 */
export const historyKey = (press: HistoryPress): "undo" | "redo" | null => {
  if (press.defaultPrevented || press.altKey || !(press.ctrlKey || press.metaKey)) return null;
  if (press.target instanceof Element && press.target.closest(TYPED_INTO)) return null;
  const key = press.key.toLowerCase();
  if (key === "y" && !press.shiftKey) return "redo";
  if (key !== "z") return null;
  return press.shiftKey ? "redo" : "undo";
};
