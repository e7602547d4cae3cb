import type { Diagnostic } from "../diagnostic.ts";
import { words as wordTable } from "../wordTable.ts";
import type { Field } from "./fields.ts";
import type { SectionLayout } from "./layout.ts";
import { errorAt, hintAt, type Spot } from "./spot.ts";

/** A form as read: null where there is none, or where it names no section. */
export type FormReading = {
  readonly form: readonly string[] | null;
  readonly notes: readonly Diagnostic[];
};

type Meant = (label: string) => string | undefined;

/** Labels as written come first, then in whatever case. */
const meaning = (names: readonly string[]): Meant => {
  const exact = new Set(names);
  const anyCase = new Map(names.toReversed().map((name) => [name.toLowerCase(), name]));
  return (label) => (exact.has(label) ? label : anyCase.get(label.toLowerCase()));
};

const advise = (names: readonly string[], meant: Meant, label: string): string => {
  if (names.length === 0) return wordTable.notes.form.label(label);
  const letters = [...label].map(meant);
  if (letters.length > 1 && letters.every((name) => name !== undefined)) {
    return wordTable.notes.form.apart(letters.join(" "));
  }
  return wordTable.notes.form.sections(names.slice(0, 12).join(", "));
};

const bareLabel = (word: string): string => word.replace(/^\[|\]$/g, "");

/** Labels of several words are written with hyphens in a section's name. */
const MOST_WORDS = 4;

/** The longest label that the words from a place on make up. */
const labelAt = (
  words: readonly RegExpExecArray[],
  at: number,
  meant: Meant,
): { readonly name: string | undefined; readonly taken: number } => {
  for (let taken = Math.min(MOST_WORDS, words.length - at); taken > 0; taken -= 1) {
    const label = words.slice(at, at + taken).map(([word]) => bareLabel(word));
    const name = meant(label.join("-"));
    if (name !== undefined) return { name, taken };
  }
  return { name: undefined, taken: 1 };
};

/**
 * Reads a form: section labels in the order of playing, with white space or commas between them.
 * Labels that no section has are reported and left out.
 */
export const readForm = (field: Field | null, sections: readonly SectionLayout[]): FormReading => {
  if (field === null) return { form: null, notes: [] };
  const notes: Diagnostic[] = [];
  const labels = sections.flatMap((section) => (section.label === null ? [] : [section.label]));
  const names = labels.map((label) => label.name);
  const meant = meaning(names);
  const form: string[] = [];
  const words = [...field.value.text.matchAll(/[^\s,]+/g)];
  for (let at = 0; at < words.length; ) {
    const { name, taken } = labelAt(words, at, meant);
    const found = words[at];
    if (found !== undefined && name === undefined) {
      const spot: Spot = {
        ...field.value,
        offset: field.value.offset + found.index,
        column: field.value.column + found.index,
        length: found[0].length,
      };
      const label = bareLabel(found[0]).slice(0, 24);
      const says = wordTable.notes.form.unknown(label);
      notes.push(errorAt(spot, "bad-form", says, advise(names, meant, label)));
    } else if (name !== undefined) {
      form.push(name);
    }
    at += taken;
  }
  if (field.value.length === 0) {
    notes.push(
      errorAt(field.word, "bad-form", wordTable.notes.form.empty, wordTable.notes.form.emptyTry),
    );
  }
  if (form.length === 0) return { form: null, notes };
  const used = new Set(form);
  const seen = new Set<string>();
  for (const label of labels) {
    if (seen.has(label.name) && used.has(label.name)) {
      notes.push(
        errorAt(
          label.spot,
          "bad-form",
          wordTable.notes.form.twice(label.name),
          wordTable.notes.form.twiceTry,
        ),
      );
    } else if (!used.has(label.name)) {
      notes.push(
        hintAt(
          label.spot,
          "section-unplayed",
          wordTable.notes.form.leavesOut(label.name),
          wordTable.notes.form.leavesOutTry,
        ),
      );
    }
    seen.add(label.name);
  }
  return { form, notes };
};
