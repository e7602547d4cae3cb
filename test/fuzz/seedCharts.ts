import { demoSongTable } from "../../src-shared/demo/demoSongTable.ts";

const small = [
  "| G | C D | G . . D7 |\n",
  "Title: Tin Lamp\nKey: Bb\nTime: 3/4\nTempo: 1/4=144\nCapo: 2\n\n[A]\n|: Bb | % | Eb Bb/D |[1 F7 :|[2 Bb ||\n[B]\n| Gm | Cm7 | F F7 | Bb |\nForm: A A B A\n",
  "Key: Am  Time: 6/8  Tuning: double C\n| 1 57 | 4 | b7 . 5 . . 1 | N.C. |\n",
  "Time: 2/2\n|: D . A . | % :: G | A7 :| # round again\n",
  "Capo: 11\nTempo: 3/8=96\nTime: 2/4\n[Verse] G D/F# [Chorus] Em7 | C9 ( A )\n",
];

/** Good charts to start from. */
export const seedCharts: readonly string[] = [...small, ...demoSongTable.map(({ text }) => text)];

/** Pieces of charts, and what nearly is one. */
export const chartScraps: readonly string[] = [
  ..."|:[].,'%#/-() \n\t12345790ABCDEFGHbm°ø…’♭Δ+",
  "|:",
  ":|",
  "::",
  "||",
  "|]",
  "[|",
  "[1",
  "|1 ",
  ":|2 ",
  "[1,3",
  "[1-99999",
  "::::|",
  "[A] ",
  "[Verse]\n",
  "[No good",
  "G",
  "D7",
  "Em7b5",
  "Em7/B",
  "Cmaj7#11/F##",
  "C9sus4",
  "5-7",
  "57",
  "b7",
  "N.C.",
  "constructor",
  "__proto__",
  "\nTitle: ",
  "\nKey: Bb ",
  "\nKey: ",
  "\nTime: 3/4 ",
  "\nTime: 2/2\n",
  "\nTime: 6/8 ",
  "\nTime: 0/0\n",
  "\nTempo: 1/4=90\n",
  "\nTempo: 3/8=96\n",
  "\nTempo: 1e9\n",
  "\nCapo: 3 ",
  "\nCapo: -1\n",
  "\nTuning: double C\n",
  "\nTuning: gDGBD\n",
  "\nTuning: g4 D3 G3 B3 D4\n",
  "\nTuning: C9 C9 C9 C9 C9\n",
  "\nForm: A A Verse\n",
  "\nForm: ",
  "\nNonsense: ",
  "# a remark\n",
  "\r\n",
];

/** One piece of a chart: a word, a mark, or the space between. */
export const chartPiece: RegExp = /\s+|[|:[\]]+|[^\s|:[\]]+/g;
