import type { MixPart } from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";

/** The parts of the mix by name, as they stand from top to bottom. */
export const partNames: Readonly<Record<MixPart, string>> = {
  banjo: words.band.parts.banjo,
  bass: words.band.parts.bass,
  guitar: words.band.parts.guitar,
  chop: words.band.parts.chop,
  click: words.band.parts.click,
};
