import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { meterName } from "../../../src-shared/chart/writeChart.ts";
import { importFile } from "../../../src-shared/exchange/importFile.ts";
import type { FoundTune, OnTune } from "../../../src-shared/exchange/importing.ts";
import { sayCount, sayKey } from "../../parts/facts.ts";
import type { FoundRow, SourceFile } from "../../parts/foundSongs.ts";

const rowOf = (tune: FoundTune, file: string): FoundRow => {
  if (!tune.ok) {
    return { kind: "refused", file, title: tune.title, says: tune.says, advice: tune.try };
  }
  const song = readChart(tune.chart).value;
  const bars = sayCount(unfold(song).bars.length, "bar");
  return {
    kind: "song",
    file,
    title: tune.title || "Untitled",
    text: tune.chart,
    facts: [sayKey(song.key), meterName(song.meter), bars],
    read: tune.read,
    left: tune.left,
  };
};

/** All that a file holds, in its order: songs, and what cannot be had with the reason. */
export const foundRows = ({ name, bytes }: SourceFile, onTune?: OnTune): readonly FoundRow[] => {
  const found = importFile(bytes, onTune);
  return found.ok
    ? found.tunes.map((tune) => rowOf(tune, name))
    : [{ kind: "refused", file: name, title: null, says: found.says, advice: found.try }];
};
