/// <reference path="./pdfkit.d.ts" />
import PDFDocument from "pdfkit";
import { type Book, type Ink, type Page, whiteness } from "./page.ts";
import type { FontFile } from "./typefaces.ts";

const grey = (ink: Ink): [number, number, number] => {
  const level = Math.round(whiteness[ink] * 255);
  return [level, level, level];
};

const drawPage = (pdf: PDFDocument, { marks, links }: Page): void => {
  for (const mark of marks) {
    if (mark.kind === "text") {
      pdf.font(mark.font).fontSize(mark.size).fillColor(grey(mark.ink));
      pdf.text(mark.text, mark.x, mark.y, { lineBreak: false, baseline: "alphabetic" });
      continue;
    }
    const { d, fill, stroke } = mark;
    if (fill !== null) pdf.fillColor(grey(fill));
    if (stroke !== null) pdf.strokeColor(grey(stroke.ink)).lineWidth(stroke.width);
    pdf.path(d);
    if (fill !== null && stroke !== null) pdf.fillAndStroke();
    else if (fill !== null) pdf.fill();
    else if (stroke !== null) pdf.stroke();
  }
  for (const { x, y, width, height, page } of links) {
    pdf.goTo(x, y, width, height, `page ${page}`);
  }
};

const drawOutline = (pdf: PDFDocument, { outline }: Book): void => {
  for (const { title, page, parts } of outline) {
    const entry = pdf.outline.addItem(title, { expanded: false, pageNumber: page });
    for (const part of parts) {
      entry.addItem(part.title, { expanded: false, pageNumber: part.page });
    }
  }
};

const joined = (chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(chunks.reduce((sum, { byteLength }) => sum + byteLength, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.byteLength;
  }
  return bytes;
};

/**
 * A book as a PDF file: vector drawing, only the used glyphs of the fonts, an outline, links in the
 * contents. The same book made at the same time gives the same bytes. `onPage` is told how many pages
 * are drawn.
 */
export const writePdf = (
  book: Book,
  fonts: readonly FontFile[],
  made: Date,
  onPage: (done: number) => void = () => undefined,
): Promise<Uint8Array<ArrayBuffer>> =>
  new Promise((done, failed) => {
    const pdf = new PDFDocument({
      size: [book.width, book.height],
      margin: 0,
      font: null,
      autoFirstPage: false,
      bufferPages: true,
      pdfVersion: "1.7",
      lang: "en",
      displayTitle: true,
      info: { Title: book.title, Creator: "Shortslide", CreationDate: made },
    });
    const chunks: Uint8Array[] = [];
    pdf.on("data", (chunk) => chunks.push(chunk));
    pdf.on("end", () => done(joined(chunks)));
    pdf.on("error", failed);
    for (const { name, bytes } of fonts) pdf.registerFont(name, bytes);
    for (const [index, page] of book.pages.entries()) {
      pdf.addPage();
      pdf.addNamedDestination(`page ${index}`, "Fit");
      drawPage(pdf, page);
      onPage(index + 1);
    }
    drawOutline(pdf, book);
    pdf.end();
  });
