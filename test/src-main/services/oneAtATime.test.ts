import { expect, test } from "vitest";
import { makeOneAtATime } from "../../../src-main/services/oneAtATime.ts";

test("work given at once is done in order, each after the one before has ended", async () => {
  const inTurn = makeOneAtATime();
  const steps: string[] = [];
  const work = (name: string, turns: number) => async (): Promise<string> => {
    steps.push(`${name} starts`);
    for (let turn = 0; turn < turns; turn += 1) {
      await Promise.resolve();
    }
    steps.push(`${name} ends`);
    return name;
  };
  const names = await Promise.all([inTurn(work("slow", 9)), inTurn(work("quick", 1))]);
  expect(names).toEqual(["slow", "quick"]);
  expect(steps).toEqual(["slow starts", "slow ends", "quick starts", "quick ends"]);
});

test("work that fails tells its own caller, and the next is done all the same", async () => {
  const inTurn = makeOneAtATime();
  const failing = inTurn(() => Promise.reject(new Error("no room")));
  const next = inTurn(async () => "done");
  await expect(failing).rejects.toThrow("no room");
  expect(await next).toBe("done");
});
