import type { SongSettings } from "../../src-shared/settings.ts";
import { difference } from "../geometry/difference.ts";

/** What undo brings back: a song's text and settings as they were. */
export type SongVersion = { readonly text: string; readonly settings: SongSettings };

/** What kind of change made a version; changes of one kind in a row become one step. */
export type ChangeKind = "typing" | "erasing" | "other" | `settings ${string}`;

/** The versions before and after the one that is current, the nearest last. */
export type SongHistory = {
  readonly past: readonly SongVersion[];
  readonly future: readonly SongVersion[];
  /** The change that made the current version, while more of its kind may join it. */
  readonly open: { readonly kind: ChangeKind; readonly atMs: number } | null;
};

/** A song just opened: nothing to undo. */
export const emptyHistory: SongHistory = { past: [], future: [], open: null };

/** A pause in typing as long as this begins a new step, in milliseconds. */
export const STEP_PAUSE_MS = 1000;
const LONGEST_PAST = 500;

/** Typing is one character going in, erasing one going out; a new line begins a step of its own. */
export const kindOfEdit = (before: string, after: string): ChangeKind => {
  const { removed, inserted } = difference(before, after);
  if (removed === "" && inserted.length === 1 && inserted !== "\n") return "typing";
  if (inserted === "" && removed.length === 1 && removed !== "\n") return "erasing";
  return "other";
};

/** Keeps `before` as a step to go back to, unless the change only carries on the last one. */
export const record = (
  history: SongHistory,
  before: SongVersion,
  kind: ChangeKind,
  nowMs: number,
): SongHistory => {
  const { open } = history;
  const carriesOn =
    open !== null && kind !== "other" && open.kind === kind && nowMs - open.atMs < STEP_PAUSE_MS;
  return {
    past: carriesOn ? history.past : [...history.past, before].slice(-LONGEST_PAST),
    future: [],
    open: { kind, atMs: nowMs },
  };
};

/** One step back from `current`; null where there is none. */
export const stepBack = (
  history: SongHistory,
  current: SongVersion,
): { readonly version: SongVersion; readonly history: SongHistory } | null => {
  const version = history.past.at(-1);
  if (!version) return null;
  const past = history.past.slice(0, -1);
  return { version, history: { past, future: [...history.future, current], open: null } };
};

/** One step forward again from `current`; null where there is none. */
export const stepForward = (
  history: SongHistory,
  current: SongVersion,
): { readonly version: SongVersion; readonly history: SongHistory } | null => {
  const version = history.future.at(-1);
  if (!version) return null;
  const future = history.future.slice(0, -1);
  return { version, history: { past: [...history.past, current], future, open: null } };
};
