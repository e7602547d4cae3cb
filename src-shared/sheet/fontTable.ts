// The bundled fonts: Source Sans 3 (SIL Open Font License) cut into scripts, and Noto Music (SIL Open
// Font License) for flats, sharps, notes and rests. Names and weights as the packages have them;
// weights by common practice, no published source.

/** A weight of the family. */
export type Face = "text" | "strong";

/** A font file's name here. */
export type FontName = string;

/** One font file. */
export type FontRow = {
  readonly name: FontName;
  /** Where a package keeps it. */
  readonly file: string;
  /** null serves every face. */
  readonly face: Face | null;
  /** As style sheets count it. */
  readonly weight: 400 | 600;
};

const scripts = ["latin", "latin-ext", "greek", "cyrillic", "vietnamese"] as const;
const faces: readonly { readonly face: Face; readonly weight: 400 | 600 }[] = [
  { face: "text", weight: 400 },
  { face: "strong", weight: 600 },
];

/** All fonts; a character is taken from the first that has it. */
export const fontTable: readonly FontRow[] = [
  ...scripts.flatMap((script) =>
    faces.map(
      ({ face, weight }): FontRow => ({
        name: `${script}-${weight}`,
        file: `@fontsource/source-sans-3/files/source-sans-3-${script}-${weight}-normal.woff`,
        face,
        weight,
      }),
    ),
  ),
  {
    name: "music",
    file: "@fontsource/noto-music/files/noto-music-music-400-normal.woff",
    face: null,
    weight: 400,
  },
];
