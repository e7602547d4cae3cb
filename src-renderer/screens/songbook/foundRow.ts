import {
  isSharedText,
  ownPatternsIn,
  readSharedSongs,
  type SharedSong,
} from "../../../src-shared/book/sharedSongs.ts";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { meterName } from "../../../src-shared/chart/writeChart.ts";
import { hasErrors } from "../../../src-shared/diagnostic.ts";
import { fileText } from "../../../src-shared/exchange/fileText.ts";
import { importFile } from "../../../src-shared/exchange/importFile.ts";
import type { FoundTune, OnTune } from "../../../src-shared/exchange/importing.ts";
import type { Refusal } from "../../../src-shared/harmony/refusal.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { sayKey } from "../../parts/facts.ts";
import type { FoundRow, SourceFile } from "../../parts/foundSongs.ts";

const rowOf = (tune: FoundTune, file: string): FoundRow => {
  if (!tune.ok) {
    return { kind: "refused", file, title: tune.title, says: tune.says, advice: tune.try };
  }
  const song = readChart(tune.chart).value;
  const bars = words.count.bars(unfold(song).bars.length);
  return {
    kind: "song",
    file,
    title: tune.title || words.notes.untitled,
    text: tune.chart,
    facts: [sayKey(song.key), meterName(song.meter), bars],
    read: tune.read,
    left: tune.left,
    shared: null,
  };
};

const sharedRow = (song: SharedSong, own: readonly Pattern[], file: string): FoundRow => {
  const { title, text, settings, tags } = song;
  const { value, notes } = readChart(text);
  const used = ownPatternsIn(settings.picking);
  const patterns = own.filter(({ name }) => used.includes(name));
  const names = patterns.map(({ name }) => name);
  const missing = used.filter((name) => !names.includes(name));
  const say = words.shared;
  return {
    kind: "song",
    file,
    title: title || value.title,
    text,
    facts: [sayKey(value.key), meterName(value.meter), words.count.bars(unfold(value).bars.length)],
    read: [
      say.readAll,
      ...(settings.plan.pins.length > 0 ? [say.readPins(settings.plan.pins.length)] : []),
      ...(names.length > 0 ? [say.readPatterns(names)] : []),
      ...(tags.length > 0 ? [say.readTags(tags)] : []),
    ],
    left: [
      ...missing.map((name) => say.leftPattern(name)),
      ...(hasErrors(notes) ? [say.leftToMend] : []),
    ],
    shared: { settings, tags, patterns },
  };
};

const refusedRow = (file: string, { says, try: advice }: Refusal): FoundRow => ({
  kind: "refused",
  file,
  title: null,
  says,
  advice,
});

/** All that a file holds, in its order: songs, and what cannot be had with the reason. */
export const foundRows = ({ name, bytes }: SourceFile, onTune?: OnTune): readonly FoundRow[] => {
  const text = bytes[0] === 0x50 && bytes[1] === 0x4b ? null : fileText(bytes);
  if (text?.ok && isSharedText(text.text)) {
    const shared = readSharedSongs(text.text);
    return shared.ok
      ? shared.songs.map((song) => sharedRow(song, shared.patterns, name))
      : [refusedRow(name, shared)];
  }
  const found = importFile(bytes, onTune);
  return found.ok ? found.tunes.map((tune) => rowOf(tune, name)) : [refusedRow(name, found)];
};
