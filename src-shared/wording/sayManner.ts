import type { Meter } from "../chart/song.ts";
import type { Leg } from "../route/route.ts";
import { tempoOfEighth } from "../score/tempo.ts";
import { words } from "../wordTable.ts";
import { sayWay } from "./sayAim.ts";

/** A tempo worked out from milliseconds may miss a whole number by this much. */
const ROUNDING = 1e-6;

/**
 * How a change is made, in one short line; where it is too fast also the fastest whole tempo, in
 * beats of the meter a minute, at which it can be made. "" where nothing moves.
 */
export const sayManner = (leg: Pick<Leg, "way" | "shortestEighth">, meter: Meter): string => {
  const { way, shortestEighth } = leg;
  if (way === "hold") {
    return "";
  }
  return way === "too-fast" && shortestEighth !== null
    ? words.changes.tooFastUpTo(Math.floor(tempoOfEighth(meter, shortestEighth) + ROUNDING))
    : sayWay(way).name;
};
