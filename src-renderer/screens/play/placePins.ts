import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Tuning } from "../../../src-shared/neck/neck.ts";
import {
  pinsOn,
  sleepingPins,
  withAvoid,
  withHold,
  withoutPins,
} from "../../../src-shared/route/editPins.ts";
import type { Pin } from "../../../src-shared/route/pins.ts";
import { pinsInTheWay } from "../../../src-shared/route/pinsInTheWay.ts";
import { planRoute } from "../../../src-shared/route/planRoute.ts";
import { allowedVoicings } from "../../../src-shared/route/problem.ts";
import { fret } from "../../../src-shared/units.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { sayVoicing } from "../../../src-shared/wording/sayShape.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { NeckPlace, PinChoice } from "../../geometry/neckPlaces.ts";

const gripOf = (voicing: Voicing): string => voicing.frets.join();

/** Frets of the strings played, the lowest string first: "7-8-9". */
const sayGrip = ({ frets }: Voicing): string =>
  frets
    .toReversed()
    .filter((each) => each !== null)
    .join("-");

/** A name for each voicing of a chord; its frets too where another has the same shape and fret. */
export const placeNames = (voicings: readonly Voicing[], tuning: Tuning): readonly string[] => {
  const plain = voicings.map((voicing) => sayVoicing(voicing, tuning));
  return plain.map((name, index) => {
    const voicing = voicings[index];
    const alone = plain.indexOf(name) === plain.lastIndexOf(name);
    return alone || !voicing ? name : words.pins.grip(name, sayGrip(voicing));
  });
};

/** Whether every time of a place is held alike, so that one of them cannot be pinned by itself. */
const timesAreAlike = ({ request }: Walk): boolean => request.alike && request.aim !== "variety";

const choicesFor = (walk: Walk, pin: NeckPlace["pin"]): readonly PinChoice[] => [
  ...(timesAreAlike(walk) ? [] : ["this time" as const]),
  "every time",
  ...(pin === "avoid" ? [] : ["avoid" as const]),
  ...(pin === "none" ? [] : ["off" as const]),
];

/** Every place on the whole neck of the chord that a placement holds; empty where there is none. */
export const placesOf = (walk: Walk, placement: number): readonly NeckPlace[] => {
  const held = walk.route?.placements[placement];
  const slot = walk.slots[placement];
  if (!held || !slot) return [];
  const { neck, request } = walk;
  const whole = { low: fret(1), high: neck.lastFret };
  const voicings = voicingsOf(held.chord, neck, whole, request.strings);
  const allowed = new Set(
    allowedVoicings(held.chord, neck, { ...request, pins: [] }).voicings.map(gripOf),
  );
  const names = placeNames(voicings, neck.tuning);
  return voicings.map((voicing, index) => {
    const pin = pinsOn(request.pins, slot, voicing)[0]?.kind ?? "none";
    return {
      voicing,
      name: words.pins.ofChord(held.chord.name, names[index] ?? ""),
      held: gripOf(voicing) === gripOf(held.voicing),
      allowed: allowed.has(gripOf(voicing)),
      pin,
      choices: choicesFor(walk, pin),
    };
  });
};

/** Whether the player has pinned the voicing that a placement holds. */
export const isPinned = (walk: Walk, placement: number): boolean => {
  const held = walk.route?.placements[placement];
  const slot = walk.slots[placement];
  return (
    held !== undefined &&
    slot !== undefined &&
    pinsOn(walk.request.pins, slot, held.voicing).some((pin) => pin.kind === "hold")
  );
};

/** All pins of a walk after the player's choice for a voicing at one of its placements. */
export const pinsChosen = (
  walk: Walk,
  placement: number,
  voicing: Voicing,
  choice: PinChoice,
): readonly Pin[] => {
  const { slots, request } = walk;
  const slot = slots[placement];
  if (!slot) return request.pins;
  switch (choice) {
    case "this time":
    case "every time":
      return withHold(
        request.pins,
        slots,
        slot,
        voicing,
        timesAreAlike(walk) ? "every time" : choice,
      );
    case "avoid":
      return withAvoid(request.pins, slots, slot, voicing);
    case "off":
      return withoutPins(request.pins, pinsOn(request.pins, slot, voicing));
  }
};

/** Pins of a walk that do nothing. */
export const asleep = (walk: Walk): readonly Pin[] => sleepingPins(walk.request.pins, walk.slots);

/** Pins that may be why a walk has no route. */
export const inTheWay = (walk: Walk): readonly Pin[] =>
  walk.route
    ? []
    : pinsInTheWay(planRoute(walk.timeline, walk.neck, walk.request), walk.request.pins);
