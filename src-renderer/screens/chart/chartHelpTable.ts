import { words } from "../../../src-shared/wordTable.ts";

// Help for our own chart language; its examples are invented.
/** One thing that a chart can say: in words, and as it is written. Our own chart language. */
export type ChartHelp = { readonly title: string; readonly says: string; readonly text: string };

/** How to write a chart, the common things first; every text reads without an error. */
export const chartHelpTable: readonly ChartHelp[] = [
  {
    title: words.chart.helpOn.headers.title,
    says: words.chart.helpOn.headers.says,
    text: "Title: Fern Hill Turn\nKey: A\nTime: 4/4\nTempo: 104\nCapo: 2",
  },
  {
    title: words.chart.helpOn.bars.title,
    says: words.chart.helpOn.bars.says,
    text: "| G | C | Em D7 | G |",
  },
  {
    title: words.chart.helpOn.beats.title,
    says: words.chart.helpOn.beats.says,
    text: "| G . . C | D . G . |",
  },
  {
    title: words.chart.helpOn.halfBeats.title,
    says: words.chart.helpOn.halfBeats.says,
    text: "| G . , C' D |",
  },
  {
    title: words.chart.helpOn.sixEight.title,
    says: words.chart.helpOn.sixEight.says,
    text: "Time: 6/8\n| G . . C . . | G . . . . D |",
  },
  {
    title: words.chart.helpOn.again.title,
    says: words.chart.helpOn.again.says,
    text: "| G . . D | % | C | % |",
  },
  {
    title: words.chart.helpOn.silence.title,
    says: words.chart.helpOn.silence.says,
    text: "| G | N.C. | D . N.C. . |",
  },
  {
    title: words.chart.helpOn.numbers.title,
    says: words.chart.helpOn.numbers.says,
    text: "Key: A\n| 1 | 4 | 6m b7 | 5-7 |",
  },
  {
    title: words.chart.helpOn.repeats.title,
    says: words.chart.helpOn.repeats.says,
    text: "|: G | C :| |: D | G ::|",
  },
  {
    title: words.chart.helpOn.endings.title,
    says: words.chart.helpOn.endings.says,
    text: "|: G | C |1 D | D :|2 D | G |",
  },
  {
    title: words.chart.helpOn.sections.title,
    says: words.chart.helpOn.sections.says,
    text: "Form: Verse Chorus Verse\n[Verse]\n| G | C |\n[Chorus]\n| D | G |",
  },
  {
    title: words.chart.helpOn.remarks.title,
    says: words.chart.helpOn.remarks.says,
    text: "| G | C | # slowly here",
  },
];
