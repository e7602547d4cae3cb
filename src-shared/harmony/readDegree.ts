import type { Degree, DegreeChord } from "./degree.ts";
import { plainAccidentals } from "./noteName.ts";
import { readQuality } from "./readChord.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** A chord by degree as read, or why it could not be. */
export type DegreeReading =
  | {
      readonly ok: true;
      readonly chord: DegreeChord;
      /** The larger chord that it stands in for, as written; null for itself. */
      readonly standsFor: string | null;
    }
  | Refusal;

const degreeOf = (accidental: string, figure: string): Degree => ({
  number: Number(figure),
  accidental: accidental === "b" || accidental === "#" ? accidental : "",
});

/**
 * Whether a symbol is meant as a degree: it starts with a figure, or with b or # and a figure.
 * @example looksLikeDegree("b7") // => true
 */
export const looksLikeDegree = (symbol: string): boolean => /^[b#♭♯]?\d/.test(symbol);

const readBassDegree = (text: string): Degree | null => {
  const parts = /^([b#]?)([1-7])$/.exec(text);
  return parts === null ? null : degreeOf(parts[1] ?? "", parts[2] ?? "");
};

const refuseFigures = (degree: string, rest: string): Refusal | null => {
  const caret = /^[\^*](.+)$/.exec(rest);
  if (caret !== null) {
    const meant = readQuality(caret[1] ?? "");
    if (meant.kind !== "ours") return null;
    const joint = /^\d/.test(meant.quality) ? "-" : "";
    return refuse(
      `${degree}${rest} is written with a hyphen here.`,
      `Write ${degree}${joint}${meant.quality}.`,
    );
  }
  if (!/^[\d#b]/.test(rest) || /^b?(?:5)$/.test(rest)) return null;
  if (rest === "7" || rest === "6") {
    return refuse(
      `${degree}${rest} could be one chord or two.`,
      `Write ${degree}-${rest} for one chord, or ${degree} ${rest} for two.`,
    );
  }
  if (/^([b#]?[1-7])+$/.test(rest)) {
    const apart = [degree, ...(rest.match(/[b#]?[1-7]/g) ?? [])].slice(0, 8).join(" ");
    return refuse("Degrees need white space between them.", `Write ${apart}.`);
  }
  return null;
};

/**
 * Reads a chord called by degree: b or #, a figure 1 to 7, a quality, "/" and a bass degree. A
 * quality that starts with a figure is joined by a hyphen.
 * @example readDegree("6m") // => { ok: true, chord: { degree: { number: 6, accidental: "" }, quality: "m", bass: null }, standsFor: null }
 * @example readDegree("57") // => { ok: false, says: "57 could be one chord or two.", try: "Write 5-7 for one chord, or 5 7 for two." }
 */
export const readDegree = (symbol: string): DegreeReading => {
  const plain = plainAccidentals(symbol.trim());
  const parts = /^([b#]?)(\d)([^/]*)(?:\/(.*))?$/.exec(plain);
  const shown = plain.length > 24 ? `${plain.slice(0, 24)}…` : plain;
  if (parts === null) {
    return refuse(`"${shown}" is not a degree.`, "Write a figure from 1 to 7, as in 4, 6m or b7.");
  }
  const [, accidental = "", figure = "", rest = "", bassText] = parts;
  if (!/[1-7]/.test(figure)) {
    return refuse(`There is no degree ${figure}.`, "Degrees go from 1 to 7.");
  }
  const degree = degreeOf(accidental, figure);
  const name = `${accidental}${figure}`;
  const figures = refuseFigures(name, rest);
  if (figures !== null) return figures;
  if (rest === "-") {
    return refuse(`${shown} stops at the hyphen.`, `Write ${name}m for minor, or ${name}-7.`);
  }
  const reading = readQuality(rest.replace(/^-/, ""));
  if (reading.kind === "unknown") {
    return refuse(`"${shown}" is not a chord.`, `Write ${name}, ${name}m or ${name}-7.`);
  }
  const ours = reading.kind === "ours";
  const quality = ours ? reading.quality : reading.nearest;
  const standsFor = ours ? null : plain;
  if (bassText === undefined) {
    return { ok: true, chord: { degree, quality, bass: null }, standsFor };
  }
  const bass = readBassDegree(bassText);
  if (bass === null) {
    return refuse(
      `"${shown}" has no degree after the slash.`,
      `The bass of a degree is a degree too, as in ${name}/${figure === "3" ? "5" : "3"}.`,
    );
  }
  const own = bass.number === degree.number && bass.accidental === degree.accidental;
  return { ok: true, chord: { degree, quality, bass: own ? null : bass }, standsFor };
};
