import { type Answer, type Host, type VerbName, verbNames } from "../../src-shared/host.ts";
import { readAnswer } from "./readAnswer.ts";

/** Brings one call to the machine and back; never rejects for a reason outside our own code. */
export type Carrier = (name: VerbName, argument: unknown) => Promise<unknown>;

/** A host over anything that carries calls: a loop over the table. */
export const hostOver = (carry: Carrier): Host => {
  const entries = verbNames.map((name) => [
    name,
    async (argument: unknown): Promise<Answer<unknown>> =>
      readAnswer(name, await carry(name, argument)),
  ]);
  // readAnswer has checked every value by its verb's schema; a loop cannot say that in types.
  return Object.fromEntries(entries) as unknown as Host;
};
