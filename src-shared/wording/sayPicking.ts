import { eighthsOfMeter } from "../roll/beats.ts";
import { ownNameOf } from "../roll/editPicking.ts";
import type { PatternMeter } from "../roll/pattern.ts";
import type { Density, FifthUse, Style, StyleName } from "../roll/picking.ts";

type Said = { readonly name: string; readonly says: string };

const styles: Readonly<Record<StyleName, Said>> = {
  forward: { name: "Forward roll", says: "Thumb, index, middle, over and over; drives the song." },
  backward: { name: "Backward roll", says: "From the high string down; lighter than forward." },
  "forward-reverse": { name: "Forward-reverse roll", says: "Up and back down within the measure." },
  "alternating-thumb": {
    name: "Alternating thumb",
    says: "The thumb on every other eighth; steady and easy to sing over.",
  },
  vamp: { name: "Vamp", says: "A low note on the beat, a short damped pinch off it." },
  strum: { name: "Strum", says: "One stroke over the strings." },
};

const isFamily = (style: Style): style is StyleName => style in styles;

/**
 * A style in words; a pattern of the player's own goes by its own name.
 * @example sayStyle("vamp").name // => "Vamp"
 */
export const sayStyle = (style: Style): Said =>
  isFamily(style)
    ? styles[style]
    : { name: ownNameOf(style) ?? style, says: "Your own pattern; elsewhere the forward roll." };

/**
 * A density in words.
 * @example sayDensity("full").name // => "Every stroke"
 */
export const sayDensity = (density: Density): Said =>
  ({
    full: { name: "Every stroke", says: "The whole pattern." },
    beats: { name: "On the beats", says: "Only what falls on a beat." },
    bars: { name: "On the bar lines", says: "A pinch at each chord and each bar line." },
    once: { name: "Once for each chord", says: "One pinch, then let it ring." },
  })[density];

/**
 * A use of the open fifth string in words.
 * @example sayFifthUse("never").name // => "Never"
 */
export const sayFifthUse = (use: FifthUse): Said =>
  ({
    never: { name: "Never", says: "Only the closed strings sound." },
    cover: {
      name: "To cover a hard change",
      says: "It rings while the hand moves, where it belongs to the chord.",
    },
    always: {
      name: "Wherever a pattern has it",
      says: "Where it belongs to the chord; elsewhere string 3 stands in.",
    },
  })[use];

/**
 * The length of a pattern in words.
 * @example sayPatternLength("3/4", 12) // => "2 measures"
 */
export const sayPatternLength = (meter: PatternMeter, eighths: number): string => {
  const measures = eighths / eighthsOfMeter[meter];
  if (Number.isInteger(measures)) {
    return measures === 1 ? "1 measure" : `${measures} measures`;
  }
  return eighths === 1 ? "1 eighth" : `${eighths} eighths`;
};

/**
 * What of a song a pattern of the player's own fills, by its length in eighths.
 * @example sayFills("4/4", 8) // => "Repeated in every whole measure; forward rolls fill the rest."
 */
export const sayFills = (meter: PatternMeter, eighths: number): string => {
  const measures = eighths / eighthsOfMeter[meter];
  if (!Number.isInteger(measures)) {
    return `Repeated where ${sayPatternLength(meter, eighths)} fit a chord evenly between bar lines; forward rolls fill the rest.`;
  }
  const each = measures === 1 ? "every whole measure" : `every ${measures} whole measures`;
  return `Repeated in ${each}; forward rolls fill the rest.`;
};
