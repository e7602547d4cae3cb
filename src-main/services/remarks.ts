import type { Problem } from "../../src-shared/host.ts";

/** Tells the player of something that did not keep a call from being answered. */
export type Remark = (problem: Problem) => void;

/** Where no player can be told, whoever runs the program is. */
export const remarkTo =
  (log: (line: string) => void): Remark =>
  (problem) =>
    log(`${problem.says} ${problem.try}`);

/** What was remarked since the last time one asked. */
export type Remarks = { readonly add: Remark; readonly take: () => readonly Problem[] };

/** An empty slip to write remarks on. */
export const makeRemarks = (): Remarks => {
  let all: readonly Problem[] = [];
  return {
    add: (problem) => {
      all = [...all, problem];
    },
    take: () => {
      const taken = all;
      all = [];
      return taken;
    },
  };
};
