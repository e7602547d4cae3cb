import { eighthsOfMeter } from "../roll/beats.ts";
import { ownNameOf } from "../roll/editPicking.ts";
import type { PatternMeter } from "../roll/pattern.ts";
import type { Density, FifthUse, Style, StyleName } from "../roll/picking.ts";
import { words } from "../wordTable.ts";

type Said = { readonly name: string; readonly says: string };

const isFamily = (style: Style): style is StyleName => style in words.hand.styles;

/**
 * A style in words; a pattern of the player's own goes by its own name.
 * @example sayStyle("vamp").name // => "Vamp"
 */
export const sayStyle = (style: Style): Said =>
  isFamily(style)
    ? words.hand.styles[style]
    : { name: ownNameOf(style) ?? style, says: words.hand.ownSays };

/**
 * A density in words.
 * @example sayDensity("full").name // => "Every stroke"
 */
export const sayDensity = (density: Density): Said => words.hand.densities[density];

/**
 * A use of the open fifth string in words.
 * @example sayFifthUse("never").name // => "Never"
 */
export const sayFifthUse = (use: FifthUse): Said => words.hand.fifthUses[use];

/**
 * The length of a pattern in words.
 * @example sayPatternLength("3/4", 12) // => "2 measures"
 */
export const sayPatternLength = (meter: PatternMeter, eighths: number): string => {
  const measures = eighths / eighthsOfMeter[meter];
  if (Number.isInteger(measures)) {
    return words.count.measures(measures);
  }
  return words.count.eighths(eighths);
};

/**
 * What of a song a pattern of the player's own fills, by its length in eighths.
 * @example sayFills("4/4", 8) // => "Repeated in every whole measure; forward rolls fill the rest."
 */
export const sayFills = (meter: PatternMeter, eighths: number): string => {
  const measures = eighths / eighthsOfMeter[meter];
  if (!Number.isInteger(measures)) {
    return words.hand.fillsWhere(sayPatternLength(meter, eighths));
  }
  return words.hand.fillsMeasures(measures);
};
