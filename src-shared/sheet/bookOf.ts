import { words } from "../wordTable.ts";
import { engraved } from "./engraved.ts";
import { type Block, type Column, flow, printColumn } from "./flow.ts";
import type { HandOutOptions, HandOutSong } from "./handOut.ts";
import { contentsHead } from "./headings.ts";
import type { Book, Link, Mark, OutlineEntry, Page } from "./page.ts";
import { MARGIN, type Paper, paperNamed } from "./paper.ts";
import { line } from "./pen.ts";
import { cutText, plainType, setText, widthOf } from "./setText.ts";
import { type SongPages, songPages } from "./songPages.ts";
import type { Typefaces } from "./typefaces.ts";

const FOOT = plainType(8.5, "soft");
const FOOT_HEIGHT = 20;
const ENTRY = plainType(12);
const ENTRY_HEIGHT = 20;

/** A line of the contents: the song, a row of dots, its page. */
const entryBlock = (
  typefaces: Typefaces,
  song: HandOutSong,
  title: string,
  page: number,
  width: number,
): Block => {
  const { key } = song.walk.song;
  const number = `${page + 1}`;
  const keyWords = engraved(`${key.tonic}${key.mode === "minor" ? "m" : ""}`);
  const room = width - 110;
  const name = cutText(typefaces, title, ENTRY, room);
  const from = widthOf(typefaces, name, ENTRY) + 8;
  const keyAt = width - 70;
  return {
    kind: "matter",
    name: title,
    height: ENTRY_HEIGHT,
    before: 0,
    keepsNext: false,
    marks: [
      ...setText(typefaces, name, ENTRY, 0, 14),
      line([from, 12], [keyAt - 8, 12], 0.4, "line"),
      ...setText(typefaces, keyWords, ENTRY, keyAt, 14),
      ...setText(typefaces, number, ENTRY, width, 14, "right"),
    ],
  };
};

type Inside = { readonly width: number; readonly room: number };

const contentsColumns = (
  typefaces: Typefaces,
  songs: readonly HandOutSong[],
  all: readonly SongPages[],
  first: readonly number[],
  title: string,
  { width, room }: Inside,
): readonly Column[] =>
  flow(
    [
      contentsHead(typefaces, title, width),
      ...songs.map((song, index) =>
        entryBlock(typefaces, song, all[index]?.title ?? "", first[index] ?? 0, width),
      ),
    ],
    room,
  );

const footMarks = (
  typefaces: Typefaces,
  paper: Paper,
  left: string,
  right: string,
): readonly Mark[] => {
  const y = paper.height - MARGIN - 2;
  const width = paper.width - 2 * MARGIN;
  return [
    ...setText(typefaces, cutText(typefaces, left, FOOT, width - 90), FOOT, MARGIN, y),
    ...setText(typefaces, right, FOOT, paper.width - MARGIN, y, "right"),
  ];
};

/** The songs' parts that have a heading of their own, each with the page of the book it begins on. */
const outlineOf = ({ title, columns }: SongPages, first: number): OutlineEntry => ({
  title,
  page: first,
  parts: columns.flatMap((column, index) =>
    column.flatMap(({ block }) =>
      block.kind === "head" && block.name !== title
        ? [{ title: block.name, page: first + index }]
        : [],
    ),
  ),
});

const startingAt = (columns: readonly { readonly length: number }[], from: number): number[] => {
  let at = from;
  return columns.map(({ length }) => {
    const first = at;
    at += length;
    return first;
  });
};

/**
 * Songs as one book of printed pages: each song begins on a page of its own; several have a list of
 * contents before them under `title`. The same songs and options give the same book.
 */
export const bookOf = (
  typefaces: Typefaces,
  songs: readonly HandOutSong[],
  options: HandOutOptions,
  title: string,
): Book => {
  const paper = paperNamed(options.paper);
  const inside = { width: paper.width - 2 * MARGIN, room: paper.height - 2 * MARGIN - FOOT_HEIGHT };
  const all = songs.map((song) => songPages(typefaces, song, options, inside.width, inside.room));
  const several = songs.length > 1;
  const lengths = all.map(({ columns }) => columns);
  // How long the contents are does not depend on the numbers in them.
  const contentsWith = (first: readonly number[]): readonly Column[] =>
    several ? contentsColumns(typefaces, songs, all, first, title, inside) : [];
  const firsts = startingAt(lengths, contentsWith([]).length);
  const contents = contentsWith(firsts);
  const total = contents.length + lengths.reduce((sum, { length }) => sum + length, 0);
  const pageOf = (column: Column, foot: string, index: number, links: readonly Link[]): Page => {
    const { marks, regions } = printColumn(column, MARGIN, MARGIN);
    const numbered = words.handOut.ofPages(index + 1, total);
    return { marks: [...marks, ...footMarks(typefaces, paper, foot, numbered)], regions, links };
  };
  let listed = 0;
  const pages = [
    ...contents.map((column, index) => {
      const entries = column.filter(({ block }) => block.kind === "matter");
      const links = entries.flatMap(({ block, top }, at): readonly Link[] => {
        const page = firsts[listed + at];
        const y = MARGIN + top;
        return page === undefined
          ? []
          : [{ x: MARGIN, y, width: inside.width, height: block.height, page }];
      });
      listed += entries.length;
      return pageOf(column, title, index, links);
    }),
    ...all.flatMap((song, at) =>
      song.columns.map((column, index) =>
        pageOf(column, song.title, (firsts[at] ?? 0) + index, []),
      ),
    ),
  ];
  return {
    title: several ? title : (all[0]?.title ?? title),
    width: paper.width,
    height: paper.height,
    pages,
    outline: all.map((song, index) => outlineOf(song, firsts[index] ?? 0)),
  };
};
