import { beatNotes } from "../chart/pulse.ts";
import type { TimedBar } from "../chart/song.ts";
import { meterName } from "../chart/writeChart.ts";
import { chordName } from "../harmony/chord.ts";
import { noteNameOf } from "../harmony/noteName.ts";
import { keyName } from "../harmony/readKey.ts";
import type { StringNumber } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import type { Placement } from "../route/route.ts";
import type { Note } from "../score/score.ts";
import { TICKS_PER_EIGHTH } from "../units.ts";
import { words } from "../wordTable.ts";
import type { Arranged } from "./arranged.ts";
import { SHORTEST_VALUE } from "./noteValues.ts";
import { slidesOf } from "./staffNotes.ts";

/** No line is longer than this. */
const WIDTH = 80;
/** One place of the grid takes so many characters: a slide's mark, and a fret of two figures. */
const CELL = 3;
/** Stands behind the finger of a note that is let go before its time. */
const LET_GO = "'";
const MARGIN = 3;

/** The short string lies at the bottom, as in printed banjo tablature. */
const strings: readonly StringNumber[] = [1, 2, 3, 4, 5];

/** What names a placement's shape to the player. */
export type SayShape = (placement: Placement) => string;

type Drawn = { readonly chords: string; readonly shapes: string; readonly rows: readonly string[] };

/** Words over a bar, each at its eighth; one that would run into the next is cut. */
const wordsOver = (
  words: readonly { readonly cell: number; readonly text: string }[],
  width: number,
): string => {
  let line = "";
  for (const [index, { cell, text }] of words.entries()) {
    const room = (words[index + 1]?.cell ?? width / CELL) * CELL - cell * CELL;
    line = line.padEnd(cell * CELL) + text.slice(0, Math.max(0, room - 1));
  }
  return line.slice(0, width).padEnd(width);
};

/** The longest of eighth, sixteenth and thirty-second note that all notes of a score fall on. */
const gridOf = (notes: readonly Note[]): number =>
  [TICKS_PER_EIGHTH, TICKS_PER_EIGHTH / 2].find((grid) =>
    notes.every((note) => note.tick % grid === 0),
  ) ?? SHORTEST_VALUE;

const drawBar = (
  bar: TimedBar,
  notes: readonly Note[],
  arranged: Arranged,
  slides: ReadonlyMap<Note, "/" | "\\">,
  sayShape: SayShape,
  grid: number,
): Drawn => {
  const count = bar.length / grid;
  const cellOf = (tick: number): number => Math.floor((tick - bar.start) / grid);
  const inBar = (tick: number): boolean => tick >= bar.start && tick < bar.start + bar.length;
  const chords = arranged.timeline.stays
    .filter((stay) => inBar(stay.start))
    .map(({ start, chord }) => ({
      cell: cellOf(start),
      text: chord === null ? "N.C." : chordName(chord),
    }));
  const shapes = (arranged.route?.placements ?? [])
    .filter((placement) => inBar(placement.start))
    .map((placement) => ({ cell: cellOf(placement.start), text: sayShape(placement) }));
  const rows = strings.map((string) => {
    const cells = Array.from({ length: count }, () => "-".repeat(CELL));
    for (const note of notes.filter((each) => each.string === string)) {
      const mark = slides.get(note) ?? "-";
      cells[cellOf(note.tick)] = `${mark}${String(note.fret).padEnd(CELL - 1, "-")}`;
    }
    return cells.join("");
  });
  const fingers = Array.from({ length: count }, (_, cell) => {
    const struck = notes.filter((note) => cellOf(note.tick) === cell);
    const fingers = [...new Set(struck.map((note) => note.finger))].join("");
    const letters = `${fingers}${struck.some((note) => note.letGo) ? LET_GO : ""}`;
    return ` ${letters.padEnd(CELL - 1).slice(0, CELL)}`.slice(0, CELL);
  });
  return {
    chords: wordsOver(chords, count * CELL),
    shapes: wordsOver(shapes, count * CELL),
    rows: [...rows, fingers.join("")],
  };
};

const slideMarks = (notes: readonly Note[]): ReadonlyMap<Note, "/" | "\\"> => {
  const { slidesInto } = slidesOf(notes);
  const before = new Map<number, Note>();
  const marks = new Map<Note, "/" | "\\">();
  for (const note of notes) {
    const from = before.get(note.string);
    if (slidesInto.has(note) && from !== undefined) {
      marks.set(note, from.fret < note.fret ? "/" : "\\");
    }
    before.set(note.string, note);
  }
  return marks;
};

const headerOf = ({ song, neck, tempo }: Arranged): readonly string[] => [
  song.title.slice(0, WIDTH),
  [
    words.tablature.key(keyName(song.key)),
    meterName(song.meter),
    words.tempo.is(tempo, beatNotes(song.meter)),
    words.tablature.tuning(neck.tuning.name),
    ...(neck.capo === 0 ? [] : [words.tablature.capo(neck.capo)]),
  ].join(", "),
  words.tablature.help,
  words.tablature.letGo(LET_GO),
];

/**
 * A song as text tablature, straight through as it is played: systems of whole bars, at most 80
 * columns wide, each with its chords, its shapes (as `sayShape` names them), five strings, and the
 * picking fingers, with a mark where a note is let go early. An eighth note takes three columns; where
 * a song has shorter ones, the shortest does.
 */
export const writeTablature = (arranged: Arranged, sayShape: SayShape): string => {
  const { timeline, score, neck } = arranged;
  const slides = slideMarks(score.notes);
  const grid = gridOf(score.notes);
  const width = ((timeline.bars[0]?.length ?? 0) / grid) * CELL + 1;
  const perLine = Math.max(1, Math.floor((WIDTH - MARGIN - 1) / width));
  const names = strings.map((string) => {
    const name = noteNameOf(ofString(neck.tuning.open, string) % 12, false);
    return (string === 5 ? name.toLowerCase() : name).padEnd(MARGIN);
  });
  const lines: string[] = [...headerOf(arranged)];
  let next = 0;
  let system: Drawn[] = [];
  const flush = (): void => {
    if (system.length === 0) {
      return;
    }
    const over = (name: "chords" | "shapes"): string =>
      `${" ".repeat(MARGIN + 1)}${system.map((bar) => bar[name]).join(" ")}`.trimEnd();
    lines.push("", over("chords"), over("shapes"));
    for (const [row, name] of names.entries()) {
      lines.push(`${name}|${system.map((bar) => bar.rows[row]).join("|")}|`);
    }
    const fingers = system.map((bar) => bar.rows[strings.length]).join(" ");
    lines.push(`${" ".repeat(MARGIN + 1)}${fingers}`.trimEnd());
    system = [];
  };
  for (const bar of timeline.bars) {
    if (bar.startsSection || system.length === perLine) {
      flush();
    }
    if (bar.startsSection && bar.section !== null) {
      lines.push("", `[${bar.section}]`);
    }
    const from = next;
    while ((score.notes[next]?.tick ?? Number.POSITIVE_INFINITY) < bar.start + bar.length) {
      next += 1;
    }
    system.push(drawBar(bar, score.notes.slice(from, next), arranged, slides, sayShape, grid));
  }
  flush();
  return `${lines.join("\n")}\n`;
};
