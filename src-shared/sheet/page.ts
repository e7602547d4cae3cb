import type { FontName } from "./fontTable.ts";

/**
 * How dark a mark is, so that it prints the same in black and white: `ink` is black, `soft` for what
 * is read second, `line` for hairlines, `tint` for grounds, `paper` is white.
 */
export type Ink = "ink" | "soft" | "line" | "tint" | "paper";

/** Each ink as a share of white, 0 (black) to 1. */
export const whiteness: Readonly<Record<Ink, number>> = {
  ink: 0,
  soft: 0.3,
  line: 0.55,
  tint: 0.9,
  paper: 1,
};

/** A piece of text in one font, on one line. Lengths in points (1/72 inch), y downwards. */
export type TextMark = {
  readonly kind: "text";
  readonly text: string;
  /** Its left edge. */
  readonly x: number;
  /** The line it stands on. */
  readonly y: number;
  readonly width: number;
  readonly font: FontName;
  readonly size: number;
  readonly ink: Ink;
};

/** A drawn form: an outline in SVG path syntax with M, L, C and Z, all absolute, in points. */
export type PathMark = {
  readonly kind: "path";
  readonly d: string;
  readonly fill: Ink | null;
  readonly stroke: { readonly ink: Ink; readonly width: number } | null;
};

/** One thing on a page; later ones lie on top. */
export type Mark = TextMark | PathMark;

/** What stands where on a page: a system is never cut in two. Points from the page's top. */
export type Region = {
  readonly kind: "head" | "system" | "matter";
  /** "bars 5 to 8", for whoever looks for it. */
  readonly name: string;
  readonly top: number;
  readonly bottom: number;
};

/** A place that leads to another page when it is pressed. */
export type Link = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** 0-based page of the book. */
  readonly page: number;
};

/** A printed page. */
export type Page = {
  readonly marks: readonly Mark[];
  readonly regions: readonly Region[];
  readonly links: readonly Link[];
};

/** A line of the list of contents that a reader's program shows beside the pages. */
export type OutlineEntry = {
  readonly title: string;
  /** 0-based page of the book. */
  readonly page: number;
  readonly parts: readonly { readonly title: string; readonly page: number }[];
};

/** Pages of one size that belong together, as they are printed. */
export type Book = {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly pages: readonly Page[];
  readonly outline: readonly OutlineEntry[];
};
