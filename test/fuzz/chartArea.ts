import { chartToScore } from "../../src-shared/chartToScore.ts";
import { newSongSettings } from "../../src-shared/settings.ts";
import { type Area, makeArea } from "./area.ts";
import { checkChart, checkNotes, checkScore } from "./checks.ts";
import { textNear } from "./nearText.ts";
import { chartPiece, chartScraps, seedCharts } from "./seedCharts.ts";

/** The chart as a player types it: read, written again, and walked to its score. */
export const chartArea: Area = makeArea(
  "chart",
  textNear({ seeds: seedCharts, scraps: chartScraps, piece: chartPiece }),
  (text) => {
    checkChart(text);
    const { plan, playTempo, picking } = newSongSettings;
    const walk = chartToScore(text, plan, playTempo, picking);
    checkNotes(text, walk.notes, walk.slots.length);
    checkScore(walk);
  },
);
