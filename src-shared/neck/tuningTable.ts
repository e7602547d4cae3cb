// Tunings: MIDI pitches, strings 1 to 5. Names and notes: common practice, no published source;
// the tests spell each pitch with a general-purpose library.
import { midi } from "../units.ts";
import type { Tuning } from "./neck.ts";

const tuning = (name: string, open: readonly [number, number, number, number, number]): Tuning => ({
  name,
  open: [midi(open[0]), midi(open[1]), midi(open[2]), midi(open[3]), midi(open[4])],
});

/** All named tunings; the first is the one a chart has unless it says otherwise. */
export const tunings: readonly [Tuning, ...Tuning[]] = [
  tuning("open G", [62, 59, 55, 50, 67]),
  tuning("C", [62, 59, 55, 48, 67]),
  tuning("double C", [62, 60, 55, 48, 67]),
  tuning("open D", [62, 57, 54, 50, 66]),
  tuning("G modal", [62, 60, 55, 50, 67]),
  tuning("G minor", [62, 58, 55, 50, 67]),
];

/**
 * The tuning of that name, upper or lower case alike; null where none is called so.
 * @example tuningNamed("Open g")?.name // => "open G"
 */
export const tuningNamed = (name: string): Tuning | null => {
  const wanted = name.trim().replace(/\s+/g, " ").toLowerCase();
  return tunings.find((each) => each.name.toLowerCase() === wanted) ?? null;
};
