import type { BarText } from "../chart/readChart.ts";
import type { TextPlace } from "../diagnostic.ts";

/** Where a bar stands in the chart; the chart's start where that is not known. */
export const barPlace = (bar: BarText | undefined): TextPlace =>
  bar
    ? { line: bar.line, column: bar.column, length: Math.max(1, bar.end - bar.start) }
    : { line: 1, column: 1, length: 1 };
