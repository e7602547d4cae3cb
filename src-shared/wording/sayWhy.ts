import type { PlanRequest } from "../route/problem.ts";
import type { Aim, Leg } from "../route/route.ts";
import { sayFingers, sayFrets } from "./sayLeg.ts";

/** What one criterion counts, in whole numbers of these. */
type Measure =
  | "effort"
  | "travel"
  | "back"
  | "reach"
  | "hardest"
  | "strain"
  | "stretch"
  | "returns"
  | "unmoved";

const ofAim: Readonly<Record<Aim, readonly Measure[]>> = {
  ease: ["effort"],
  travel: ["travel"],
  steady: ["hardest", "strain"],
  region: ["stretch", "effort"],
  climb: ["back", "reach", "effort"],
  fall: ["back", "reach", "effort"],
  variety: ["returns", "effort"],
};

/** What a route's costs count, in their order. */
const measuresOf = ({
  aim,
  perChord,
}: Pick<PlanRequest, "aim" | "perChord">): readonly Measure[] => {
  const own = ofAim[aim];
  if (perChord === 1) {
    return own;
  }
  // What the solver looks at before all charges stays in front.
  const before = aim === "region" || aim === "variety" ? 1 : 0;
  return [...own.slice(0, before), "unmoved", ...own.slice(before)];
};

const sayMm = (micrometres: number): string => {
  const mm = Math.round(Math.abs(micrometres) / 1000);
  return mm === 0 ? "under 1 mm" : `${mm} mm`;
};

const sayPercent = (millionths: number): string => {
  const percent = Math.round(Math.abs(millionths) / 10_000);
  return percent === 0 ? "under 1 %" : `${percent} %`;
};

const sayCount = (count: number, one: string): string =>
  `${Math.abs(count)} more ${one}${Math.abs(count) === 1 ? "" : "s"}`;

const sayMeasure = (measure: Measure, more: number, aim: Aim): string => {
  switch (measure) {
    case "effort":
      return `${sayMm(more)} more`;
    case "travel":
      return `${sayMm(more)} more travel`;
    case "back":
      return `${sayMm(more)} more ${aim === "climb" ? "down" : "up"} the neck`;
    case "reach":
      return `${sayMm(more)} less ${aim === "climb" ? "up" : "down"} the neck`;
    case "hardest":
      return `hardest change ${sayPercent(more)} tighter`;
    case "strain":
      return `all changes together ${sayPercent(more)} tighter`;
    case "stretch":
      return `${sayCount(more, "fret")} from lowest to highest`;
    case "returns":
      return `${sayCount(more, "chord")} back in the same place`;
    case "unmoved":
      return `${sayCount(more, "chord")} held in one place only`;
  }
};

/**
 * What a route costs more than the best one: the first criterion of the aim that differs, in words.
 * @example sayMore({ aim: "ease", perChord: 1 }, [120_000]) // => "120 mm more"
 */
export const sayMore = (
  request: Pick<PlanRequest, "aim" | "perChord">,
  more: readonly number[],
): string => {
  const index = more.findIndex((value) => value !== 0);
  const measure = measuresOf(request)[index];
  return measure === undefined
    ? "just as good"
    : sayMeasure(measure, more[index] ?? 0, request.aim);
};

/**
 * What the figures of an aim count; to be shown over them.
 * @example sayCounted("travel") // => "Counted in the way of the index finger over the whole song."
 */
export const sayCounted = (aim: Aim): string => {
  switch (aim) {
    case "travel":
      return "Counted in the way of the index finger over the whole song.";
    case "steady":
      return "Counted in shares of the time that a change has.";
    case "climb":
    case "fall":
      return "Counted in the way of the index finger up or down the neck; after that in travel, a finger placed anew as 60 mm.";
    case "region":
      return "Counted in frets from the lowest to the highest position; after that in travel, a finger placed anew as 60 mm.";
    case "variety":
      return "Counted in chords that come back after one other in the same place; after that in travel, a finger placed anew as 60 mm.";
    case "ease":
      return "Counted in travel over the whole song, a finger placed anew as 60 mm.";
  }
};

/** What one change costs the hand: "Up 5, 104 mm. Every finger keeps its string. Needs 301 of 450 ms." */
export const sayChange = (leg: Leg): string => {
  if (leg.kind === "hold") {
    return "The hand stays as it is.";
  }
  const far = leg.frets === 0 ? "" : `, ${sayMm(leg.distance * 1000)}`;
  const time = `Needs ${Math.round(leg.need)} ms, has ${Math.round(leg.window)} ms.`;
  return `${sayFrets(leg.frets)}${far}. ${sayFingers(leg)}. ${time}`;
};
