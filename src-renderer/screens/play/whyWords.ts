import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Elsewhere } from "../../../src-shared/route/explain.ts";
import type { Leg } from "../../../src-shared/route/route.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { sayManner } from "../../../src-shared/wording/sayManner.ts";
import { sayVoicing } from "../../../src-shared/wording/sayShape.ts";
import { sayChange, sayCounted, sayMore } from "../../../src-shared/wording/sayWhy.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { isPinned, placeNames } from "./placePins.ts";

/** Why a placement is where it is, in the words of the card. */
export type WhyWords = {
  readonly title: string;
  readonly changes: readonly {
    readonly name: string;
    readonly says: string;
    readonly manner: string;
    readonly tooFast: boolean;
  }[];
  /** What the figures count, or why there are none. */
  readonly about: string;
  readonly elsewhere: readonly {
    readonly voicing: Voicing;
    readonly name: string;
    readonly more: string;
  }[];
};

const aboutOf = (walk: Walk, placement: number, elsewhere: readonly Elsewhere[] | null): string => {
  if (elsewhere === null) return words.why.weighing;
  if (elsewhere.length > 0) return sayCounted(walk.request.aim);
  return isPinned(walk, placement) ? words.why.isPinned : words.why.noOther;
};

/**
 * The reasons for a placement of a walk in words; null where there is none. `elsewhere` is what its
 * other places cost, null while they are being weighed.
 */
export const whyWords = (
  walk: Walk,
  placement: number,
  elsewhere: readonly Elsewhere[] | null,
): WhyWords | null => {
  const { route } = walk;
  const { tuning } = walk.neck;
  const held = route?.placements[placement];
  if (!route || !held) return null;
  const { chord, voicing } = held;
  const chordAt = (index: number): string => route.placements[index]?.chord.name ?? "";
  const into = route.legs.find((leg) => leg.to === placement);
  const outOf = route.legs.find((leg) => leg.from === placement);
  const others = elsewhere ?? [];
  const change = (name: string, leg: Leg) => ({
    name,
    says: sayChange(leg),
    manner: sayManner(leg, walk.timeline.meter),
    tooFast: leg.way === "too-fast",
  });
  const names = placeNames(
    others.map((each) => each.voicing),
    tuning,
  );
  return {
    title: words.why.held(chord.name, held.bar + 1, sayVoicing(voicing, tuning)),
    changes: [
      ...(into ? [change(words.why.from(chordAt(into.from)), into)] : []),
      ...(outOf ? [change(words.why.onTo(chordAt(outOf.to)), outOf)] : []),
    ],
    about: aboutOf(walk, placement, elsewhere),
    elsewhere: others.map((each, index) => ({
      voicing: each.voicing,
      name: names[index] ?? "",
      more: sayMore(walk.request, each.more),
    })),
  };
};
