import { eighthsOfMeter } from "./beats.ts";
import type { Pattern, PatternStroke } from "./pattern.ts";
import { lightPinch } from "./rollTable.ts";

const rest: PatternStroke = { picks: [], accent: false, damped: false };

const usesThumb = (stroke: PatternStroke): boolean =>
  stroke.picks.some(({ finger }) => finger === "T");

/** What index and middle may still do where a thumb is in the way. */
const withoutThumb = ({ damped, picks }: PatternStroke, isLast: boolean): PatternStroke =>
  damped || (isLast && picks.length === 1) ? lightPinch : rest;

/**
 * A part of a measure as a vamp plays it: what the measure has on those eighths, from `from` (counted
 * from the bar line) on. It starts on the thumb whatever the beat; a thumb on the eighth after that
 * or on the last one makes way: for a pinch of index and middle, or for a rest.
 */
export const cutPart = (measure: Pattern, name: string, from: number, length: number): Pattern => {
  const perBar = eighthsOfMeter[measure.meter];
  const opening = measure.strokes[0] ?? rest;
  const strokes = Array.from({ length }, (_, eighth): PatternStroke => {
    const stroke = measure.strokes[(from + eighth) % perBar] ?? rest;
    if (eighth === 0) {
      return usesThumb(stroke) ? stroke : opening;
    }
    const isLast = eighth === length - 1;
    return usesThumb(stroke) && (eighth === 1 || isLast) ? withoutThumb(stroke, isLast) : stroke;
  });
  return { name, meter: measure.meter, strokes };
};
