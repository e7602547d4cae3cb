import { ChordType } from "tonal";
import { words } from "../wordTable.ts";
import type { Chord, Quality } from "./chord.ts";
import { makeChord } from "./makeChord.ts";
import { plainAccidentals } from "./noteName.ts";
import { type QualityRow, qualityTable } from "./qualityTable.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** A chord symbol as read, or why it could not be. */
export type ChordReading = { readonly ok: true; readonly chord: Chord } | Refusal;

/** What stands after a root: a quality we have, one we lack (with the nearest), or no quality. */
export type QualityReading =
  | { readonly kind: "ours"; readonly quality: Quality }
  | { readonly kind: "lacking"; readonly nearest: Quality }
  | { readonly kind: "unknown" };

/** Spellings of the trade that tonal's dictionary lacks or reads as something rarer. */
const spellings: ReadonlyMap<string, string> = new Map([
  ["ø7", "m7b5"],
  ["m7-5", "m7b5"],
  ["m7(b5)", "m7b5"],
  ["-7-5", "m7b5"],
  ["halfdim", "m7b5"],
  ["halfdim7", "m7b5"],
  ["º", "dim"],
  ["º7", "dim7"],
  ["dom7", "7"],
  ["△", "maj7"],
  ["△7", "maj7"],
  ["Δ7", "maj7"],
  ["7sus", "7sus4"],
  ["9sus", "9sus4"],
]);

/** Bare numbers that the trade uses loosely, with the chord most often meant. */
const loose: ReadonlyMap<string, Quality> = new Map<string, Quality>([
  ["2", "sus2"],
  ["4", "sus4"],
]);

const chromaOf = (row: QualityRow): string =>
  Array.from({ length: 12 }, (_, step) =>
    row.tones.some((tone) => tone.semitones === step) ? "1" : "0",
  ).join("");

const byChroma: ReadonlyMap<string, Quality> = new Map(
  qualityTable.map((row) => [chromaOf(row), row.quality]),
);

/**
 * Symbol to the steps it sounds on, as tonal's dictionary has it. Taken over once: tonal hands out
 * shared mutable values, empties for what it does not know, and also answers to spelled-out names.
 */
const chromas: ReadonlyMap<string, string> = new Map(
  ChordType.all()
    .flatMap((type) => type.aliases.map((alias) => [alias, type.chroma] as const))
    .filter(([alias]) => !/^h/.test(alias)),
);

const settle = (suffix: string): string => {
  const short = suffix
    .replace(/^(?:minor|min|mi)(?!\w*aj)/i, "m")
    .replace(/^(?:major|maj|ma)(?=\d|$)/i, "maj")
    .replace(/^(?:diminished|dim)/i, "dim")
    .replace(/^(?:augmented|aug)/i, "aug")
    .replace(/^sus/i, "sus");
  return spellings.get(short) ?? short;
};

const nearestTo = (chroma: string): Quality => {
  const scored = qualityTable.map((row) => {
    const shared = row.tones.filter((tone) => chroma[tone.semitones] === "1").length;
    return { quality: row.quality, shared, within: shared === row.tones.length };
  });
  const within = scored.filter((each) => each.within);
  const candidates = within.length > 0 ? within : scored;
  return candidates.reduce((best, each) => (each.shared > best.shared ? each : best)).quality;
};

/**
 * Reads what stands after a chord's root, in any spelling the trade writes ("m", "min", "-", "M7").
 * For a quality without voicings the nearest is the largest that lies wholly within it (9 to 7);
 * where none does, the one that shares most tones (5 to major).
 * @example readQuality("min7") // => { kind: "ours", quality: "m7" }
 * @example readQuality("9") // => { kind: "lacking", nearest: "7" }
 */
export const readQuality = (suffix: string): QualityReading => {
  const settled = settle(suffix);
  const usual = loose.get(settled);
  if (usual !== undefined) return { kind: "lacking", nearest: usual };
  const chroma = chromas.get(settled);
  if (chroma === undefined) return { kind: "unknown" };
  const quality = byChroma.get(chroma);
  return quality === undefined
    ? { kind: "lacking", nearest: nearestTo(chroma) }
    : { kind: "ours", quality };
};

const romanDegrees = ["I", "II", "III", "IV", "V", "VI", "VII"];

const refuseRoman = (symbol: string): Refusal | null => {
  const parts = /^([b#]?)(VII|VI|IV|V|III|II|I)(.*)$/i.exec(symbol);
  if (parts === null) return null;
  const [, accidental = "", numeral = "", suffix = ""] = parts;
  const small = numeral === numeral.toLowerCase();
  const reading = readQuality(small && !/^(m|dim|o|°|ø|-)/.test(suffix) ? `m${suffix}` : suffix);
  if (reading.kind === "unknown") return null;
  const quality = reading.kind === "ours" ? reading.quality : reading.nearest;
  const joint = /^\d/.test(quality) ? "-" : "";
  const degree = `${accidental}${romanDegrees.indexOf(numeral.toUpperCase()) + 1}`;
  return refuse(words.notes.chord.roman, words.notes.chord.write(`${degree}${joint}${quality}`));
};

const longestReadable = (symbol: string): string | null => {
  // A symbol's reading needs at most a root and a quality; nothing longer than this can be one.
  for (let end = Math.min(symbol.length - 1, 12); end > 0; end -= 1) {
    const reading = readCapital(symbol.slice(0, end));
    if (reading?.ok === true) return reading.chord.name;
  }
  return null;
};

const readBass = (symbol: string, upper: string, bass: string): Refusal | string => {
  const note = /^([A-Ga-g])([b#]?)$/.exec(bass);
  if (note !== null) return `${(note[1] ?? "").toUpperCase()}${note[2] ?? ""}`;
  if (/^H[b#]?$/.test(bass)) {
    return refuse(words.notes.chord.h, words.notes.chord.write(`${upper}/B`));
  }
  const example = `${upper}/${upper.startsWith("C") ? "G" : "C"}`;
  return refuse(
    bass === "" ? words.notes.chord.noBass(symbol) : words.notes.chord.notBass(bass.slice(0, 12)),
    words.notes.chord.bassTry(example),
  );
};

/** Reads a symbol whose root is a capital A to G; null for any other, or an unknown quality. */
const readCapital = (symbol: string): ChordReading | null => {
  const parts = /^([A-G][b#]?)(?![b#](?!\d))([^/]*|[^/]*\/\d+)(?:\/([^/]*))?$/.exec(symbol);
  if (parts === null) return null;
  const [, root = "", suffix = "", bassText] = parts;
  const whole = bassText !== undefined && /^\d+$/.test(bassText) ? `${suffix}/${bassText}` : suffix;
  const sixNine = whole !== suffix && readQuality(whole).kind !== "unknown";
  const reading = readQuality(sixNine ? whole : suffix);
  if (reading.kind === "unknown") return null;
  const bass = bassText === undefined || sixNine ? null : readBass(symbol, root + suffix, bassText);
  if (bass !== null && typeof bass !== "string") return bass;
  if (reading.kind === "ours") {
    return { ok: true, chord: makeChord(root, reading.quality, bass) };
  }
  return { ok: true, chord: { ...makeChord(root, reading.nearest, bass), standsFor: symbol } };
};

const refuseOther = (symbol: string): Refusal => {
  const roman = refuseRoman(symbol);
  if (roman !== null) return roman;
  const german = /^H(.*)$/.exec(symbol);
  if (german !== null) {
    const meant = readCapital(`B${german[1] ?? ""}`);
    if (meant?.ok === true) {
      return refuse(words.notes.chord.german, words.notes.chord.write(meant.chord.name));
    }
  }
  if (/^[a-g]/.test(symbol)) {
    const meant = readCapital(symbol.slice(0, 1).toUpperCase() + symbol.slice(1));
    if (meant !== null) {
      const advice = meant.ok
        ? words.notes.chord.write(meant.chord.standsFor ?? meant.chord.name)
        : meant.try;
      return refuse(words.notes.chord.small, advice);
    }
  }
  const bare = symbol.replace(/[()"“”]/g, "");
  const unwrapped = bare === symbol ? null : readCapital(bare);
  const start = unwrapped?.ok === true ? unwrapped.chord.name : longestReadable(symbol);
  const shown = symbol.length > 24 ? `${symbol.slice(0, 24)}…` : symbol;
  return refuse(
    symbol === "" ? words.notes.chord.none : words.notes.chord.says(shown),
    start === null ? words.notes.chord.try : words.notes.chord.meant(start),
  );
};

/**
 * Reads a chord symbol: root A to G with b or #, a quality, and "/bass". A chord that there is no
 * shape for (9, 11, 13, add) is reduced to the nearest that there is, which then says what it stands
 * for. Any other text is refused in words.
 * @example readChord("Bbmin7/F").ok // => true
 * @example readChord("X9").ok // => false
 */
export const readChord = (symbol: string): ChordReading => {
  const plain = plainAccidentals(symbol.trim());
  return readCapital(plain) ?? refuseOther(plain);
};
