import { closeSync, openSync, readSync } from "node:fs";
import { MAX_CHART_BYTES } from "../services/chartFile.ts";

/** A chart's text, or why there is none, in words. */
export type ChartText =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly says: string };

const CHUNK = 65_536;
const STANDARD_INPUT = 0;

/** What a descriptor gives, up to the limit and one byte more: an endless one ends there. */
const readBytes = (descriptor: number): Buffer => {
  const chunks: Buffer[] = [];
  let total = 0;
  while (total <= MAX_CHART_BYTES) {
    const chunk = Buffer.alloc(CHUNK);
    const count = readSync(descriptor, chunk, 0, CHUNK, null);
    if (count === 0) {
      break;
    }
    chunks.push(chunk.subarray(0, count));
    total += count;
  }
  return Buffer.concat(chunks);
};

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EISDIR: "it is a folder",
  EACCES: "this user may not read it",
  ERR_ENCODING_INVALID_ENCODED_DATA: "it is not UTF-8 text; save it as UTF-8",
};

/** Why the disk refused, in words. */
export const reasonOf = (error: unknown): string => {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return reasons[code] ?? (error instanceof Error ? error.message : String(error));
};

/** Reads a chart file, or standard input for "-". UTF-8 only, and no longer than a chart may be. */
export const readChartText = (file: string): ChartText => {
  const name = file === "-" ? "Standard input" : `"${file}"`;
  try {
    const descriptor = file === "-" ? STANDARD_INPUT : openSync(file, "r");
    const bytes = readBytes(descriptor);
    if (descriptor !== STANDARD_INPUT) {
      closeSync(descriptor);
    }
    if (bytes.length > MAX_CHART_BYTES) {
      return { ok: false, says: `${name} is too long for a chart.` };
    }
    return { ok: true, value: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch (error) {
    return { ok: false, says: `${name} cannot be read: ${reasonOf(error)}.` };
  }
};
