import { type Trouble, troubleList } from "../practice/troubleList.ts";
import { sayWay } from "../wording/sayAim.ts";
import { sayFingers, sayFrets, sayLeg } from "../wording/sayLeg.ts";
import { words } from "../wordTable.ts";
import { fastestTempo, sayBars } from "./changesPart.ts";
import type { Block } from "./flow.ts";
import type { HandOutSong } from "./handOut.ts";
import { paragraphs, partHead } from "./headings.ts";
import type { Mark } from "./page.ts";
import { line, outlined, polygon, rectangle, solid } from "./pen.ts";
import { cutText, plainType, setText, strongType, widthOf, wrapText } from "./setText.ts";
import { neckHeight, smallNeck } from "./smallNeck.ts";
import { printedChord } from "./tabNames.ts";
import type { Typefaces } from "./typefaces.ts";

const NECK = 80;
const ARROW = 40;
const TEXT_LEFT: number = NECK * 2 + ARROW + 18;
const NAME = strongType(12);
const TEXT = plainType(10);
const LINE = 13;
const INDENT = 12;
const CHORD = strongType(10);
const BOX = 8;
const SHORT_LEFT = 96;
const STEPS = 5;
/** The first tempo to tick off, as a share of the last. A design choice. */
const FIRST_STEP = 0.5;

/** How many changes, and how much of each. */
export type TroubleLook = { readonly most: number; readonly short: boolean };

/** Whole tempos from half of the goal up to it. */
const tempoSteps = (goal: number): readonly number[] => [
  ...new Set(
    Array.from({ length: STEPS }, (_, index) =>
      Math.max(1, Math.round(goal * (FIRST_STEP + ((1 - FIRST_STEP) * index) / (STEPS - 1)))),
    ),
  ),
];

const arrowMarks = (typefaces: Typefaces, x: number, y: number, says: string): readonly Mark[] => [
  line([x + 4, y], [x + ARROW - 9, y], 1.1),
  polygon(
    [
      [x + ARROW - 10, y - 3.2],
      [x + ARROW - 4, y],
      [x + ARROW - 10, y + 3.2],
    ],
    solid,
  ),
  ...setText(typefaces, says, strongType(8.5), x + ARROW / 2, y - 5, "middle"),
];

const tempoBoxes = (typefaces: Typefaces, goal: number, x: number, y: number): readonly Mark[] => {
  const label = words.handOut.drillTempos;
  let at = x + widthOf(typefaces, label, TEXT) + 7;
  return [
    ...setText(typefaces, label, TEXT, x, y),
    ...tempoSteps(goal).flatMap((tempo) => {
      const left = at;
      at += BOX + 4 + widthOf(typefaces, `${tempo}`, TEXT) + 12;
      return [
        rectangle(left, y - BOX + 0.8, BOX, BOX, { ...outlined(0.8), fill: "paper" }),
        ...setText(typefaces, `${tempo}`, TEXT, left + BOX + 4, y),
      ];
    }),
  ];
};

/** A line of a drill or of what is said before it; drills are numbered. */
type Says = { readonly number: string; readonly text: string };

const linesOf = (song: HandOutSong, { hardest }: Trouble): readonly Says[] => {
  const { leg, from, to } = hardest;
  const { handOut } = words;
  const fastest = fastestTempo(song, hardest);
  const need = handOut.needs(Math.round(leg.need), Math.round(leg.window));
  const ceiling = fastest === null ? "" : `, ${handOut.fastest(fastest)}`;
  return [
    {
      number: "",
      text: `${sayLeg(leg, to, song.walk.neck.tuning)}. ${sayFingers(leg)}.`,
    },
    { number: "", text: `${sayWay(leg.way).name}. ${need}${ceiling}.` },
    {
      number: "1",
      text: handOut.drillSlide(printedChord(from.chord), printedChord(to.chord)),
    },
    { number: "2", text: handOut.drillSlow },
    { number: "3", text: handOut.drillSong },
  ];
};

const troubleBlock = (
  typefaces: Typefaces,
  song: HandOutSong,
  trouble: Trouble,
  index: number,
  width: number,
): Block => {
  const { leg, from, to } = trouble.hardest;
  const { handOut } = words;
  const neckTop = 13;
  const second = NECK + ARROW;
  const name = `${index + 1}. ${handOut.change(printedChord(from.chord), printedChord(to.chord))}`;
  const bars = sayBars(trouble.places);
  const lines = linesOf(song, trouble).flatMap(({ number, text }): readonly Says[] => {
    const room = width - TEXT_LEFT - (number === "" ? 0 : INDENT);
    return wrapText(typefaces, text, TEXT, room).map((each, at) => ({
      number: at === 0 || number === "" ? number : " ",
      text: each,
    }));
  });
  const boxes = 12 + LINE * (lines.length + 1);
  const nameWidth = widthOf(typefaces, name, NAME);
  return {
    kind: "matter",
    name: `${handOut.trouble} ${name}`,
    height: Math.max(boxes + 4, neckTop + neckHeight(NECK)),
    before: index === 0 ? 6 : 13,
    keepsNext: false,
    marks: [
      ...setText(typefaces, printedChord(from.chord), CHORD, 0, 9.5),
      ...setText(typefaces, printedChord(to.chord), CHORD, second, 9.5),
      ...smallNeck(typefaces, from.voicing, 0, neckTop, NECK),
      ...arrowMarks(typefaces, NECK, neckTop + NECK * 0.24, sayFrets(leg.frets)),
      ...smallNeck(typefaces, to.voicing, second, neckTop, NECK),
      ...setText(typefaces, name, NAME, TEXT_LEFT, 10),
      ...setText(
        typefaces,
        handOut.inBars(bars),
        plainType(9, "soft"),
        TEXT_LEFT + nameWidth + 8,
        10,
      ),
      ...lines.flatMap(({ number, text }, at) => {
        const y = 12 + LINE * (at + 1);
        const left = TEXT_LEFT + (number === "" ? 0 : INDENT);
        return [
          ...setText(typefaces, number.trim(), strongType(TEXT.size), TEXT_LEFT, y),
          ...setText(typefaces, text, TEXT, left, y),
        ];
      }),
      ...tempoBoxes(typefaces, song.walk.tempo, TEXT_LEFT + INDENT, boxes),
    ],
  };
};

/** The same in two lines, without pictures. */
const shortBlock = (
  typefaces: Typefaces,
  song: HandOutSong,
  trouble: Trouble,
  index: number,
  width: number,
): Block => {
  const { from, to } = trouble.hardest;
  const { handOut } = words;
  const name = `${index + 1}. ${handOut.change(printedChord(from.chord), printedChord(to.chord))}`;
  const [how, when] = linesOf(song, trouble);
  const text = `${handOut.inBars(sayBars(trouble.places))}. ${how?.text ?? ""} ${when?.text ?? ""}`;
  const lines = wrapText(typefaces, text, TEXT, width - SHORT_LEFT);
  return {
    kind: "matter",
    name: `${handOut.trouble} ${name}`,
    height: LINE * lines.length,
    before: index === 0 ? 4 : 2,
    keepsNext: false,
    marks: [
      ...setText(typefaces, cutText(typefaces, name, CHORD, SHORT_LEFT - 8), CHORD, 0, 10),
      ...lines.flatMap((each, at) => setText(typefaces, each, TEXT, SHORT_LEFT, 10 + LINE * at)),
    ],
  };
};

/**
 * The hardest changes, at most `most` of them, each with its two grips, how it is made and its drills; shortly:
 * how it is made alone.
 */
export const troublePart = (
  typefaces: Typefaces,
  song: HandOutSong,
  width: number,
  { most, short }: TroubleLook,
): readonly Block[] => {
  const { handOut } = words;
  if (song.walk.route === null) return [];
  const head = partHead(typefaces, handOut.trouble, handOut.troubleHint, width);
  const troubles = troubleList(song.walk, []).slice(0, most);
  return troubles.length === 0
    ? [head, ...paragraphs(typefaces, handOut.trouble, handOut.noTrouble, width, TEXT.size)]
    : [
        head,
        ...troubles.map((trouble, index) =>
          (short ? shortBlock : troubleBlock)(typefaces, song, trouble, index, width),
        ),
      ];
};
