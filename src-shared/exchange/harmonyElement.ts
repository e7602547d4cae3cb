import { type Chord, chordName } from "../harmony/chord.ts";
import type { Neck, StringNumber } from "../neck/neck.ts";
import { ofString, pitchAt } from "../neck/pitchAt.ts";
import type { Fret } from "../units.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { kindFor } from "./kindTable.ts";
import { element, type XmlElement } from "./xmlTree.ts";

/** A frame shows at least so many frets. */
const LEAST_FRETS = 4;

const lowToHigh: readonly StringNumber[] = [5, 4, 3, 2, 1];

/**
 * A fret as MusicXML counts it: from the capo, and on the short string from its own nut, so that a
 * pitch is always tuning plus capo plus fret.
 */
export const fretFromCapo = (neck: Neck, string: StringNumber, fret: Fret): number =>
  pitchAt(neck, { string, fret }) - ofString(neck.tuning.open, string) - neck.capo;

const noteParts = (note: string, stepName: string, alterName: string): readonly XmlElement[] => {
  const alter = (note.match(/#/g)?.length ?? 0) - (note.slice(1).match(/b/g)?.length ?? 0);
  return [
    element(stepName, {}, note.slice(0, 1)),
    ...(alter === 0 ? [] : [element(alterName, {}, alter)]),
  ];
};

const frameOf = (neck: Neck, voicing: Voicing): XmlElement => {
  const stops = lowToHigh.flatMap((string) => {
    const fret = ofString(voicing.frets, string);
    const finger = ofString(voicing.fingers, string);
    return fret === null ? [] : [{ string, finger, fret: fretFromCapo(neck, string, fret) }];
  });
  const lowest = Math.min(...stops.map((stop) => stop.fret));
  const highest = Math.max(...stops.map((stop) => stop.fret));
  const held = (finger: number | null) =>
    finger === null ? [] : stops.filter((stop) => stop.finger === finger);
  return element(
    "frame",
    {},
    element("frame-strings", {}, lowToHigh.length),
    element("frame-frets", {}, Math.max(LEAST_FRETS, highest - lowest + 1)),
    lowest > 1 ? element("first-fret", {}, lowest) : null,
    stops.map(({ string, fret, finger }) => {
      const barre = held(finger);
      const isEnd = barre.length > 1 && barre.at(-1)?.string === string;
      const isStart = barre.length > 1 && barre[0]?.string === string;
      return element(
        "frame-note",
        {},
        element("string", {}, string),
        element("fret", {}, fret),
        finger === null ? null : element("fingering", {}, finger),
        isStart || isEnd ? element("barre", { type: isStart ? "start" : "stop" }) : null,
      );
    }),
  );
};

/** What stands between a symbol's root and its bass. */
const suffixOf = (chord: Chord): string =>
  chordName(chord)
    .slice(chord.root.length)
    .replace(/\/[A-G][b#]?$/, "");

/**
 * A chord as a harmony element, with a frame where a voicing is given; null is N.C. `offset` is in
 * divisions from where it stands.
 */
export const harmonyElement = (
  chord: Chord | null,
  voicing: Voicing | null,
  neck: Neck,
  offset: number,
): XmlElement => {
  const later = offset === 0 ? null : element("offset", {}, offset);
  if (chord === null) {
    return element(
      "harmony",
      {},
      element("root", {}, element("root-step", { text: "" }, "C")),
      element("kind", { text: "N.C." }, "none"),
      later,
    );
  }
  const suffix = suffixOf(chord);
  const { kind, degrees } = kindFor(suffix) ??
    kindFor(chord.quality) ?? { kind: "other", degrees: [] };
  return element(
    "harmony",
    {},
    element("root", {}, noteParts(chord.root, "root-step", "root-alter")),
    element("kind", { text: suffix }, kind),
    chord.bass === null
      ? null
      : element("bass", {}, noteParts(chord.bass, "bass-step", "bass-alter")),
    degrees.map(({ value, alter, type }) =>
      element(
        "degree",
        { "print-object": "no" },
        element("degree-value", {}, value),
        element("degree-alter", {}, alter),
        element("degree-type", {}, type),
      ),
    ),
    voicing === null ? null : frameOf(neck, voicing),
    later,
  );
};
