import type { Neck } from "../neck/neck.ts";
import type { Milliseconds } from "../units.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { longestOf, needOf, windowsOf } from "./change.ts";
import { easeMicrometres, riseMicrometres, travelMicrometres } from "./cost.ts";
import type { Hand } from "./movement.ts";
import type { Aim } from "./route.ts";
import type { Slot } from "./slot.ts";

/** What a change is judged against. */
export type Circumstances = {
  readonly neck: Neck;
  readonly hand: Hand;
  /** How long an eighth note lasts. */
  readonly eighth: Milliseconds;
};

/** A change from one slot to another; `seam` is the song's length where it leads round, else null. */
export type Step = { readonly from: Slot; readonly to: Slot; readonly seam: number | null };

/** What an aim charges for one change: a whole number. */
export type Charge = {
  readonly by: "sum" | "worst";
  readonly of: (from: Voicing, to: Voicing, step: Step) => number;
};

const ease: Charge = { by: "sum", of: easeMicrometres };
const travel: Charge = { by: "sum", of: travelMicrometres };

/** Steps against the direction; the seam must lead back and is free. */
const backward = (direction: 1 | -1): Charge => ({
  by: "sum",
  of: (from, to, { seam }) =>
    seam === null ? Math.max(0, -direction * riseMicrometres(from, to)) : 0,
});

/** The further it goes in the direction, the less it costs. */
const forward = (direction: 1 | -1): Charge => ({
  by: "sum",
  of: (from, to, { seam }) => (seam === null ? -direction * riseMicrometres(from, to) : 0),
});

/** Need over the longest window there is, in millionths: above a million cannot be made. */
const strain =
  ({ neck, hand, eighth }: Circumstances): Charge["of"] =>
  (from, to, { from: left, to: reached, seam }) => {
    const longest = longestOf(windowsOf(left, reached, seam));
    const need = needOf(hand, from, to, neck.scaleLength);
    return Math.round((1_000_000 * need) / (longest * eighth));
  };

/**
 * What an aim makes small, the weightiest first. `region` narrows the voicings before, and `variety`
 * looks at three placements at a time; what is here comes after that.
 */
export const chargesOf = (aim: Aim, circumstances: Circumstances): readonly Charge[] => {
  switch (aim) {
    case "travel":
      return [travel];
    case "steady": {
      const of = strain(circumstances);
      return [
        { by: "worst", of },
        { by: "sum", of },
      ];
    }
    case "climb":
      return [backward(1), forward(1), ease];
    case "fall":
      return [backward(-1), forward(-1), ease];
    case "ease":
    case "region":
    case "variety":
      return [ease];
  }
};
