/// <reference path="./abcjsParse.d.ts" />

import Parse from "abcjs/src/parse/abc_parse.js";
import { plainHeader } from "../chart/readHeader.ts";
import type { Key } from "../harmony/key.ts";
import { keyName, readKey } from "../harmony/readKey.ts";
import { refuse } from "../harmony/refusal.ts";
import { words } from "../wordTable.ts";
import { abcBudget } from "./abcBudget.ts";
import { abcPieces } from "./abcPieces.ts";
import { type AbcText, abcTunes, partOrder } from "./abcTunes.ts";
import { chartLabel } from "./chartFromBars.ts";
import { fileText } from "./fileText.ts";
import type { FoundTune, Importing, OnTune } from "./importing.ts";
import { songsFromPieces } from "./songsFromPieces.ts";

type AbcTune = ReturnType<Parse["getTune"]>;

/** A tune is no longer than this, in characters: some thousand bars. */
const MAX_TUNE = 65_536;
const MAX_TUNES = 2000;

/** Church modes whose third is minor. */
const minorModes = /^(?:m|min|dor|phr|loc|aeo)/i;
const plainModes = /^(?:|m|min|maj|ion|aeo)$/i;

type FoundKey = { readonly key: Key; readonly read: string; readonly left: string | null };

const keyOf = (tune: AbcTune): FoundKey => {
  const { root, acc, mode } = tune.getKeySignature();
  const sign = acc === "flat" || acc === "b" ? "b" : acc === "sharp" || acc === "#" ? "#" : "";
  const minor = minorModes.test(mode);
  const reading = readKey(`${root}${sign}${minor ? "m" : ""}`);
  if (!reading.ok) {
    return { key: plainHeader.key, read: words.import.noKey, left: null };
  }
  const name = keyName(reading.key);
  const left = plainModes.test(mode) ? null : words.import.mode(mode, name);
  return { key: reading.key, read: words.import.key(name), left };
};

/** Quarters a minute, or null where none is told. */
const tempoOf = (tune: AbcTune): number | null => {
  const { duration, bpm: count } = tune.metaText.tempo ?? {};
  const whole = (duration ?? [0.25]).reduce((sum, part) => sum + part, 0);
  return count === undefined ? null : count * whole * 4;
};

/** The parser's words for what it could not take; a text it stops at is a refusal. */
const parsed = (text: string): AbcTune | string => {
  const parser = new Parse();
  try {
    parser.parse(text, {});
    return parser.getTune();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};

const tunesOf = (abc: AbcText): readonly FoundTune[] => {
  const { title } = abc;
  if (abc.text.length > MAX_TUNE) {
    return [{ ...refuse(words.import.abc.tooLong, words.import.abc.tooLongTry), title }];
  }
  const beyond = abcBudget(abc.text);
  if (beyond !== null) {
    return [{ ...beyond, title }];
  }
  const tune = parsed(abc.text);
  if (typeof tune === "string") {
    const says = words.import.abc.says(tune.slice(0, 120));
    return [{ ...refuse(says, words.import.abc.try), title }];
  }
  const { pieces, chords, notes, jumps, left } = abcPieces(tune, abc.text);
  if (chords === 0) {
    const advice = words.import.abc.noChordsTry;
    return [{ ...refuse(words.import.abc.noChords, advice), title }];
  }
  const key = keyOf(tune);
  const labels = new Set(pieces.map((piece) => piece.label));
  const order = partOrder(abc.order ?? "").flatMap((name) => chartLabel(name) ?? []);
  const form = order.length > 0 && order.every((name) => labels.has(name)) ? order : null;
  return songsFromPieces({
    header: {
      title,
      key: key.key,
      capo: plainHeader.capo,
      tuning: plainHeader.tuning,
      form,
    },
    quarters: tempoOf(tune),
    pieces,
    jumps,
    read: [key.read, ...(form === null ? [] : [words.import.abc.order(form.join(" "))])],
    left: [
      ...(notes > 0 ? [words.import.notes(notes)] : []),
      ...(abc.lyrics ? [words.import.abc.lyrics] : []),
      ...(key.left === null ? [] : [key.left]),
      ...left,
    ],
  });
};

/** Reads the text of an ABC 2.1 file: each of its tunes as a chart, or why it cannot be one. */
export const readAbcText = (text: string, onTune?: OnTune): Importing => {
  const count = text.match(/^X:/gm)?.length ?? 0;
  if (count > MAX_TUNES) {
    return refuse(words.import.abc.manyTunes(count), words.import.divide(MAX_TUNES));
  }
  const tunes = abcTunes(text);
  if (tunes.length === 0) {
    return refuse(words.import.abc.noTune, words.import.abc.noTuneTry);
  }
  const found = tunes.flatMap((tune, index) => {
    const songs = tunesOf(tune);
    onTune?.(index + 1, tunes.length);
    return songs;
  });
  return { ok: true, tunes: found };
};

/** Reads an ABC 2.1 file: each of its tunes as a chart, or why it cannot be one. */
export const readAbc = (bytes: Uint8Array, onTune?: OnTune): Importing => {
  const text = fileText(bytes);
  if (!text.ok) {
    return text;
  }
  const found = readAbcText(text.text, onTune);
  if (!found.ok || text.guess === null) {
    return found;
  }
  const { guess } = text;
  const tunes = found.tunes.map((tune) =>
    tune.ok ? { ...tune, read: [...tune.read, guess] } : tune,
  );
  return { ok: true, tunes };
};
