import type { SongSummary } from "../../src-shared/host.ts";

/** A song as a row of the list shows it. */
export type ListedSong = SongSummary & { readonly tags: readonly string[] };

/** What a key asks of the list. */
export type ListKey =
  | { readonly kind: "go"; readonly by: -1 | 1; readonly choosing: boolean }
  | { readonly kind: "all" | "none" | "delete" };

/** The parts of a key press that matter to the list. */
export type ListPress = Pick<
  KeyboardEvent,
  "key" | "shiftKey" | "ctrlKey" | "metaKey" | "altKey" | "defaultPrevented"
>;

/** What a key press in the list asks for; null where the key is not the list's. */
export const listKey = (press: ListPress): ListKey | null => {
  if (press.altKey || press.defaultPrevented) return null;
  const command = press.ctrlKey || press.metaKey;
  if (command) return press.key.toLowerCase() === "a" && !press.shiftKey ? { kind: "all" } : null;
  switch (press.key) {
    case "ArrowDown":
      return { kind: "go", by: 1, choosing: press.shiftKey };
    case "ArrowUp":
      return { kind: "go", by: -1, choosing: press.shiftKey };
    case "Escape":
      return { kind: "none" };
    case "Delete":
      return { kind: "delete" };
    default:
      return null;
  }
};

/** So many rows are drawn at first, and more each time their end comes near. */
export const ROWS_AT_ONCE = 60;
