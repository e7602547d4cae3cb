import assert from "node:assert/strict";
import fc from "fast-check";
import {
  readSharedSongs,
  type SharedSongs,
  sharedSongsFile,
} from "../../src-shared/book/sharedSongs.ts";
import { chartToScore } from "../../src-shared/chartToScore.ts";
import { patternMeters } from "../../src-shared/roll/pattern.ts";
import { patternsOf } from "../../src-shared/roll/rollTable.ts";
import { newSongSettings } from "../../src-shared/settings.ts";
import { type Area, makeArea } from "./area.ts";
import { checkRefusal, checkScore } from "./checks.ts";
import { jsonNear } from "./nearJson.ts";
import { textNear } from "./nearText.ts";
import { seedCharts } from "./seedCharts.ts";

const own = patternMeters.flatMap((meter) => patternsOf("forward", meter)).slice(0, 2);
const songs: SharedSongs["songs"] = seedCharts.slice(0, 3).map((text, index) => ({
  title: `Gate ${index}`,
  text,
  settings: {
    ...newSongSettings,
    picking: {
      ...newSongSettings.picking,
      song: { style: `own:${own[0]?.name}`, density: "full" as const },
    },
  },
  tags: index === 0 ? [] : ["slow", "in three"],
}));

const FILE = sharedSongsFile(songs, own);

const anyFile = fc.oneof(
  {
    weight: 3,
    arbitrary: jsonNear(fc.constant<unknown>(JSON.parse(FILE))).map((value) =>
      JSON.stringify(value),
    ),
  },
  {
    weight: 1,
    arbitrary: textNear({
      seeds: [FILE, sharedSongsFile(songs.slice(0, 1), []), "{}"],
      scraps: [...'{}[],:"\\0123456789-e', '"chart"', '"shortslide":2', "null", "\\ud800", "1e400"],
      piece: /"[^"]*"|[{}[\],:]|\s+/g,
    }),
  },
);

/** A file of shared songs: read or refused whole, written again, and played. */
export const sharedArea: Area = makeArea("shared", anyFile, (text) => {
  const read = readSharedSongs(text);
  if (!read.ok) {
    checkRefusal(read);
    return;
  }
  const again = readSharedSongs(sharedSongsFile(read.songs, read.patterns));
  assert.ok(again.ok, "what was written is not read again");
  const lines = (all: SharedSongs["songs"]) =>
    all.map((song) => ({ ...song, text: song.text.split(/\r\n|\r|\n/).join("\n") }));
  assert.deepEqual(again.songs, lines(read.songs));
  for (const { text: chart, settings } of read.songs) {
    const { plan, playTempo, picking } = settings;
    checkScore(chartToScore(chart, plan, playTempo, picking, read.patterns));
  }
});
