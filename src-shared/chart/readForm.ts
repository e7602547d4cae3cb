import type { Diagnostic } from "../diagnostic.ts";
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
  if (names.length === 0) return `Label a section with [${label}].`;
  const letters = [...label].map(meant);
  if (letters.length > 1 && letters.every((name) => name !== undefined)) {
    return `Write the labels apart: ${letters.join(" ")}.`;
  }
  return `The sections are ${names.slice(0, 12).join(", ")}.`;
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
  for (const found of field.value.text.matchAll(/[^\s,]+/g)) {
    const spot: Spot = {
      ...field.value,
      offset: field.value.offset + found.index,
      column: field.value.column + found.index,
      length: found[0].length,
    };
    const label = found[0].replace(/^\[|\]$/g, "");
    const name = meant(label);
    if (name !== undefined) {
      form.push(name);
    } else {
      const says = `There is no section [${label.slice(0, 24)}].`;
      notes.push(errorAt(spot, "bad-form", says, advise(names, meant, label.slice(0, 24))));
    }
  }
  if (field.value.length === 0) {
    notes.push(
      errorAt(field.word, "bad-form", "The form is empty.", "Write labels, as in Form: A A B."),
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
          `There are two sections [${label.name}]; the form plays the first.`,
          "Give this one a label of its own.",
        ),
      );
    } else if (!used.has(label.name)) {
      notes.push(
        hintAt(
          label.spot,
          "section-unplayed",
          `The form leaves [${label.name}] out.`,
          "Add it to Form to hear it.",
        ),
      );
    }
    seen.add(label.name);
  }
  return { form, notes };
};
