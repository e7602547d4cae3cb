import type { SessionStep } from "../../../src-shared/practice/practice.ts";
import { sayItem } from "../../../src-shared/wording/sayPractice.ts";
import { words } from "../../../src-shared/wordTable.ts";

/** A part of a guided rehearsal in a few words: "G to C, bare slide", "rest". */
export const sayStep = (step: SessionStep): string => {
  const { rest, stages } = words.rehearsal;
  if (step.kind === "rest") return rest.toLowerCase();
  const what = sayItem(step.item);
  return step.item.kind === "song" ? what : `${what}, ${stages[step.stage].toLowerCase()}`;
};
