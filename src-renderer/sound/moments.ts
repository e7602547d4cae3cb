import { glideFrets } from "../../src-shared/score/glideFrets.ts";
import type { Hit, Note } from "../../src-shared/score/score.ts";
import { TICKS_PER_EIGHTH, type Tick, tick } from "../../src-shared/units.ts";

/** Something that happens to a note after it was struck. */
export type Moment =
  | { readonly kind: "bend"; readonly tick: Tick; readonly semitones: number }
  | { readonly kind: "stop"; readonly tick: Tick };

/** How long a stroke is heard that is damped at once: a quarter of an eighth. */
const DAMPED_TICKS = TICKS_PER_EIGHTH / 4;

/** Until the note stops, or the hand has to be elsewhere. */
const upTo = (moments: readonly Moment[], until: Tick): readonly Moment[] => [
  ...moments.filter((moment) => moment.tick <= until),
  { kind: "stop", tick: until },
];

/**
 * A glide's frets one by one, in equal temperament, and the end of the note: at `last` at latest, and
 * almost at once where it is damped.
 */
export const momentsOfNote = (note: Note, last: Tick): readonly Moment[] => {
  const until = note.damped ? Math.min(note.until, note.tick + DAMPED_TICKS) : note.until;
  const bends = glideFrets(note).map((passed): Moment => ({ kind: "bend", ...passed }));
  return upTo(bends, tick(Math.min(until, last)));
};

/** The end of a hit, at `last` at latest. */
export const momentsOfHit = (hit: Hit, last: Tick): readonly Moment[] =>
  upTo([], tick(Math.min(hit.tick + hit.ticks, last)));
