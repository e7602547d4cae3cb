import { sameGrip } from "../voicing/sameGrip.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { placeOf, type Slot } from "./slot.ts";

/**
 * The first slot that is held in another voicing than its place in the chart was held in before;
 * null where every place is held the same each time. One voicing for each slot, in order.
 */
export const firstUnlike = (slots: readonly Slot[], voicings: readonly Voicing[]): Slot | null => {
  const before = new Map<string, Voicing>();
  for (const [index, slot] of slots.entries()) {
    const own = voicings[index];
    const known = before.get(placeOf(slot));
    if (own && known && !sameGrip(own, known)) {
      return slot;
    }
    if (own && !known) {
      before.set(placeOf(slot), own);
    }
  }
  return null;
};
