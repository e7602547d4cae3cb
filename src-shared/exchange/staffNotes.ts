import type { Meter } from "../chart/song.ts";
import { noteNameOf } from "../harmony/noteName.ts";
import { spelledIn } from "../harmony/spelledIn.ts";
import type { Neck } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import type { Placement } from "../route/route.ts";
import type { Note } from "../score/score.ts";
import { ticksPerBar } from "../score/tempo.ts";
import { TICKS_PER_EIGHTH, TICKS_PER_QUARTER } from "../units.ts";
import { fretFromCapo } from "./harmonyElement.ts";
import type { WrittenStroke } from "./strokesInBars.ts";
import { element, type XmlElement } from "./xmlTree.ts";

/** What a staff needs to write its notes. */
export type Staff = {
  readonly kind: "tablature" | "notation";
  /** Its number within the part; null where it is the only one. */
  readonly number: 1 | 2 | null;
  readonly voice: number;
  readonly meter: Meter;
  readonly neck: Neck;
  readonly flats: boolean;
  readonly placements: readonly Placement[];
  /** Notes slid out of and into. */
  readonly slidesFrom: ReadonlySet<Note>;
  readonly slidesInto: ReadonlySet<Note>;
};

/**
 * Pairs of notes with a slide between them: the first note on a string after the hand has slid, and
 * the one before it on that string, struck in the placement that was left.
 */
export const slidesOf = (notes: readonly Note[]): Pick<Staff, "slidesFrom" | "slidesInto"> => {
  const last = new Map<number, Note>();
  const slidesFrom = new Set<Note>();
  const slidesInto = new Set<Note>();
  for (const note of notes) {
    const before = last.get(note.string);
    const follows = before !== undefined && before.placement === note.placement - 1;
    if (note.slideInto && follows && before.fret !== note.fret) {
      slidesFrom.add(before);
      slidesInto.add(note);
    }
    last.set(note.string, note);
  }
  return { slidesFrom, slidesInto };
};

/** A pitch, spelt by the chord it is struck in, and by the key where it is no tone of that. */
const pitchOf = ({ midi, placement }: Note, { placements, flats }: Staff): XmlElement => {
  const chord = placements[placement]?.chord;
  const name = chord ? spelledIn(chord, midi % 12, flats) : noteNameOf(midi % 12, flats);
  const alters: Readonly<Record<string, number>> = { "#": 1, b: -1 };
  const alter = alters[name.slice(1)];
  return element(
    "pitch",
    {},
    element("step", {}, name.slice(0, 1)),
    alter === undefined ? null : element("alter", {}, alter),
    element("octave", {}, Math.floor(midi / 12) - 1),
  );
};

const technicalOf = (note: Note, staff: Staff): XmlElement => {
  const placement = staff.placements[note.placement];
  const finger = placement ? ofString(placement.voicing.fingers, note.string) : null;
  return element(
    "technical",
    {},
    element("string", {}, note.string),
    element("fret", {}, fretFromCapo(staff.neck, note.string, note.fret)),
    finger === null ? null : element("fingering", {}, finger),
    element("pluck", {}, note.finger),
  );
};

const articulationsOf = (note: Note): XmlElement | null =>
  note.accent || note.damped || note.letGo
    ? element(
        "articulations",
        {},
        note.accent ? element("accent") : null,
        note.damped || note.letGo ? element("staccato") : null,
      )
    : null;

const notationsOf = (note: Note, stroke: WrittenStroke, staff: Staff): XmlElement | null => {
  const starts = !stroke.tiedFrom;
  const ends = !stroke.tiedTo;
  const slide = (type: "start" | "stop"): XmlElement =>
    element("slide", { type, number: note.string, "line-type": "solid" });
  const parts = [
    stroke.tiedFrom ? element("tied", { type: "stop" }) : null,
    stroke.tiedTo ? element("tied", { type: "start" }) : null,
    starts && staff.slidesInto.has(note) ? slide("stop") : null,
    ends && staff.slidesFrom.has(note) ? slide("start") : null,
    staff.kind === "tablature" ? technicalOf(note, staff) : null,
    starts ? articulationsOf(note) : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? null : element("notations", {}, parts);
};

/**
 * Ticks under one beam: half a bar of four quarters, a dotted quarter, else a quarter.
 * @example beamTicks({ beats: 3, unit: 4 }) // => 480
 */
export const beamTicks = (meter: Meter): number => {
  if (meter.unit === 8) {
    return 3 * TICKS_PER_EIGHTH;
  }
  return ticksPerBar(meter) % (2 * TICKS_PER_QUARTER) === 0
    ? 2 * TICKS_PER_QUARTER
    : TICKS_PER_QUARTER;
};

const groupOf = (stroke: WrittenStroke | undefined, meter: Meter): number | null =>
  stroke !== undefined && stroke.notes.length > 0 && stroke.value.type === "eighth"
    ? Math.floor(stroke.at / beamTicks(meter))
    : null;

const beamOf = (strokes: readonly WrittenStroke[], index: number, meter: Meter): string | null => {
  const own = groupOf(strokes[index], meter);
  const before = own !== null && groupOf(strokes[index - 1], meter) === own;
  const after = own !== null && groupOf(strokes[index + 1], meter) === own;
  if (before) {
    return after ? "continue" : "end";
  }
  return after ? "begin" : null;
};

/** The notes and rests of one written value of a staff, `index` among those of its bar. */
export const staffNotes = (
  strokes: readonly WrittenStroke[],
  index: number,
  staff: Staff,
): readonly XmlElement[] => {
  const stroke = strokes[index];
  if (stroke === undefined) {
    throw new RangeError(`no stroke ${index} among ${strokes.length}`);
  }
  const { value } = stroke;
  const duration = element("duration", {}, value.ticks);
  const voice = element("voice", {}, staff.voice);
  const type = element("type", {}, value.type);
  const dots = value.dots === 1 ? element("dot") : null;
  const onStaff = staff.number === null ? null : element("staff", {}, staff.number);
  if (stroke.notes.length === 0) {
    return [element("note", {}, element("rest"), duration, voice, type, dots, onStaff)];
  }
  const beam = beamOf(strokes, index, staff.meter);
  return stroke.notes.map((note, at) =>
    element(
      "note",
      {},
      at > 0 ? element("chord") : null,
      pitchOf(note, staff),
      duration,
      stroke.tiedFrom ? element("tie", { type: "stop" }) : null,
      stroke.tiedTo ? element("tie", { type: "start" }) : null,
      voice,
      type,
      dots,
      staff.kind === "tablature" && value.type !== "whole" ? element("stem", {}, "down") : null,
      onStaff,
      beam === null || at > 0 ? null : element("beam", { number: 1 }, beam),
      notationsOf(note, stroke, staff),
    ),
  );
};
