import { readFonts } from "../../../src-main/command/readFonts.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { bookOf } from "../../../src-shared/sheet/bookOf.ts";
import type { HandOutOptions, HandOutSong } from "../../../src-shared/sheet/handOut.ts";
import type { Book, Mark, PathMark, TextMark } from "../../../src-shared/sheet/page.ts";
import { openTypefaces } from "../../../src-shared/sheet/typefaces.ts";

/** The bundled fonts. */
export const fonts = readFonts();
export const typefaces = openTypefaces(fonts);

/** A chart as a song to hand out, planned as a new song on the screen is. */
export const toHandOut = (chart: string, notes = ""): HandOutSong => ({
  walk: chartToScore(chart, newSongSettings.plan, null, newSongSettings.picking),
  notes,
});

/** The whole hand-out on A4, unless something else is asked for. */
export const printed = (
  songs: readonly HandOutSong[],
  options: Partial<HandOutOptions> = {},
): Book =>
  bookOf(typefaces, songs, { paper: "a4", layout: "full", without: [], ...options }, "Songs");

export const isText = (mark: Mark): mark is TextMark => mark.kind === "text";

/** The box round a mark, with half the width of its line; letters reach a bit over and under theirs. */
export const boxOf = (
  mark: Mark,
): {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
} =>
  mark.kind === "text"
    ? {
        left: mark.x,
        right: mark.x + mark.width,
        top: mark.y - mark.size * (mark.font === "music" ? 0.62 : 0.75),
        bottom: mark.y + mark.size * 0.25,
      }
    : boxOfPath(mark);

const boxOfPath = ({ d, stroke }: PathMark): ReturnType<typeof boxOf> => {
  const numbers = [...d.matchAll(/-?[\d.]+/g)].map(([number]) => Number(number));
  const xs = numbers.filter((_, index) => index % 2 === 0);
  const ys = numbers.filter((_, index) => index % 2 === 1);
  const half = (stroke?.width ?? 0) / 2;
  return {
    left: Math.min(...xs) - half,
    right: Math.max(...xs) + half,
    top: Math.min(...ys) - half,
    bottom: Math.max(...ys) + half,
  };
};

/** The bars of a system by its name, 1-based, both included; null where it is none. */
export const barsNamed = (name: string): readonly [number, number] | null => {
  const [, first, last] = /^bars? (\d+)(?: to (\d+))?$/.exec(name) ?? [];
  return first === undefined ? null : [Number(first), Number(last ?? first)];
};
