import { words } from "../wordTable.ts";
import { changesPart } from "./changesPart.ts";
import { type Block, type Column, flow } from "./flow.ts";
import { type HandOutOptions, type HandOutPart, type HandOutSong, partsOf } from "./handOut.ts";
import { paragraphs, partHead, songHead } from "./headings.ts";
import { roadPart } from "./roadPart.ts";
import { shapesPart } from "./shapesPart.ts";
import { tabPart } from "./tabPart.ts";
import { troublePart } from "./troublePart.ts";
import type { Typefaces } from "./typefaces.ts";

/** A song's pages before they are numbered, and what stands on them. */
export type SongPages = {
  readonly title: string;
  readonly columns: readonly Column[];
};

const NOTES_SIZE = 11;
const MOST_TROUBLES = { full: 3, overview: 2, practice: 8 } as const;

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
  { layout }: HandOutOptions,
  width: number,
): readonly Block[] => {
  switch (part) {
    case "notes":
      return notesPart(typefaces, song, width);
    case "shapes":
      return shapesPart(typefaces, song, width);
    case "road":
      return roadPart(typefaces, song, width);
    case "trouble":
      return troublePart(typefaces, song, width, MOST_TROUBLES[layout]);
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
  const blocks = [
    songHead(typefaces, song, width),
    ...(walk.route === null
      ? paragraphs(typefaces, words.handOut.notes, words.handOut.noRoute, width, NOTES_SIZE)
      : []),
    ...parts.flatMap((part) => writePart(part, typefaces, song, options, width)),
  ];
  const title = walk.song.title || words.handOut.untitled;
  return { title, columns: flow(blocks, room) };
};
