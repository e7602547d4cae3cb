import type { Walk } from "../../../src-shared/chartToScore.ts";
import { ticksPerBeat } from "../../../src-shared/score/tempo.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { beatsLeft } from "../../geometry/comingChange.ts";
import type { StandNow } from "./standNow.ts";

/**
 * What is said of the next change from a bar before it is due; "" before that, in the count-in, and
 * where the hand stays.
 */
export const announced = (
  walk: Walk,
  { change, tick, counting, words: said }: StandNow,
): string => {
  const { meter } = walk.timeline;
  const left = beatsLeft(tick, change.due, ticksPerBeat(meter));
  if (counting || !change.next || left > meter.beats) return "";
  return words.play.next(change.next.chord.name, said.nextDetail);
};
