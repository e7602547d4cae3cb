import type { Bpm } from "../units.ts";
import { tempoOfStage } from "./compose.ts";
import type { Planned } from "./planned.ts";
import type { Stage } from "./practice.ts";
import { stageOf } from "./stages.ts";
import { stages } from "./standing.ts";
import type { Trouble } from "./troubleList.ts";

/** One stage of a drill as it can be printed. */
export type SheetStage<Walk extends Planned> = {
  readonly stage: Stage;
  /** What is played, at the tempo to begin with. */
  readonly walk: Walk;
  /** The tempo to come to, in beats of the meter a minute. */
  readonly goal: Bpm;
};

/** A change with its stages, the easiest first. */
export type SheetDrill<Walk extends Planned> = {
  readonly trouble: Trouble;
  readonly stages: readonly SheetStage<Walk>[];
};

/** The drills of a practice page: the first `count` of a trouble list, each in every stage. */
export const drillSheet = <Walk extends Planned>(
  walk: Walk,
  troubles: readonly Trouble[],
  count: number,
): readonly SheetDrill<Walk>[] =>
  troubles.slice(0, count).map((trouble) => ({
    trouble,
    stages: stages.flatMap((stage): readonly SheetStage<Walk>[] => {
      const { start, goal } = tempoOfStage(stage, walk.tempo, null);
      const drill = stageOf(walk, trouble.change, stage, start);
      return drill ? [{ stage, walk: drill, goal }] : [];
    }),
  }));
