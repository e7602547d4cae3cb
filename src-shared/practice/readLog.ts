import * as v from "valibot";
import { type LogEntry, type LogLine, logLineSchema } from "./logLine.ts";

/**
 * A line that was passed over. `damaged`: cut by a crash, or changed by another hand; `newer`: written
 * by a later version.
 */
export type PassedOver = { readonly line: number; readonly why: "damaged" | "newer" };

/** What a log holds: its rounds without those taken out, in the order they were written. */
export type LogContents = {
  readonly entries: readonly LogEntry[];
  /** Lines counted from 1. */
  readonly passedOver: readonly PassedOver[];
};

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) {
      return undefined;
    }
    throw error;
  }
};

const newer = v.object({ version: v.pipe(v.number(), v.integer(), v.minValue(2)) });

/**
 * Rounds with further lines after them. A round that comes twice counts once: it was sent again when
 * its answer was lost. The last word on whether it is taken out counts.
 */
export const withLines = (
  entries: readonly LogEntry[],
  lines: readonly LogLine[],
): readonly LogEntry[] => {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const deleted = new Set<string>();
  for (const line of lines) {
    if (line.kind === "round") {
      if (!byId.has(line.id)) {
        const { id, song, round } = line;
        byId.set(id, { id, song, round });
      }
    } else if (line.kind === "deleted") {
      deleted.add(line.id);
    } else {
      deleted.delete(line.id);
    }
  }
  return [...byId.values()].filter(({ id }) => !deleted.has(id));
};

/**
 * Reads a log, whatever is in it. A line that is no line of a log is passed over and named; the others
 * count. An empty line is nothing.
 * @example readLog("").entries // => []
 * @example readLog("{\"version\":1,\"ki") // => { entries: [], passedOver: [{ line: 1, why: "damaged" }] }
 */
export const readLog = (text: string): LogContents => {
  const lines: LogLine[] = [];
  const passedOver: PassedOver[] = [];
  for (const [index, written] of text.split("\n").entries()) {
    if (written.trim() === "") {
      continue;
    }
    const json = parsed(written);
    const read = v.safeParse(logLineSchema, json);
    if (read.success) {
      lines.push(read.output);
    } else {
      passedOver.push({ line: index + 1, why: v.is(newer, json) ? "newer" : "damaged" });
    }
  }
  return { entries: withLines([], lines), passedOver };
};
