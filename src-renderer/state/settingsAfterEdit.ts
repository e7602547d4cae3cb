import { pinsAfterEdit, playedChart } from "../../src-shared/route/pinsAfterEdit.ts";
import type { SongSettings } from "../../src-shared/settings.ts";
import type { SongVersion } from "./songHistory.ts";

/** A song's settings as they go with another text: what is said of chords goes with their bars. */
export const settingsAfterEdit = (
  { text: old, settings }: SongVersion,
  text: string,
): SongSettings => {
  const { plan, picking } = settings;
  if (plan.pins.length === 0 && picking.stays.length === 0) return settings;
  const before = playedChart(old, plan.playKey);
  const after = playedChart(text, plan.playKey);
  const pins = pinsAfterEdit(plan.pins, before, after);
  const stays = pinsAfterEdit(picking.stays, before, after);
  if (pins === plan.pins && stays === picking.stays) return settings;
  return { ...settings, plan: { ...plan, pins }, picking: { ...picking, stays } };
};
