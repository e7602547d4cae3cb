import { words } from "../wordTable.ts";

/** One tune of an ABC file, as text. */
export type AbcText = {
  readonly title: string;
  /** From X: to the empty line behind it, without lyrics, macros and formatting. */
  readonly text: string;
  /** Parts in playing order from P: in the header, or Y: of older files; null where none is told. */
  readonly order: string | null;
  readonly lyrics: boolean;
};

const MAX_PARTS = 200;

/**
 * A part order played out: a figure repeats what stands before it, brackets group.
 * @example partOrder("A2(BC)2") // => ["A", "A", "B", "C", "B", "C"]
 */
export const partOrder = (text: string): readonly string[] => {
  const groups: string[][] = [[]];
  let last: readonly string[] = [];
  for (const mark of text.replace(/[\s.]/g, "")) {
    const group = groups.at(-1) ?? [];
    if (mark === "(") {
      groups.push([]);
    } else if (mark === ")" && groups.length > 1) {
      last = groups.pop() ?? [];
      groups.at(-1)?.push(...last);
    } else if (/[1-9]/.test(mark)) {
      for (let time = 1; time < Number(mark) && group.length < MAX_PARTS; time += 1) {
        group.push(...last);
      }
    } else if (/[A-Z]/i.test(mark)) {
      last = [mark];
      group.push(mark);
    }
  }
  return groups.flat().slice(0, MAX_PARTS);
};

const fieldOf = (lines: readonly string[], letter: string): string | null =>
  lines
    .find((line) => line.startsWith(`${letter}:`))
    ?.slice(2)
    .trim() ?? null;

const isOrder = (text: string | null): text is string =>
  text !== null && /^[A-Z0-9().\s]+$/.test(text) && /[A-Z]/.test(text);

/** A chord at a line's end belongs to the note that starts the next line; the parser loses it there. */
const chordsJoined = (text: string): string =>
  text.replace(/("[^"\n]*"[ \t]*)\n(?![A-Za-z]:|[%\n])/g, "$1");

/** Two decorations of ABC 2.1 that the parser does not know, as it knows them. */
const decorationsKnown = (text: string): string =>
  text.replace(/([!+])dacapo\1/gi, "!D.C.!").replace(/([!+])dacoda\1/gi, '"^To Coda"');

/** The tunes of an ABC file, each from its X: to the next one or an empty line. */
export const abcTunes = (file: string): readonly AbcText[] =>
  file
    .replace(/\r\n?/g, "\n")
    .split(/^(?=X:)/m)
    .filter((part) => /^X:/.test(part) || (/^K:/m.test(part) && !/^X:/m.test(file)))
    .map((part) => {
      const all = (part.split(/\n[ \t]*\n/)[0] ?? "").split("\n");
      const header = all.slice(0, all.findIndex((line) => line.startsWith("K:")) + 1);
      const kept = all.filter((line) => !/^(?:%%|[wWmUsHNYI]:)/.test(line));
      const title = fieldOf(header, "T");
      const order = [fieldOf(header, "P"), fieldOf(header, "Y")].find(isOrder) ?? null;
      return {
        title: title || words.notes.untitled,
        text: `${/^X:/.test(part) ? "" : "X:1\n"}${chordsJoined(decorationsKnown(kept.join("\n")))}`,
        order,
        lyrics: all.some((line) => /^[wW]:/.test(line)),
      };
    });
