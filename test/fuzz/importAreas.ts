import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { chartToScore } from "../../src-shared/chartToScore.ts";
import { importFile } from "../../src-shared/exchange/importFile.ts";
import { writeMusicXml } from "../../src-shared/exchange/writeMusicXml.ts";
import { wholeNeckPlan } from "../../src-shared/settings.ts";
import { type Area, makeArea } from "./area.ts";
import { checkImporting } from "./checks.ts";
import { bytesNear } from "./nearBytes.ts";
import { textNear } from "./nearText.ts";

const TUNES: readonly string[] = [
  'X:1\nT:Nine Stiles\nM:6/8\nL:1/8\nQ:3/8=104\nK:Ador\nP:A\nE|:"Am"A2B c2d|"G"B2A "Em/b"G2E|"Am"A2B "D/f+"c2d|[1 "Em"e3 "Am"A2E:|[2 "Em"e3 "Am"A3|]\n',
  'X:1\nT:Order\nP:A2B\nM:2/4\nL:1/4\nK:D\nP:A\n"D"D2|"A"A2|\nP:B\n"G"G2|"D"D2|\nw:la la\n',
  'X:3\nT:Wrap\nM:C|\nL:1/16\nK:Bbm clef=bass\n%%score (1 2)\nV:1\n"Bbm"(3BBB {c}d2 [ce]4 z4|"Gb^text"x8::"F7"F>FA<A|!D.C.!\n\nX:4\nT:Other\nK:C\n"C"C4|\n',
];

const abcScraps: readonly string[] = [
  ..."ABCDEFGabcdefgzxyZ|:[](){}<>~'\",^_=/0123456789 \n\\!+&*.-$%",
  '"G"',
  '"D7/f+"',
  '"^words"',
  "|:",
  ":|",
  "::",
  "[1",
  "|2",
  "[1,3",
  "(3",
  "(9:8:7",
  "M:6/8\n",
  "M:none\n",
  "M:0/0\n",
  "M:2+3/8\n",
  "[M:9/8]",
  "K:Bb\n",
  "[K:none]",
  "K:HP\n",
  "P:B\n",
  "P:(A2B)3\n",
  "V:2\n",
  "Q:1/4=0\n",
  "Q:1e9\n",
  "L:1/0\n",
  "L:1/64\n",
  "m:~n2=n\n",
  "%%score (1 2)\n",
  "%%MIDI program 1e99\n",
  "[I:x]",
  "w: la\n",
  "X:2\n",
  "\n\n",
  "!fine!",
  "!D.S.!",
  "!segno!",
  "99999999",
];

const measure = (inner: string): string => `<measure number="1">${inner}</measure>\n`;
const chord = (step: string): string =>
  `<harmony><root><root-step>${step}</root-step></root><kind>major</kind></harmony>`;

const SCORES: readonly string[] = [
  `<?xml version="1.0" encoding="UTF-8"?>\n<score-partwise version="3.1"><movement-title>Tin &amp; Gate</movement-title><part-list/><part id="P1">${measure(
    `<attributes><divisions>2</divisions><key><fifths>-1</fifths><mode>minor</mode></key><time><beats>3</beats><beat-type>4</beat-type></time></attributes><sound tempo="90"/><note><rest/><duration>2</duration></note>`,
  )}${measure(
    `<barline location="left"><repeat direction="forward"/></barline>${chord("D")}<note><pitch><step>D</step><alter>-1</alter><octave>4</octave></pitch><duration>6</duration><lyric><text>la</text></lyric></note>`,
  )}${measure(
    `<barline location="left"><ending number="1" type="start"/></barline>${chord("A")}<note><rest/><duration>4</duration></note><backup><duration>2</duration></backup><forward><duration>2</duration></forward>${chord("G")}<note><rest/><duration>2</duration></note><barline location="right"><ending number="1" type="stop"/><repeat direction="backward" times="3"/></barline>`,
  )}${measure(
    `<barline location="left"><ending number="2" type="start"/></barline><harmony><root><root-step>C</root-step><root-alter>1</root-alter></root><kind text="m7b5">half-diminished</kind><bass><bass-step>E</bass-step></bass><degree><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add</degree-type></degree></harmony><note><chord/><rest/><duration>6</duration></note><barline location="right"><ending number="2" type="stop"/></barline><direction><words>D.C. al Fine</words><sound dacapo="yes"/></direction>`,
  )}</part></score-partwise>`,
  writeMusicXml(chartToScore("Key: A\nCapo: 2\n| A | D E7 |\n", wholeNeckPlan, null), {
    notation: true,
  }),
];

const xmlScraps: readonly string[] = [
  ..."<>&;/\"'=? \n0123456789-.",
  "<!DOCTYPE a>",
  '<!DOCTYPE a [<!ENTITY b "c">]>',
  "<!--",
  "-->",
  "<![CDATA[",
  "]]>",
  "&#0;",
  "&#x10ffff;",
  "&#xd800;",
  "&amp;",
  "&nope;",
  "-1",
  "0",
  "1e9",
  "99999999999",
  "NaN",
  "Infinity",
  "",
  "none",
  "<divisions>0</divisions>",
  "<time><beats>0</beats><beat-type>0</beat-type></time>",
  "<time><beats>4</beats><beat-type>4</beat-type></time>",
  "<key><fifths>99</fifths></key>",
  chord("H"),
  chord("F"),
  '<sound segno="a" dalsegno="b" coda="c" tocoda="d" fine="yes"/>',
  '<sound tempo="-4"/>',
  '<barline><repeat direction="backward" times="99999"/></barline>',
  '<barline><ending number="1,2" type="start"/></barline>',
  "<staff-details><staff-lines>5</staff-lines><capo>99</capo></staff-details>",
  "<measure>",
  "</measure>",
  "<part>",
  "</part>",
];

const anyAbc = textNear({
  seeds: TUNES,
  scraps: abcScraps,
  piece: /"[^"]*"|\n|[|:[\]]+|[^"\n|:[\]]/g,
});
const anyXml = textNear({ seeds: SCORES, scraps: xmlScraps, piece: /<[^>]*>|[^<>]+/g });

/** The text as bytes, now and then in another encoding. */
const encoded = (text: fc.Arbitrary<string>): fc.Arbitrary<Uint8Array> =>
  fc.tuple(text, fc.nat({ max: 19 })).map(([all, way]) => {
    if (way === 0) {
      return new Uint8Array(Buffer.from(`\ufeff${all}`, "utf16le"));
    }
    return way === 1 ? new Uint8Array(Buffer.from(all, "latin1")) : strToU8(all);
  });

const CONTAINER =
  '<container><rootfiles><rootfile full-path="score.xml" media-type="application/vnd.recordare.musicxml+xml"/></rootfiles></container>';

const anyArchive = fc
  .record({
    xml: encoded(anyXml),
    name: fc.constantFrom("score.xml", "../score.xml", "a/b.musicxml", "META-INF/x.xml", ""),
    container: fc.option(
      textNear({
        seeds: [CONTAINER],
        scraps: ["../", "score.xml", "\u0000", "<rootfile/>", '"'],
        piece: /<[^>]*>|"[^"]*"/g,
      }),
    ),
    level: fc.constantFrom<0 | 6>(0, 6),
  })
  .map(({ xml, name, container, level }) =>
    zipSync(
      {
        ...(container === null ? {} : { "META-INF/container.xml": strToU8(container) }),
        [name]: xml,
      },
      { level },
    ),
  );

const checkBytes = (bytes: Uint8Array): void => checkImporting(importFile(bytes));

const startingAs = (start: string, texts: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 1, arbitrary: texts },
    { weight: 1, arbitrary: texts.map((text) => start + text) },
  );

/** Files that are brought in: each gives whole charts or a refusal in words. */
export const importAreas: readonly Area[] = [
  makeArea("abc", encoded(startingAs("X:1\nT:x\nK:G\n", anyAbc)), checkBytes),
  makeArea("musicxml", encoded(anyXml), checkBytes),
  makeArea("mxl", bytesNear(anyArchive), checkBytes),
];
