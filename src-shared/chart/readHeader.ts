import { closest, distance } from "fastest-levenshtein";
import type { Diagnostic } from "../diagnostic.ts";
import { readKey } from "../harmony/readKey.ts";
import { readTuning } from "../harmony/readTuning.ts";
import { tunings } from "../neck/tuningTable.ts";
import { bpm, fret } from "../units.ts";
import { words } from "../wordTable.ts";
import { cleanValue, type Field, type FieldName, fieldNames } from "./fields.ts";
import { readCapo, readMeter, readTempo, type ValueReading } from "./headerValues.ts";
import type { Song } from "./song.ts";
import { type ChartCode, errorAt } from "./spot.ts";

/** What a chart's header says; everything it leaves out has its usual value. */
export type Header = Pick<Song, "title" | "key" | "meter" | "tempo" | "capo" | "tuning">;

/** The header of a chart that has none: G, 4/4, 100 quarters a minute, no capo, open G. */
export const plainHeader: Header = {
  title: words.notes.untitled,
  key: { tonic: "G", mode: "major" },
  meter: { beats: 4, unit: 4 },
  tempo: bpm(100),
  capo: fret(0),
  tuning: tunings[0].name,
};

/** A header as read, with the Form field left for whoever knows the sections. */
export type HeaderReading = {
  readonly header: Header;
  readonly form: Field | null;
  readonly notes: readonly Diagnostic[];
};

const readTuningName = (text: string): ValueReading<string> => {
  const reading = readTuning(text);
  return reading.ok ? { ok: true, value: reading.tuning.name } : reading;
};

/** A word this far from a field's name, in letters put in, left out or changed, may be that field. */
const FEW_SLIPS = 2;
const lowerNames = fieldNames.map((name) => name.toLowerCase());

const refuseUnknown = (field: Field): Diagnostic => {
  const word = field.word.text.slice(0, 24);
  const guess = closest(word.toLowerCase(), lowerNames);
  const nearest = distance(word.toLowerCase(), guess) <= FEW_SLIPS ? guess : undefined;
  const meant = fieldNames.find((name) => name.toLowerCase() === nearest);
  return errorAt(
    field.word,
    "unknown-field",
    words.notes.field.says(word),
    words.notes.field.try(fieldNames, word, meant ?? null),
  );
};

/**
 * Reads header fields. Where one is given twice the first stands; where one is unreadable it has its
 * usual value. Each is reported.
 * @example readHeader([]).header.title // => "Untitled"
 */
export const readHeader = (fields: readonly Field[]): HeaderReading => {
  const notes: Diagnostic[] = [];
  const given = new Map<FieldName, Field>();
  for (const field of fields) {
    if (field.name === null) {
      notes.push(refuseUnknown(field));
    } else if (given.has(field.name)) {
      notes.push(
        errorAt(
          field.word,
          "field-twice",
          words.notes.field.twice(field.name),
          words.notes.field.twiceTry,
        ),
      );
    } else {
      given.set(field.name, field);
    }
  }
  const read = <T>(
    name: FieldName,
    code: ChartCode,
    usual: T,
    reader: (text: string) => ValueReading<T>,
  ): T => {
    const field = given.get(name);
    if (field === undefined) return usual;
    const reading = reader(field.value.text);
    if (reading.ok) return reading.value;
    const spot = field.value.length > 0 ? field.value : field.word;
    notes.push(errorAt(spot, code, reading.says, reading.try));
    return usual;
  };
  const meter = read("Time", "bad-meter", plainHeader.meter, readMeter);
  const header: Header = {
    title: cleanValue(given.get("Title")?.value.text ?? "") || plainHeader.title,
    key: read("Key", "bad-key", plainHeader.key, (text) => {
      const reading = readKey(text);
      return reading.ok ? { ok: true, value: reading.key } : reading;
    }),
    meter,
    tempo: read("Tempo", "bad-tempo", plainHeader.tempo, (text) => readTempo(text, meter)),
    capo: read("Capo", "bad-capo", plainHeader.capo, readCapo),
    tuning: read("Tuning", "bad-tuning", plainHeader.tuning, readTuningName),
  };
  return { header, form: given.get("Form") ?? null, notes };
};
