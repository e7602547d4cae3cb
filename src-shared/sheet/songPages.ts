import { words } from "../wordTable.ts";
import { changesPart } from "./changesPart.ts";
import { type Block, type Column, flow } from "./flow.ts";
import { type HandOutOptions, type HandOutPart, type HandOutSong, partsOf } from "./handOut.ts";
import { paragraphs, partHead, songHead } from "./headings.ts";
import { roadPart } from "./roadPart.ts";
import { shapesPart } from "./shapesPart.ts";
import { tabPart } from "./tabPart.ts";
import { type TroubleLook, troublePart } from "./troublePart.ts";
import type { Typefaces } from "./typefaces.ts";

/** A song's pages before they are numbered, and what stands on them. */
export type SongPages = {
  readonly title: string;
  readonly columns: readonly Column[];
};

const NOTES_SIZE = 11;

/** How closely a page is filled. */
type Density = {
  /** Shapes in a row, bars on a line of the road, hard changes. */
  readonly shapes: number;
  readonly bars: number;
  readonly troubles: TroubleLook;
};

/** What is tried in turn: an overview takes the first that gives one page, else the last. */
const densities: Readonly<Record<HandOutOptions["layout"], readonly Density[]>> = {
  full: [{ shapes: 5, bars: 8, troubles: { most: 3, short: false } }],
  overview: [
    { shapes: 5, bars: 8, troubles: { most: 2, short: false } },
    { shapes: 5, bars: 8, troubles: { most: 4, short: true } },
    { shapes: 6, bars: 8, troubles: { most: 3, short: true } },
    { shapes: 7, bars: 16, troubles: { most: 2, short: true } },
    { shapes: 7, bars: 16, troubles: { most: 1, short: true } },
  ],
  practice: [{ shapes: 5, bars: 8, troubles: { most: 8, short: false } }],
};

const notesPart = (
  typefaces: Typefaces,
  { notes }: HandOutSong,
  width: number,
): readonly Block[] =>
  notes.trim() === ""
    ? []
    : [
        partHead(typefaces, words.handOut.notes, "", width),
        ...paragraphs(typefaces, words.handOut.notes, notes, width, NOTES_SIZE),
      ];

const writePart = (
  part: HandOutPart,
  typefaces: Typefaces,
  song: HandOutSong,
  density: Density,
  width: number,
): readonly Block[] => {
  switch (part) {
    case "notes":
      return notesPart(typefaces, song, width);
    case "shapes":
      return shapesPart(typefaces, song, width, density.shapes);
    case "road":
      return roadPart(typefaces, song, width, density.bars);
    case "trouble":
      return troublePart(typefaces, song, width, density.troubles);
    case "tablature":
      return tabPart(typefaces, song, width);
    case "changes":
      return changesPart(typefaces, song, width);
  }
};

/** A song's hand-out on pages with `width` by `room` points inside the margins. */
export const songPages = (
  typefaces: Typefaces,
  song: HandOutSong,
  options: HandOutOptions,
  width: number,
  room: number,
): SongPages => {
  const { walk } = song;
  const parts = partsOf[options.layout].filter((part) => !options.without.includes(part));
  const blocksAt = (density: Density): readonly Block[] => [
    songHead(typefaces, song, width),
    ...(walk.route === null
      ? paragraphs(typefaces, words.handOut.notes, words.handOut.noRoute, width, NOTES_SIZE)
      : []),
    ...parts.flatMap((part) => writePart(part, typefaces, song, density, width)),
  ];
  const title = walk.song.title || words.handOut.untitled;
  let columns: readonly Column[] = [];
  for (const density of densities[options.layout]) {
    columns = flow(blocksAt(density), room);
    if (columns.length === 1) break;
  }
  return { title, columns };
};
