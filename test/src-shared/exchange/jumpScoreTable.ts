import {
  backward,
  forward,
  type HandMeasure,
  sign,
  sound,
  sounded,
  startsEnding,
  stopsEnding,
  words,
} from "./scoreOf.ts";

/** A score with jumps, the same in ABC, and its bars in the order of playing. */
export type JumpScore = {
  readonly name: string;
  readonly measures: readonly HandMeasure[];
  /** null where ABC has no way to write it. */
  readonly abc: string | null;
  readonly order: string;
};

/*
 * The orders are those of music21 10.5.0's repeat expander on the same MusicXML, run by hand; but for
 * the one with two endings, whose brackets it passes over where there is a da capo.
 * Sound attributes as the sound element of the MusicXML 4.0 schema describes them; decorations as in
 * ABC 2.1, section 4.14.
 */
export const jumpScoreTable: readonly JumpScore[] = [
  {
    name: "da capo to the fine",
    measures: [
      {},
      { after: sound('fine="yes"', "Fine") },
      {},
      { after: sound('dacapo="yes"', "D.C. al Fine") },
    ],
    abc: '"A"A4|"B"B4!fine!|"C"C4|"D"D4!D.C.alfine!|]',
    order: "ABCDAB",
  },
  {
    name: "da capo alone",
    measures: [{}, {}, { after: sound('dacapo="yes"', "D.C.") }],
    abc: '"A"A4|"B"B4|"C"C4!D.C.!|]',
    order: "ABCABC",
  },
  {
    name: "dal segno to the fine",
    measures: [
      {},
      { before: sounded("segno", 'segno="segno"') },
      { after: sound('fine="yes"', "Fine") },
      { after: sound('dalsegno="segno"', "D.S. al Fine") },
    ],
    abc: '"A"A4|!segno!"B"B4|"C"C4!fine!|"D"D4!D.S.alfine!|]',
    order: "ABCDBC",
  },
  {
    name: "dal segno to the coda",
    measures: [
      {},
      { before: sounded("segno", 'segno="segno"') },
      { after: sound('tocoda="coda"', "To Coda") },
      { after: sound('dalsegno="segno"', "D.S. al Coda") },
      { before: sounded("coda", 'coda="coda"') },
      {},
    ],
    abc: '"A"A4|!segno!"B"B4|"C"C4!coda!|"D"D4!D.S.alcoda!||!coda!"E"E4|"F"F4|]',
    order: "ABCDBCEF",
  },
  {
    name: "da capo to the coda, behind a repeat with two endings",
    measures: [
      { before: forward },
      { before: startsEnding(1), after: stopsEnding(1, true) },
      { before: startsEnding(2), after: stopsEnding(2, false) },
      { after: sound('tocoda="coda"', "To Coda") },
      { after: sound('dacapo="yes"', "D.C. al Coda") },
      { before: sounded("coda", 'coda="coda"') },
    ],
    abc: '|:"A"A4|1"B"B4:|2"C"C4||"D"D4!dacoda!|"E"E4!D.C.alcoda!||!coda!"F"F4|]',
    order: "ABACDEACDF",
  },
  {
    name: "da capo to the fine, its repeats made once",
    measures: [
      { before: forward },
      { after: backward },
      { after: sound('fine="yes"', "Fine") },
      { before: forward },
      { after: `${sound('dacapo="yes"', "D.C. al Fine")}${backward}` },
    ],
    abc: '|:"A"A4|"B"B4:|"C"C4!fine!||:"D"D4|"E"E4!D.C.alfine!:|',
    order: "ABABCDEDEABC",
  },
  {
    name: "signs and words without a sound",
    measures: [
      {},
      { before: sign("segno") },
      { after: sign("coda", "To") },
      { after: words("D.S. al Coda") },
      { before: sign("coda") },
    ],
    abc: '"A"A4|S"B"B4|"C"C4O|"D"D4"^D.S. al Coda"||O"E"E4|]',
    order: "ABCDBCE",
  },
];
