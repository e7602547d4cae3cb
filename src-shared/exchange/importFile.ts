import { fileText } from "./fileText.ts";
import type { Importing, OnTune } from "./importing.ts";
import { readAbc } from "./readAbc.ts";
import { readMusicXml } from "./readMusicXml.ts";
import { readPasted } from "./readPasted.ts";

/** What a file looks like, whatever its name is. */
export type FileKind = "musicxml" | "abc" | "text";

/**
 * What a file is, from its first bytes: a zip archive or an XML document is taken for MusicXML, lines
 * X: or K: with notes for ABC, all else for chart text.
 * @example fileKind(Uint8Array.of(88, 58, 49, 10, 75, 58, 71)) // => "abc"
 */
export const fileKind = (bytes: Uint8Array): FileKind => {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    return "musicxml";
  }
  const text = fileText(bytes);
  if (!text.ok) {
    return "text";
  }
  if (/^\s*</.test(text.text)) {
    return "musicxml";
  }
  return /^X:/m.test(text.text) && /^K:/m.test(text.text) ? "abc" : "text";
};

/**
 * Reads any file a song may come in: MusicXML (3.1, 4.0, .mxl), ABC 2.1, chart text or plain chords.
 * Any bytes give tunes or a refusal in words; never throws for what is in the file. A file of many tunes tells `onTune` of each.
 */
export const importFile = (bytes: Uint8Array, onTune?: OnTune): Importing => {
  const kind = fileKind(bytes);
  if (kind === "musicxml") {
    return readMusicXml(bytes);
  }
  if (kind === "abc") {
    return readAbc(bytes, onTune);
  }
  const text = fileText(bytes);
  return text.ok ? readPasted(text.text) : text;
};
