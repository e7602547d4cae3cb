import { beatNotes } from "../chart/pulse.ts";
import { meterName } from "../chart/writeChart.ts";
import { noteNameOf } from "../harmony/noteName.ts";
import type { Tuning } from "../neck/neck.ts";
import { words } from "../wordTable.ts";
import { engraved } from "./engraved.ts";
import type { Block } from "./flow.ts";
import type { HandOutSong } from "./handOut.ts";
import { line } from "./pen.ts";
import { plainType, setText, strongType, widthOf, wrapText } from "./setText.ts";
import type { Typefaces } from "./typefaces.ts";

const TITLE_SIZES = [27, 22, 18] as const;
const MOST_TITLE_LINES = 2;
const FACTS = plainType(10.5);
const HEADING = strongType(12.5);

/** The open strings as a player calls them, the short string first and small: "g D G B D". */
const openStrings = (tuning: Tuning): string =>
  tuning.open
    .map((pitch, index) => {
      const name = engraved(noteNameOf(pitch % 12, false));
      return index === 4 ? name.toLowerCase() : name;
    })
    .toReversed()
    .join(" ");

const factsOf = ({ walk }: HandOutSong): string => {
  const { song, neck, tempo } = walk;
  const { handOut } = words;
  return [
    handOut.key(engraved(song.key.tonic), song.key.mode),
    meterName(song.meter),
    handOut.tempo(tempo, beatNotes(song.meter)),
    handOut.tuning(neck.tuning.name, openStrings(neck.tuning)),
    ...(neck.capo > 0 ? [handOut.capo(neck.capo, neck.capo + 5)] : []),
  ].join("  ·  ");
};

/** A song's title, as large as two lines allow, and what a player must know before the first note. */
export const songHead = (typefaces: Typefaces, song: HandOutSong, width: number): Block => {
  const title = song.walk.song.title || words.handOut.untitled;
  const fitting = TITLE_SIZES.map((size) => {
    const type = strongType(size);
    return { size, type, lines: wrapText(typefaces, title, type, width) };
  });
  const smallest = fitting.at(-1);
  const chosen = fitting.find(({ lines }) => lines.length <= MOST_TITLE_LINES) ?? smallest;
  if (chosen === undefined) throw new RangeError("no size to set a title in");
  const { size, type, lines } = chosen;
  const titleHeight = lines.length * size * 1.12;
  const facts = wrapText(typefaces, factsOf(song), FACTS, width);
  const factsTop = titleHeight + 3;
  const rule = factsTop + facts.length * FACTS.size * 1.35 + 5;
  return {
    kind: "head",
    name: title,
    height: rule + 1,
    before: 0,
    keepsNext: true,
    marks: [
      ...lines.flatMap((text, index) =>
        setText(typefaces, text, type, 0, size * (0.82 + index * 1.12)),
      ),
      ...facts.flatMap((text, index) =>
        setText(typefaces, text, FACTS, 0, factsTop + FACTS.size * (1 + index * 1.35)),
      ),
      line([0, rule], [width, rule], 1.2),
    ],
  };
};

/** The title of a list of songs. */
export const contentsHead = (typefaces: Typefaces, title: string, width: number): Block => ({
  kind: "head",
  name: title,
  height: 46,
  before: 0,
  keepsNext: true,
  marks: [
    ...setText(typefaces, title, strongType(TITLE_SIZES[0]), 0, TITLE_SIZES[0] * 0.82),
    line([0, 36], [width, 36], 1.2),
  ],
});

/** A part's name with a hairline to the margin; a few words after it say how to read the part. */
export const partHead = (
  typefaces: Typefaces,
  name: string,
  hint: string,
  width: number,
): Block => {
  const at = widthOf(typefaces, name, HEADING) + 8;
  const hintType = plainType(8.5, "soft");
  const hintLeft = width - widthOf(typefaces, hint, hintType);
  return {
    kind: "head",
    name,
    height: 15,
    before: 16,
    keepsNext: true,
    marks: [
      ...setText(typefaces, name, HEADING, 0, 11),
      line([at, 8], [hint === "" ? width : hintLeft - 8, 8], 0.5, "line"),
      ...setText(typefaces, hint, hintType, hintLeft, 11),
    ],
  };
};

/** Paragraphs of text in lines, each line a block, so that a page may break between them. */
export const paragraphs = (
  typefaces: Typefaces,
  name: string,
  text: string,
  width: number,
  size: number,
): readonly Block[] => {
  const type = plainType(size);
  const lines = wrapText(typefaces, text.trim(), type, width);
  return lines.map((each, index) => ({
    kind: "matter" as const,
    name,
    height: size * 1.32,
    before: index === 0 ? 4 : 0,
    keepsNext: index === 0 && lines.length > 1,
    marks: setText(typefaces, each, type, 0, size),
  }));
};
