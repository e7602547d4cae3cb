import { stat } from "node:fs/promises";
import { readChart } from "../../src-shared/chart/readChart.ts";
import { meterName } from "../../src-shared/chart/writeChart.ts";
import { chordName } from "../../src-shared/harmony/chord.ts";
import { keyName } from "../../src-shared/harmony/readKey.ts";
import type { SongSummary } from "../../src-shared/host.ts";
import { readChartFile } from "./chartFile.ts";
import { isMissing } from "./disk.ts";

/** A song's line in the list; null where its chart is not there. */
export type Summaries = (id: string) => Promise<SongSummary | null>;

/** What tells one state of a file from the next without reading it. */
type Stamp = { readonly mtimeMs: number; readonly ctimeMs: number; readonly size: number };

const stampOf = async (path: string): Promise<Stamp | null> => {
  try {
    const { mtimeMs, ctimeMs, size } = await stat(path);
    return { mtimeMs, ctimeMs, size };
  } catch (error) {
    if (isMissing(error)) {
      return null;
    }
    throw error;
  }
};

const isSame = (one: Stamp, other: Stamp): boolean =>
  one.mtimeMs === other.mtimeMs && one.ctimeMs === other.ctimeMs && one.size === other.size;

const read = async (id: string, path: string): Promise<SongSummary | null> => {
  const chart = await readChartFile(path);
  if (!chart.ok) {
    // Listed all the same: opening it says what is wrong with it.
    return chart.problem.code === "not-found"
      ? null
      : { id, title: id, key: "", meter: "", tempo: 0, chords: [], changedMs: 0 };
  }
  const { title, key, meter, tempo, sections } = readChart(chart.value.text).value;
  const stays = sections.flatMap(({ bars }) => bars.flatMap((bar) => bar.stays));
  const names = stays.flatMap(({ chord }) => (chord ? [chordName(chord)] : []));
  return {
    id,
    title: title === "" ? id : title,
    key: keyName(key),
    meter: meterName(meter),
    tempo,
    chords: [...new Set(names)],
    changedMs: chart.value.changedMs,
  };
};

/** Reads a chart for its line in the list, and anew only when its file is another than last time. */
export const makeSummaries = (chartPath: (id: string) => string): Summaries => {
  const known = new Map<string, { readonly stamp: Stamp; readonly summary: SongSummary }>();
  return async (id) => {
    const path = chartPath(id);
    const stamp = await stampOf(path);
    const last = known.get(id);
    if (stamp && last && isSame(last.stamp, stamp)) {
      return last.summary;
    }
    const summary = stamp && (await read(id, path));
    if (stamp && summary) {
      known.set(id, { stamp, summary });
    } else {
      known.delete(id);
    }
    return summary;
  };
};
