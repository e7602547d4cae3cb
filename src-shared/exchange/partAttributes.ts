import type { Meter, Song } from "../chart/song.ts";
import { noteNameOf } from "../harmony/noteName.ts";
import { signatureOf } from "../harmony/readKey.ts";
import type { Neck, StringNumber } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import { quartersPerMinute } from "../score/tempo.ts";
import { type Bpm, TICKS_PER_QUARTER } from "../units.ts";
import type { Staff } from "./staffNotes.ts";
import { element, type XmlElement } from "./xmlTree.ts";

/** From the bottom line of the tablature up: staff line is six less the string. */
const bottomUp: readonly StringNumber[] = [5, 4, 3, 2, 1];

const tuningOf = (neck: Neck, flats: boolean): readonly XmlElement[] =>
  bottomUp.map((string) => {
    const open = ofString(neck.tuning.open, string);
    const name = noteNameOf(open % 12, flats);
    const alter = name.length === 1 ? null : name.endsWith("#") ? 1 : -1;
    return element(
      "staff-tuning",
      { line: 6 - string },
      element("tuning-step", {}, name.slice(0, 1)),
      alter === null ? null : element("tuning-alter", {}, alter),
      element("tuning-octave", {}, Math.floor(open / 12) - 1),
    );
  });

const ofStaff = (staff: Staff): Readonly<Record<string, number>> =>
  staff.number === null ? {} : { number: staff.number };

const clefOf = (staff: Staff): XmlElement =>
  staff.kind === "tablature"
    ? element("clef", ofStaff(staff), element("sign", {}, "TAB"), element("line", {}, 5))
    : // Banjo music is written an octave above where it sounds.
      element(
        "clef",
        ofStaff(staff),
        element("sign", {}, "G"),
        element("line", {}, 2),
        element("clef-octave-change", {}, -1),
      );

const detailsOf = (staff: Staff): XmlElement | null =>
  staff.kind === "notation"
    ? null
    : element(
        "staff-details",
        ofStaff(staff),
        staff.number === null ? null : element("staff-type", {}, "alternate"),
        element("staff-lines", {}, bottomUp.length),
        tuningOf(staff.neck, staff.flats),
        staff.neck.capo === 0 ? null : element("capo", {}, staff.neck.capo),
      );

const timeOf = (meter: Meter): XmlElement =>
  element(
    "time",
    meter.unit === 2 && meter.beats === 2 ? { symbol: "cut" } : {},
    element("beats", {}, meter.beats),
    element("beat-type", {}, meter.unit),
  );

/** The attributes of the first measure: divisions are ticks; then key, time, clefs and tuning. */
export const partAttributes = (song: Song, staves: readonly Staff[]): XmlElement =>
  element(
    "attributes",
    {},
    element("divisions", {}, TICKS_PER_QUARTER),
    element(
      "key",
      {},
      element("fifths", {}, signatureOf(song.key)),
      element("mode", {}, song.key.mode),
    ),
    timeOf(song.meter),
    staves.length > 1 ? element("staves", {}, staves.length) : null,
    staves.map(clefOf),
    staves.map(detailsOf).filter((details) => details !== null),
  );

const beatUnits: Readonly<Record<Meter["unit"], readonly XmlElement[]>> = {
  2: [element("beat-unit", {}, "half")],
  4: [element("beat-unit", {}, "quarter")],
  8: [element("beat-unit", {}, "quarter"), element("beat-unit-dot")],
};

/** The tempo as a player reads it, and as sound: always quarters a minute, whatever the beat. */
export const tempoDirection = (meter: Meter, tempo: Bpm): XmlElement =>
  element(
    "direction",
    { placement: "above" },
    element(
      "direction-type",
      {},
      element("metronome", {}, beatUnits[meter.unit], element("per-minute", {}, tempo)),
    ),
    element("sound", { tempo: quartersPerMinute(meter, tempo) }),
  );

/** A section's label as a rehearsal mark. */
export const rehearsalMark = (label: string): XmlElement =>
  element(
    "direction",
    { placement: "above" },
    element("direction-type", {}, element("rehearsal", {}, label)),
  );
