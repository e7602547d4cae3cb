/** A size of paper. */
export type PaperName = "a4" | "letter";

/** A sheet of paper in points (1/72 inch), upright. */
export type Paper = {
  readonly name: PaperName;
  readonly width: number;
  readonly height: number;
};

const POINTS_PER_MM = 72 / 25.4;

/** The sizes, the usual one first. Source: ISO 216 (A4, 210 by 297 mm); ANSI/ASME Y14.1 (Letter, 8.5 by 11 inches). */
export const papers: readonly [Paper, ...Paper[]] = [
  { name: "a4", width: 210 * POINTS_PER_MM, height: 297 * POINTS_PER_MM },
  { name: "letter", width: 8.5 * 72, height: 11 * 72 },
];

/** White on every side that no mark enters: 16 mm, more than any printer leaves blank. */
export const MARGIN = 45;

/**
 * The paper of that name.
 * @example paperNamed("letter").height // => 792
 */
export const paperNamed = (name: PaperName): Paper =>
  papers.find((each) => each.name === name) ?? papers[0];

const letterRegions: readonly string[] = ["US", "CA", "MX", "PH", "CL", "CO", "VE"];

/**
 * The paper that is usual where a language tag (BCP 47) comes from: Letter in North America and where
 * it is used as there, A4 elsewhere. Source: the paperSize data of the Unicode CLDR, from memory.
 * @example usualPaper("en-US") // => "letter"
 * @example usualPaper("de") // => "a4"
 */
export const usualPaper = (locale: string): PaperName => {
  const region = /^[a-z]{2,3}(?:-[a-z]{4})?-([a-z]{2})\b/i.exec(locale)?.[1]?.toUpperCase();
  return region !== undefined && letterRegions.includes(region) ? "letter" : "a4";
};
