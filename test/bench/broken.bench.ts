import { strToU8, zipSync } from "fflate";
import { test } from "vitest";
import { importFile } from "../../src-shared/exchange/importFile.ts";

/** Files made to do harm, and how long the importer needs to refuse each: well under a second. */

const MB = 1024 * 1024;
const filled = (text: string, length: number): string =>
  text.repeat(Math.ceil(length / text.length)).slice(0, length);
const abc = (body: string): string => `X:1\nT:x\nM:4/4\nL:1/8\nK:G\n${body}\n`;
const lines = (text: string): string => `${filled(text, 2000)}\n`.repeat(30);

const files: readonly (readonly [string, () => Uint8Array])[] = [
  ["XML, deep", () => strToU8(`<score-partwise>${filled("<a>", 7 * MB)}`)],
  ["XML, just within its budget", () => strToU8(`<score-partwise>${filled("<a/>", MB)}`)],
  ["XML, one endless name", () => strToU8(filled("<", 100_000))],
  ["XML, endless comment", () => strToU8(`<a><!-- ${filled("-", 7 * MB)}`)],
  ["ABC, overlays", () => strToU8(abc(filled("A&", 60_000)))],
  ["ABC, graces", () => strToU8(abc(lines("{A")))],
  ["ABC, broken rhythm", () => strToU8(abc(lines("<A>")))],
  ["ABC, ties", () => strToU8(abc(lines("A-|")))],
  ["ABC, tunes without end", () => strToU8(filled("X:1\nK:G\n", 7 * MB))],
  ["text, commas", () => strToU8(`G${filled(",", 190_000)}x`)],
  ["text, dots of a chart", () => strToU8(`| G${filled(" .", 190_000)}`)],
  ["zip bomb", () => zipSync({ "score.xml": new Uint8Array(100 * MB) }, { level: 9 })],
  ["zeros", () => new Uint8Array(8 * MB)],
];

test("broken files", () => {
  for (const [name, make] of files) {
    const bytes = make();
    const before = performance.now();
    const found = importFile(bytes);
    const milliseconds = Math.round(performance.now() - before);
    const tune = found.ok ? found.tunes[0] : found;
    console.info(`${name}: ${milliseconds} ms; ${tune?.ok ? "a chart" : tune?.says.slice(0, 80)}`);
  }
});
