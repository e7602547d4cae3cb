import type { MixPart } from "../../src-shared/settings.ts";

/** The parts of the mix by name, as they stand from top to bottom. */
export const partNames: Readonly<Record<MixPart, string>> = {
  banjo: "Banjo",
  bass: "Bass",
  guitar: "Guitar",
  chop: "Chop",
  click: "Click",
};
