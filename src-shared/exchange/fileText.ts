import { strFromU8, strToU8 } from "fflate";
import { type Refusal, refuse } from "../harmony/refusal.ts";
import { words } from "../wordTable.ts";
import { MAX_IMPORT_BYTES } from "./importing.ts";

/** A file's text, and what had to be guessed about its letters (null where nothing had). */
export type FileText =
  | { readonly ok: true; readonly text: string; readonly guess: string | null }
  | Refusal;

const CHUNK = 4096;

const utf16 = (bytes: Uint8Array, bigEndian: boolean): string => {
  const units: string[] = [];
  const high = bigEndian ? 0 : 1;
  for (let from = 2; from + 1 < bytes.length; from += CHUNK) {
    const codes: number[] = [];
    for (let at = from; at < Math.min(from + CHUNK, bytes.length - 1); at += 2) {
      codes.push(((bytes[at + high] ?? 0) << 8) | (bytes[at + 1 - high] ?? 0));
    }
    units.push(String.fromCharCode(...codes));
  }
  return units.join("");
};

const sameBytes = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);

/**
 * A file's bytes as text: UTF-8, or UTF-16 where a byte order mark says so; bytes that are no UTF-8
 * are read as Latin-1, which ABC and old MusicXML files use, and that is said. Refused: an empty
 * file, one beyond MAX_IMPORT_BYTES, and one that is no text at all.
 * @example fileText(Uint8Array.of(71, 246)) // => { ok: true, text: "Gö", guess: "The letters are read as Latin-1, as they are not UTF-8." }
 */
export const fileText = (bytes: Uint8Array): FileText => {
  if (bytes.length === 0) {
    return refuse(words.import.empty, words.import.emptyTry);
  }
  if (bytes.length > MAX_IMPORT_BYTES) {
    return refuse(words.import.tooLong(MAX_IMPORT_BYTES / 1024 / 1024), words.import.tooLongTry);
  }
  const [first, second, third] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return { ok: true, text: utf16(bytes, first === 0xfe), guess: null };
  }
  const marked = first === 0xef && second === 0xbb && third === 0xbf;
  const body = marked ? bytes.subarray(3) : bytes;
  if (body.includes(0)) {
    return refuse(words.import.notText, words.import.notTextTry);
  }
  const text = strFromU8(body);
  if (sameBytes(strToU8(text), body)) {
    return { ok: true, text, guess: null };
  }
  const guess = words.import.latin1;
  return { ok: true, text: strFromU8(body, true), guess };
};
