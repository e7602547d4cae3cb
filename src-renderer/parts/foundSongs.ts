import type { Pattern } from "../../src-shared/roll/pattern.ts";
import type { SongSettings } from "../../src-shared/settings.ts";
import { words as wordTable } from "../../src-shared/wordTable.ts";

/** A file to look for songs in; pasted text is one too. */
export type SourceFile = { readonly name: string; readonly bytes: Uint8Array };

/** All that a shared song has besides its chart, with the patterns that it is played with. */
export type SharedExtras = {
  readonly settings: SongSettings;
  readonly tags: readonly string[];
  readonly patterns: readonly Pattern[];
};

/** A song found in a file, or what of it cannot be had; a title of null is the whole file. */
export type FoundRow =
  | {
      readonly kind: "song";
      readonly file: string;
      readonly title: string;
      /** Its chart. */
      readonly text: string;
      /** Key, metre and bars as played, in words. */
      readonly facts: readonly string[];
      readonly read: readonly string[];
      readonly left: readonly string[];
      /** What comes with a shared song; null with a song from elsewhere. */
      readonly shared: SharedExtras | null;
    }
  | {
      readonly kind: "refused";
      readonly file: string;
      readonly title: string | null;
      readonly says: string;
      readonly advice: string;
    };

/** How far the reading or keeping is; `of` is at least 1. */
export type Progress = { readonly done: number; readonly of: number; readonly says: string };

/** A found row with its place among all that were found. */
export type ShownRow = { readonly index: number; readonly row: FoundRow };

const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replaceAll(/\p{Diacritic}/gu, "")
    .toLowerCase();

/** The rows that have every word looked for in title, file, key or metre. */
export const shownRows = (rows: readonly FoundRow[], filter: string): readonly ShownRow[] => {
  const words = plain(filter).split(/\s+/).filter(Boolean);
  return rows
    .map((row, index) => ({ row, index }))
    .filter(({ row }) => {
      const facts = row.kind === "song" ? row.facts.slice(0, 2).join(" ") : row.says;
      const line = plain(`${row.title ?? ""} ${row.file} ${facts}`);
      return words.every((word) => line.includes(word));
    });
};

/**
 * What there is to know about a title before a song is kept under it; null where it is the only
 * one. `known` are the titles in the songbook.
 */
export const sameTitle = (
  row: FoundRow,
  rows: readonly FoundRow[],
  known: ReadonlySet<string>,
): string | null => {
  if (row.kind === "refused") return null;
  if (known.has(row.title)) return wordTable.found.inBook;
  const twice = rows.some(
    (other) => other !== row && other.kind === "song" && other.title === row.title,
  );
  return twice ? wordTable.found.twice : null;
};
