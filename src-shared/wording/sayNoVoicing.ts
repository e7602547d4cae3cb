import type { BarText } from "../chart/readChart.ts";
import type { Diagnostic } from "../diagnostic.ts";
import type { Tuning } from "../neck/neck.ts";
import type { Pin } from "../route/pins.ts";
import type { PlanRequest } from "../route/problem.ts";
import type { Slot } from "../route/slot.ts";
import { sayAnyShape } from "./sayShape.ts";

const placeOf = (bar: BarText | undefined): Diagnostic["at"] =>
  bar
    ? { line: bar.line, column: bar.column, length: Math.max(1, bar.end - bar.start) }
    : { line: 1, column: 1, length: 1 };

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
    at: placeOf(bar),
    says: `${slot.chord.name} has no ${shapes} within frets ${low} to ${high} that is not ruled out.`,
    try: "Allow more frets or another shape, or take a pin off.",
  };
};

const sayPin = ({ kind, frets, time }: Pin): string => {
  const grip = [frets[2], frets[1], frets[0]].join("-");
  const when = time === null ? "every time" : `time ${time + 1}`;
  return `${kind === "hold" ? "held at" : "kept off"} ${grip} (${when})`;
};

/** Why there is no route: pins that cannot all be met, at the bar that has them. */
export const sayClash = (
  slot: Slot,
  pins: readonly Pin[],
  bar: BarText | undefined,
): Diagnostic => ({
  severity: "error",
  code: "pins-clash",
  at: placeOf(bar),
  says: `${slot.chord.name} in bar ${slot.bar + 1} cannot be ${pins.map(sayPin).join(" and ")} at once.`,
  try: "Take one of these pins off.",
});
