import type { BarText } from "../chart/readChart.ts";
import type { Diagnostic } from "../diagnostic.ts";
import type { Tuning } from "../neck/neck.ts";
import type { Pin } from "../route/pins.ts";
import type { PlanRequest } from "../route/problem.ts";
import type { Slot } from "../route/slot.ts";
import { words } from "../wordTable.ts";
import { placeOfBar } from "./placeOfBar.ts";
import { sayAnyShape } from "./sayShape.ts";

/**
 * Why there is no route: a chord that no allowed shape reaches, at the bar that first has it (at
 * the chart's start where the bar's place is not known).
 */
export const sayNoVoicing = (
  slot: Slot,
  request: Pick<PlanRequest, "shapes" | "range" | "strings">,
  tuning: Tuning,
  bar: BarText | undefined,
): Diagnostic => {
  const { low, high } = request.range;
  const shapes = sayAnyShape(request.shapes, request.strings, tuning);
  return {
    severity: "error",
    code: "no-voicing",
    at: placeOfBar(bar),
    says: words.notes.noVoicing.says(slot.chord.name, shapes, low, high),
    try: words.notes.noVoicing.try,
  };
};

const sayPin = ({ kind, frets, time }: Pin): string => {
  const grip = [frets[2], frets[1], frets[0]].join("-");
  const when = time === null ? words.pins.everyTime : words.pins.time(time + 1);
  return kind === "hold" ? words.pins.heldAt(grip, when) : words.pins.keptOffAt(grip, when);
};

/** Why there is no route: pins that cannot all be met, at the bar that has them. */
export const sayClash = (
  slot: Slot,
  pins: readonly Pin[],
  bar: BarText | undefined,
): Diagnostic => ({
  severity: "error",
  code: "pins-clash",
  at: placeOfBar(bar),
  says: words.notes.pinsClash.says(slot.chord.name, slot.bar + 1, pins.map(sayPin)),
  try: words.notes.pinsClash.try,
});
