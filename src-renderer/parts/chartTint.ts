import type { Extension } from "@codemirror/state";
import {
  Decoration,
  type DecorationSet,
  type EditorView,
  ViewPlugin,
  type ViewUpdate,
} from "@codemirror/view";
import { chartLine, fieldsOf } from "../../src-shared/chart/fields.ts";
import { settleEndings } from "../../src-shared/chart/readEndings.ts";
import { type TextLine, textLines } from "../../src-shared/chart/spot.ts";
import { type Token, tokensOf } from "../../src-shared/chart/tokens.ts";

/** A stretch of text and what it is to a chart. */
export type Tint = {
  readonly from: number;
  readonly to: number;
  readonly kind: "header-name" | "label" | "ending" | "bar-line" | "comment";
};

const tintOfToken: Readonly<Record<Token["kind"], Tint["kind"] | null>> = {
  label: "label",
  ending: "ending",
  barLine: "bar-line",
  word: null,
  stray: null,
  lineEnd: null,
};

const commentIn = (line: TextLine, read: TextLine): readonly Tint[] => {
  const from = read.offset + read.text.length;
  const to = line.offset + line.text.length;
  return from < to ? [{ from, to, kind: "comment" }] : [];
};

/**
 * What stands out in a chart, in order. The whole text is looked at, since whether a figure behind a
 * bar line is an ending or a degree is told by what comes later.
 */
export const tintsOf = (text: string): readonly Tint[] => {
  const lines = textLines(text).map((line) => ({ line, read: chartLine(line) }));
  const headers = lines.flatMap(({ read }) =>
    read.kind === "fields"
      ? fieldsOf(read.line).map(
          ({ word }): Tint => ({
            from: word.offset,
            to: word.offset + word.length + 1,
            kind: "header-name",
          }),
        )
      : [],
  );
  const body = lines.flatMap(({ read }) => (read.kind === "body" ? tokensOf(read.line) : []));
  const tokens = settleEndings(body).flatMap((token): readonly Tint[] => {
    const kind = tintOfToken[token.kind];
    return kind ? [{ from: token.offset, to: token.offset + token.length, kind }] : [];
  });
  const comments = lines.flatMap(({ line, read }) => commentIn(line, read.line));
  return [...headers, ...tokens, ...comments].toSorted((a, b) => a.from - b.from);
};

const marks = {
  "header-name": Decoration.mark({ class: "chart-header-name" }),
  label: Decoration.mark({ class: "chart-label" }),
  ending: Decoration.mark({ class: "chart-ending" }),
  "bar-line": Decoration.mark({ class: "chart-bar-line" }),
  comment: Decoration.mark({ class: "chart-comment" }),
} as const;

const inView = (tints: readonly Tint[], { visibleRanges }: EditorView): DecorationSet =>
  Decoration.set(
    tints
      .filter((tint) => visibleRanges.some(({ from, to }) => tint.from <= to && tint.to >= from))
      .map(({ from, to, kind }) => marks[kind].range(from, to)),
  );

/** Headers, labels, bar lines and comments in their own ink, by the chart's own reader. */
export const chartTint: Extension = ViewPlugin.fromClass(
  class {
    decorations: DecorationSet;
    #tints: readonly Tint[];

    constructor(view: EditorView) {
      this.#tints = tintsOf(view.state.doc.toString());
      this.decorations = inView(this.#tints, view);
    }

    update({ docChanged, viewportChanged, view }: ViewUpdate): void {
      if (docChanged) this.#tints = tintsOf(view.state.doc.toString());
      if (docChanged || viewportChanged) this.decorations = inView(this.#tints, view);
    }
  },
  { decorations: (plugin) => plugin.decorations },
);
