import type { Walk } from "../../src-shared/chartToScore.ts";
import { bookOf } from "../../src-shared/sheet/bookOf.ts";
import type { HandOutOptions } from "../../src-shared/sheet/handOut.ts";
import { openTypefaces } from "../../src-shared/sheet/typefaces.ts";
import { writePdf } from "../../src-shared/sheet/writePdf.ts";
import { words } from "../../src-shared/wordTable.ts";
import { readFonts } from "./readFonts.ts";

/** Songs as one PDF; what its fonts lack is told to `onCaution`. */
export const handOutPdf = async (
  walks: readonly Walk[],
  options: HandOutOptions,
  onCaution: (says: string) => void,
): Promise<Uint8Array> => {
  const fonts = readFonts();
  const typefaces = openTypefaces(fonts);
  const missing = typefaces.missing(walks.map(({ song }) => song.title).join(""));
  if (missing.length > 0) {
    onCaution(words.handOut.missingSigns(missing.join(" ")));
  }
  const songs = walks.map((walk) => ({ walk, notes: "" }));
  return writePdf(bookOf(typefaces, songs, options, words.handOut.songs), fonts, new Date());
};
