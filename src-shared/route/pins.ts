import type { PerString } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Slot } from "./slot.ts";

/** A voicing that the player insists on, or does not want, at a place of the chart. */
export type Pin = {
  readonly kind: "hold" | "avoid";
  /** 0-based written bar in which the chord is first held there, over all sections. */
  readonly bar: number;
  /** Where in that bar, in eighth notes from its start. */
  readonly eighth: number;
  /** Which time the bar is played, from 0; null is every time. */
  readonly time: number | null;
  /** The chord as it sounds; a pin on another chord sleeps. */
  readonly chord: string;
  /** Frets of strings 1 to 5, null where not played. */
  readonly frets: PerString<number | null>;
};

/** A pin's place without its voicing. */
export type PinPlace = Pick<Pin, "bar" | "eighth" | "time" | "chord">;

/** Whether a pin speaks of a slot. */
export const pinIsFor = (pin: PinPlace, slot: Slot): boolean =>
  pin.bar === slot.written &&
  pin.eighth === slot.eighth &&
  (pin.time === null || pin.time === slot.time) &&
  pin.chord === slot.chord.name;

/** Whether a pin names a voicing. */
export const pinIsOf = (pin: Pin, voicing: Voicing): boolean =>
  pin.frets.every((fret, index) => fret === voicing.frets[index]);

/** The place of a slot: this time only, or every time its bar is played. */
export const pinPlaceOf = (slot: Slot, every: boolean): PinPlace => ({
  bar: slot.written,
  eighth: slot.eighth,
  time: every ? null : slot.time,
  chord: slot.chord.name,
});

/**
 * The pins that ask for what cannot be together, for the first slot where they do: two different
 * voicings to hold, or one to hold and to avoid. Empty where all can be met.
 */
export const clashAt = (pins: readonly Pin[], slot: Slot): readonly Pin[] => {
  const own = pins.filter((pin) => pinIsFor(pin, slot));
  const [first, ...others] = own.filter((pin) => pin.kind === "hold");
  if (!first) {
    return [];
  }
  const same = (pin: Pin): boolean => pin.frets.join() === first.frets.join();
  const against = [
    ...others.filter((pin) => !same(pin)),
    ...own.filter((pin) => pin.kind === "avoid" && same(pin)),
  ];
  return against.length > 0 ? [first, ...against] : [];
};

/** Whether the pins let a slot take a voicing. */
export const pinsAllow = (pins: readonly Pin[], slot: Slot, voicing: Voicing): boolean =>
  pins.every((pin) => !pinIsFor(pin, slot) || (pin.kind === "hold") === pinIsOf(pin, voicing));

/** Whether any pin insists on this voicing somewhere for this chord. */
export const isPinned = (pins: readonly Pin[], chord: string, voicing: Voicing): boolean =>
  pins.some((pin) => pin.kind === "hold" && pin.chord === chord && pinIsOf(pin, voicing));

/**
 * Hold pins that keep every slot in its voicing (one voicing for each slot, in order): every time
 * where a bar is played alike each time, else each time by itself.
 */
export const pinsHolding = (
  slots: readonly Slot[],
  voicings: readonly Voicing[],
): readonly Pin[] => {
  const held = slots.flatMap((slot, index): readonly Pin[] => {
    const voicing = voicings[index];
    return voicing ? [{ kind: "hold", ...pinPlaceOf(slot, false), frets: voicing.frets }] : [];
  });
  const placeOf = (pin: Pin): string => `${pin.bar} ${pin.eighth} ${pin.chord}`;
  const grips = new Map<string, Set<string>>();
  for (const pin of held) {
    const place = placeOf(pin);
    grips.set(place, (grips.get(place) ?? new Set<string>()).add(pin.frets.join()));
  }
  const done = new Set<string>();
  return held.flatMap((pin): readonly Pin[] => {
    const place = placeOf(pin);
    if ((grips.get(place)?.size ?? 0) > 1) {
      return [pin];
    }
    if (done.has(place)) {
      return [];
    }
    done.add(place);
    return [{ ...pin, time: null }];
  });
};

/**
 * Pins, or whatever else is said of a bar, after an edit of the chart: each goes with its bar. `moved`
 * tells for each old written bar where it is now, or null where it is gone; what is said of bars that
 * are gone is dropped.
 */
export const movePins = <Said extends Pick<Pin, "bar">>(
  pins: readonly Said[],
  moved: readonly (number | null)[],
): readonly Said[] =>
  pins.flatMap((pin) => {
    const bar = moved[pin.bar] ?? null;
    return bar === null ? [] : [{ ...pin, bar }];
  });
