import type { Timeline } from "../../src-shared/chart/song.ts";
import type { Neck } from "../../src-shared/neck/neck.ts";
import { chargesOf } from "../../src-shared/route/aims.ts";
import type { PlanRequest } from "../../src-shared/route/problem.ts";
import { slotsOf } from "../../src-shared/route/slot.ts";
import type { Voicing } from "../../src-shared/voicing/voicing.ts";

/** Whether one worth is better than another: smaller at the first place where they differ. */
export const isLess = (a: readonly number[], b: readonly number[]): boolean => {
  const differs = a.findIndex((value, index) => value !== b[index]);
  return differs >= 0 && (a[differs] ?? 0) < (b[differs] ?? 0);
};

/**
 * What a choice of voicings comes to by a request's aim, told again from the aim's words, one whole
 * song at a time: the planner never sees a whole song at once.
 */
export const worthIn = (
  song: Timeline,
  neck: Neck,
  request: PlanRequest,
): ((voicings: readonly Voicing[]) => readonly number[]) => {
  const slots = slotsOf(song, neck, request);
  const names = slots.map(({ chord }) => chord.name);
  const charges = chargesOf(request.aim, { neck, hand: request.hand, eighth: request.eighth });
  return (voicings) => {
    const count = voicings.length;
    const seamless = voicings
      .slice(1)
      .map((to, index) => ({ from: index, to, seam: null as number | null }));
    const first = voicings[0];
    const steps =
      request.goesRound && first && count > 1
        ? [...seamless, { from: count - 1, to: first, seam: song.length as number | null }]
        : seamless;
    const values = charges.map(({ by, of }) => {
      const each = steps.map(({ from, to, seam }) => {
        const left = slots[from];
        const reached = slots[seam === null ? from + 1 : 0];
        const voicing = voicings[from];
        if (!left || !reached || !voicing) {
          throw new Error("a step without ends");
        }
        return of(voicing, to, { from: left, to: reached, seam });
      });
      return by === "sum" ? each.reduce((sum, value) => sum + value, 0) : Math.max(0, ...each);
    });
    if (request.aim === "region") {
      const positions = voicings.map(({ position }) => position);
      return [Math.max(...positions) - Math.min(...positions), ...values];
    }
    if (request.aim === "variety") {
      const turns = count < 3 ? 0 : request.goesRound ? count : count - 2;
      const returns = Array.from({ length: turns }, (_, index) => index).filter((index) => {
        const other = (index + 2) % count;
        const same = voicings[index]?.frets.join() === voicings[other]?.frets.join();
        return names[index] === names[other] && same;
      });
      return [returns.length, ...values];
    }
    return values;
  };
};

/** All ways to take one voicing from each layer, in the order of the layers' own. */
export const everyChoice = (
  layers: readonly (readonly Voicing[])[],
): readonly (readonly Voicing[])[] =>
  layers.reduce<readonly (readonly Voicing[])[]>(
    (choices, layer) => choices.flatMap((choice) => layer.map((voicing) => [...choice, voicing])),
    [[]],
  );
