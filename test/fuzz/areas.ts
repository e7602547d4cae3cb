import type { Area } from "./area.ts";
import { chartArea } from "./chartArea.ts";
import { importAreas } from "./importAreas.ts";
import { patternArea } from "./patternArea.ts";
import { serviceArea } from "./serviceArea.ts";
import { settingsArea } from "./settingsArea.ts";
import { sharedArea } from "./sharedArea.ts";

/** Everything that comes from outside. */
export const areas: readonly Area[] = [
  chartArea,
  settingsArea,
  patternArea,
  sharedArea,
  ...importAreas,
  serviceArea,
];
