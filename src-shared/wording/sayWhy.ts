import type { PlanRequest } from "../route/problem.ts";
import type { Aim, Leg } from "../route/route.ts";
import { words } from "../wordTable.ts";
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
  return mm === 0 ? words.why.underMm : words.facts.millimetres(mm);
};

const sayPercent = (millionths: number): string => {
  const percent = Math.round(Math.abs(millionths) / 10_000);
  return percent === 0 ? words.why.underPercent : words.why.percent(percent);
};

const sayMeasure = (measure: Measure, more: number, aim: Aim): string => {
  switch (measure) {
    case "effort":
      return words.why.more.effort(sayMm(more));
    case "travel":
      return words.why.more.travel(sayMm(more));
    case "back":
      return aim === "climb" ? words.why.more.down(sayMm(more)) : words.why.more.up(sayMm(more));
    case "reach":
      return aim === "climb"
        ? words.why.more.lessUp(sayMm(more))
        : words.why.more.lessDown(sayMm(more));
    case "hardest":
      return words.why.more.hardest(sayPercent(more));
    case "strain":
      return words.why.more.strain(sayPercent(more));
    case "stretch":
      return words.why.more.stretch(Math.abs(more));
    case "returns":
      return words.why.more.returns(Math.abs(more));
    case "unmoved":
      return words.why.more.unmoved(Math.abs(more));
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
    ? words.why.asGood
    : sayMeasure(measure, more[index] ?? 0, request.aim);
};

/**
 * What the figures of an aim count; to be shown over them.
 * @example sayCounted("travel") // => "Counted in the way of the index finger over the whole song."
 */
export const sayCounted = (aim: Aim): string => {
  switch (aim) {
    case "travel":
      return words.why.countedIn.travel;
    case "steady":
      return words.why.countedIn.steady;
    case "climb":
    case "fall":
      return words.why.countedIn.climb;
    case "region":
      return words.why.countedIn.region;
    case "variety":
      return words.why.countedIn.variety;
    case "ease":
      return words.why.countedIn.ease;
  }
};

/** What one change costs the hand: "Up 5, 104 mm. Every finger keeps its string. Needs 301 of 450 ms." */
export const sayChange = (leg: Leg): string => {
  if (leg.kind === "hold") {
    return words.why.stays;
  }
  const way = sayFrets(leg.frets);
  const far = leg.frets === 0 ? way : words.why.howFar(way, sayMm(leg.distance * 1000));
  return words.why.costs(far, sayFingers(leg), Math.round(leg.need), Math.round(leg.window));
};
