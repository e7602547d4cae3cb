import music from "@fontsource/noto-music/files/noto-music-music-400-normal.woff?url";
import cyrillic400 from "@fontsource/source-sans-3/files/source-sans-3-cyrillic-400-normal.woff?url";
import cyrillic600 from "@fontsource/source-sans-3/files/source-sans-3-cyrillic-600-normal.woff?url";
import greek400 from "@fontsource/source-sans-3/files/source-sans-3-greek-400-normal.woff?url";
import greek600 from "@fontsource/source-sans-3/files/source-sans-3-greek-600-normal.woff?url";
import latin400 from "@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff?url";
import latin600 from "@fontsource/source-sans-3/files/source-sans-3-latin-600-normal.woff?url";
import latinExt400 from "@fontsource/source-sans-3/files/source-sans-3-latin-ext-400-normal.woff?url";
import latinExt600 from "@fontsource/source-sans-3/files/source-sans-3-latin-ext-600-normal.woff?url";
import vietnamese400 from "@fontsource/source-sans-3/files/source-sans-3-vietnamese-400-normal.woff?url";
import vietnamese600 from "@fontsource/source-sans-3/files/source-sans-3-vietnamese-600-normal.woff?url";
import type { FontName } from "../../../src-shared/sheet/fontTable.ts";
import type { FontFile } from "../../../src-shared/sheet/typefaces.ts";

const addresses: Readonly<Record<FontName, string>> = {
  "latin-400": latin400,
  "latin-600": latin600,
  "latin-ext-400": latinExt400,
  "latin-ext-600": latinExt600,
  "greek-400": greek400,
  "greek-600": greek600,
  "cyrillic-400": cyrillic400,
  "cyrillic-600": cyrillic600,
  "vietnamese-400": vietnamese400,
  "vietnamese-600": vietnamese600,
  music: music,
};

/** The fonts of the printed pages, fetched when they are first needed. */
export const fetchSheetFonts = (): Promise<readonly FontFile[]> =>
  Promise.all(
    Object.entries(addresses).map(async ([name, address]) => {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error(`the font ${name} could not be read (${answer.status}).`);
      return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
    }),
  );

/** The family under which the screen knows a font of the printed pages. */
export const familyOf = (name: FontName): string => `sheet-${name}`;

/** Makes the fonts known to the page, each under a name of its own; call what comes back to take them out. */
export const showSheetFonts = async (files: readonly FontFile[]): Promise<() => void> => {
  const faces = files.map(({ name, bytes }) => new FontFace(familyOf(name), bytes.slice().buffer));
  await Promise.all(faces.map((face) => face.load()));
  for (const face of faces) document.fonts.add(face);
  return () => {
    for (const face of faces) document.fonts.delete(face);
  };
};
