import { Unzip, type UnzipFile, UnzipInflate } from "fflate";
import { type Refusal, refuse } from "../harmony/refusal.ts";
import { words } from "../wordTable.ts";
import { crc32 } from "./crc32.ts";
import { fileText } from "./fileText.ts";
import { MAX_IMPORT_BYTES } from "./importing.ts";
import { readXml } from "./readXml.ts";
import { childOf } from "./xmlTree.ts";
import { zipDirectory } from "./zipDirectory.ts";

/** The score within a compressed MusicXML file, or why it cannot be had. */
export type Unpacked = { readonly ok: true; readonly bytes: Uint8Array } | Refusal;

/** Deflate packs at most about a thousand to one, so so much gives at most half a megabyte at once. */
const CHUNK = 512;
const MOST_FILES = 64;
const CONTAINER = "META-INF/container.xml";
const EXPORT_AGAIN = words.import.packed.try;

const joined = (parts: readonly Uint8Array[], length: number): Uint8Array => {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

type Entry = { readonly name: string; readonly parts: Uint8Array[]; done: boolean };

/** All files of a zip archive within the limits; a refusal as soon as one is passed. */
const unzip = (bytes: Uint8Array): readonly Entry[] | Refusal => {
  const entries: Entry[] = [];
  let total = 0;
  let failure: string | null = null;
  const take = (file: UnzipFile): void => {
    const entry: Entry = { name: file.name, parts: [], done: false };
    entries.push(entry);
    if (entries.length > MOST_FILES) {
      failure = words.import.packed.manyFiles(MOST_FILES);
      return;
    }
    file.ondata = (error, data, final) => {
      if (error) {
        failure ??= error.message;
        return;
      }
      total += data.length;
      if (total > MAX_IMPORT_BYTES) {
        failure ??= words.import.packed.tooLarge(MAX_IMPORT_BYTES / 1024 / 1024);
        return;
      }
      entry.parts.push(data);
      entry.done = final;
    };
    file.start();
  };
  const archive = new Unzip(take);
  archive.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && failure === null; at += CHUNK) {
      archive.push(bytes.subarray(at, at + CHUNK), at + CHUNK >= bytes.length);
    }
  } catch (error) {
    failure ??= error instanceof Error ? error.message : String(error);
  }
  return failure === null ? entries : refuse(words.import.packed.says(failure), EXPORT_AGAIN);
};

const bytesOf = (entry: Entry): Uint8Array =>
  joined(
    entry.parts,
    entry.parts.reduce((sum, part) => sum + part.length, 0),
  );

/** Where the container says the score is; null where it does not say. */
const scorePath = (container: Entry | undefined): string | null => {
  const text = container === undefined ? null : fileText(bytesOf(container));
  const xml = text?.ok ? readXml(text.text) : null;
  const files = xml?.ok ? childOf(xml.root, "rootfiles") : null;
  return (files && childOf(files, "rootfile")?.attributes["full-path"]) ?? null;
};

/**
 * The score of a compressed MusicXML file (.mxl): the one that META-INF/container.xml names, else the
 * first MusicXML file in it. Refused: what unpacks beyond MAX_IMPORT_BYTES, and an archive that is
 * broken, cut off, or does not agree with its checksum.
 */
export const unpackMxl = (bytes: Uint8Array): Unpacked => {
  if (bytes.length > MAX_IMPORT_BYTES) {
    return refuse(words.import.tooLong(MAX_IMPORT_BYTES / 1024 / 1024), EXPORT_AGAIN);
  }
  const entries = unzip(bytes);
  if ("ok" in entries) {
    return entries;
  }
  const path = scorePath(entries.find((entry) => entry.name === CONTAINER));
  const score =
    entries.find((entry) => entry.name === path) ??
    entries.find(({ name }) => /\.(?:musicxml|xml)$/i.test(name) && !name.startsWith("META-INF/"));
  if (score === undefined || !score.done) {
    return refuse(words.import.packed.noScore, EXPORT_AGAIN);
  }
  const directory = zipDirectory(bytes, MOST_FILES);
  if (directory === null) {
    return refuse(words.import.packed.cutOff, EXPORT_AGAIN);
  }
  const unpacked = bytesOf(score);
  const sum = crc32(unpacked);
  if (!directory.some((record) => record.name === score.name && record.crc === sum)) {
    return refuse(words.import.packed.checksum, EXPORT_AGAIN);
  }
  return { ok: true, bytes: unpacked };
};
