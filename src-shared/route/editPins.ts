import type { Voicing } from "../voicing/voicing.ts";
import { type Pin, pinIsFor, pinIsOf, pinPlaceOf } from "./pins.ts";
import type { Slot } from "./slot.ts";

/** Which times a pin is set for: this one, or every time the bar is played. */
export type PinScope = "this time" | "every time";

const speaksOf = (pin: Pin, slot: Slot, scope: PinScope): boolean =>
  pinIsFor(scope === "every time" ? { ...pin, time: null } : pin, slot);

/** A pin for the times that are left when a slot's own is taken out of it; none for a single time. */
const forOtherTimes = (pin: Pin, slot: Slot, slots: readonly Slot[]): readonly Pin[] =>
  pin.time === null
    ? slots
        .filter((other) => other.time !== slot.time && pinIsFor(pin, other))
        .map((other) => ({ ...pin, time: other.time }))
    : [];

/** Takes out of the way what `stands` picks; of a pin for every time, only as much as the scope. */
const cleared = (
  pins: readonly Pin[],
  slots: readonly Slot[],
  slot: Slot,
  scope: PinScope,
  goes: (pin: Pin) => boolean,
): readonly Pin[] =>
  pins.flatMap((pin) => {
    if (!speaksOf(pin, slot, scope) || !goes(pin)) {
      return [pin];
    }
    return scope === "every time" ? [] : forOtherTimes(pin, slot, slots);
  });

/**
 * The pins with a voicing held at a slot. Other holds of the same place, and its being kept off
 * there, give way; where only this time is meant they go on for the other times.
 */
export const withHold = (
  pins: readonly Pin[],
  slots: readonly Slot[],
  slot: Slot,
  voicing: Voicing,
  scope: PinScope,
): readonly Pin[] => [
  ...cleared(pins, slots, slot, scope, (pin) => pin.kind === "hold" || pinIsOf(pin, voicing)),
  { kind: "hold", ...pinPlaceOf(slot, scope === "every time"), frets: voicing.frets },
];

/** The pins with a voicing kept off a slot every time; its being held there gives way. */
export const withAvoid = (
  pins: readonly Pin[],
  slots: readonly Slot[],
  slot: Slot,
  voicing: Voicing,
): readonly Pin[] => [
  ...cleared(pins, slots, slot, "every time", (pin) => pinIsOf(pin, voicing)),
  { kind: "avoid", ...pinPlaceOf(slot, true), frets: voicing.frets },
];

/** The pins that speak of a voicing at a slot. */
export const pinsOn = (pins: readonly Pin[], slot: Slot, voicing: Voicing): readonly Pin[] =>
  pins.filter((pin) => pinIsFor(pin, slot) && pinIsOf(pin, voicing));

/** The pins without some of them. */
export const withoutPins = (pins: readonly Pin[], off: readonly Pin[]): readonly Pin[] =>
  pins.filter((pin) => !off.includes(pin));

/** The pins that speak of no slot: their chord, their time or its start there is gone. */
export const sleepingPins = (pins: readonly Pin[], slots: readonly Slot[]): readonly Pin[] =>
  pins.filter((pin) => !slots.some((slot) => pinIsFor(pin, slot)));
