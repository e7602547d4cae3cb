import { plainHeader } from "../chart/readHeader.ts";
import type { Key } from "../harmony/key.ts";
import { keyName } from "../harmony/readKey.ts";
import { readTuning } from "../harmony/readTuning.ts";
import { refuse } from "../harmony/refusal.ts";
import { tunings } from "../neck/tuningTable.ts";
import { fret } from "../units.ts";
import { words } from "../wordTable.ts";
import type { FoundHeader } from "./chartFromBars.ts";
import { fileText } from "./fileText.ts";
import type { FoundTune, Importing } from "./importing.ts";
import { type PartReading, readMeasures } from "./measureReader.ts";
import { readXml } from "./readXml.ts";
import { songsFromPieces } from "./songsFromPieces.ts";
import { unpackMxl } from "./unpackMxl.ts";
import { childOf, childrenOf, textAt, type XmlElement } from "./xmlTree.ts";

/** Tonics by sharps (positive) or flats, from seven flats up to seven sharps. */
const majors = "Cb Gb Db Ab Eb Bb F C G D A E B F# C#".split(" ");
const minors = "Ab Eb Bb F C G D A E B F# C# G# D# A#".split(" ");

const keyOf = (given: PartReading["fifths"]): Key | null => {
  const tonic = given && (given.minor ? minors : majors)[Math.round(given.fifths) + 7];
  return given && tonic ? { tonic, mode: given.minor ? "minor" : "major" } : null;
};

/** A banjo's tuning and capo where a tablature staff of five lines tells them. */
const neckOf = (part: XmlElement): Pick<FoundHeader, "capo" | "tuning"> => {
  for (const measure of childrenOf(part, "measure").slice(0, 1)) {
    for (const attributes of childrenOf(measure, "attributes")) {
      for (const details of childrenOf(attributes, "staff-details")) {
        const notes = childrenOf(details, "staff-tuning").map((line) => {
          const alter = Number(textAt(line, "tuning-alter") ?? "0");
          const sign = ["b", "", "#"][alter + 1] ?? "";
          return `${textAt(line, "tuning-step")}${sign}${textAt(line, "tuning-octave")}`;
        });
        const reading = notes.length === 5 ? readTuning(notes.join(" ")) : null;
        const capo = Number(textAt(details, "capo") ?? "0");
        if (reading?.ok && capo >= 0 && capo <= 11) {
          const open = reading.tuning.open.join();
          const known = tunings.find((tuning) => tuning.open.join() === open);
          return { capo: fret(Math.round(capo)), tuning: known?.name ?? reading.tuning.name };
        }
      }
    }
  }
  return { capo: plainHeader.capo, tuning: plainHeader.tuning };
};

const leftOf = (reading: PartReading, parts: number): readonly string[] => [
  ...(reading.notes > 0 ? [words.import.notes(reading.notes)] : []),
  ...(reading.lyrics > 0 ? [words.import.xml.lyrics(reading.lyrics)] : []),
  ...(reading.keyChanges > 0 ? [words.import.xml.keys] : []),
  ...(parts > 1 ? [words.import.xml.parts(parts - 1)] : []),
  ...reading.left,
];

const tunesOf = (root: XmlElement, title: string): readonly FoundTune[] => {
  const parts = childrenOf(root, "part");
  const readings = parts.map((part) => ({ part, reading: readMeasures(part) }));
  const best = readings.reduce<(typeof readings)[number] | null>(
    (most, each) => (most === null || each.reading.chords > most.reading.chords ? each : most),
    null,
  );
  if (best === null || best.reading.chords === 0) {
    const refusal = refuse(words.import.xml.noChords, words.import.xml.noChordsTry);
    return [{ ...refusal, title }];
  }
  const { part, reading } = best;
  const key = keyOf(reading.fifths);
  return songsFromPieces({
    header: { title, key: key ?? plainHeader.key, form: null, ...neckOf(part) },
    quarters: reading.tempo,
    pieces: reading.pieces,
    jumps: reading.jumps,
    read: [key === null ? words.import.noKey : words.import.key(keyName(key))],
    left: leftOf(reading, parts.length),
  });
};

const EXPORT = words.import.xml.partwiseTry;

/** Reads the text of a MusicXML score, 3.1 or 4.0, into a chart. */
export const readMusicXmlText = (text: string): Importing => {
  const xml = readXml(text);
  if (!xml.ok) {
    return xml;
  }
  const { root } = xml;
  if (root.name !== "score-partwise") {
    return root.name === "score-timewise"
      ? refuse(words.import.xml.timewise, EXPORT)
      : refuse(words.import.xml.noScore(root.name.slice(0, 40)), EXPORT);
  }
  const work = childOf(root, "work");
  const title =
    (work && textAt(work, "work-title")) || textAt(root, "movement-title") || words.notes.untitled;
  return { ok: true, tunes: tunesOf(root, title) };
};

/** Reads a MusicXML file, plain or compressed (.mxl), into a chart. */
export const readMusicXml = (bytes: Uint8Array): Importing => {
  const packed = bytes[0] === 0x50 && bytes[1] === 0x4b;
  const score = packed ? unpackMxl(bytes) : { ok: true as const, bytes };
  if (!score.ok) {
    return score;
  }
  const text = fileText(score.bytes);
  return text.ok ? readMusicXmlText(text.text) : text;
};
