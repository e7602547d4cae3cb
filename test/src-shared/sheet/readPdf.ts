import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A run of text as an independent reader finds it; points from the page's left top corner. */
export type PdfText = {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
};

/** What a PDF says, read by pdf.js. */
export type ReadPdf = {
  readonly title: string;
  readonly outline: readonly { readonly title: string; readonly parts: readonly string[] }[];
  readonly pages: readonly {
    readonly width: number;
    readonly height: number;
    readonly texts: readonly PdfText[];
    readonly links: number;
  }[];
};

type Raw = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>["promise"]>["getOutline"]>>;

const outlineOf = (raw: Raw): ReadPdf["outline"] =>
  (raw ?? []).map(({ title, items }) => ({
    title,
    parts: items.map((item: { readonly title: string }) => item.title),
  }));

/** Reads a PDF's text, places, sizes and outline. */
export const readPdf = async (bytes: Uint8Array): Promise<ReadPdf> => {
  const task = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const { info } = await pdf.getMetadata();
  const pages = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent({ disableNormalization: true });
    const texts = items.flatMap((item): readonly PdfText[] => {
      if (!("str" in item) || item.str === "") return [];
      const [, , , , x = 0, y = 0] = item.transform as readonly number[];
      return [{ text: item.str, x, y: height - y, width: item.width }];
    });
    const annotations = await page.getAnnotations();
    pages.push({ width, height, texts, links: annotations.length });
  }
  const outline = outlineOf(await pdf.getOutline());
  await task.destroy();
  const title = "Title" in info ? String(info.Title) : "";
  return { title, outline, pages };
};

const NEAR = 0.06;
const SPACE = 6;

/**
 * The run that has this text at this place: alone, or within a line that the reader has joined from
 * several; undefined where there is none. Points.
 */
export const runAt = (
  texts: readonly PdfText[],
  text: string,
  x: number,
  y: number,
): PdfText | undefined => {
  const wanted = text.trim();
  // The reader leaves off a space that begins a run.
  const slack = text.startsWith(" ") ? SPACE : NEAR;
  const onLine = texts.filter((each) => Math.abs(each.y - y) < NEAR);
  return (
    onLine.find((each) => each.text.trim() === wanted && Math.abs(each.x - x) < slack) ??
    onLine.find(
      (each) =>
        each.text.includes(wanted) && each.x - slack <= x && x <= each.x + each.width + NEAR,
    )
  );
};
