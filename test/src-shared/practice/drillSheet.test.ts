import { expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { drillSheet } from "../../../src-shared/practice/drillSheet.ts";
import { stages } from "../../../src-shared/practice/standing.ts";
import { troubleList } from "../../../src-shared/practice/troubleList.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

test("A practice page has the hardest changes, each in all four stages from slow to the goal", () => {
  const walk = chartToScore("Key: A  Tempo: 150\n| A | D | E7 | A | Bm | E |", wholeNeckPlan, null);
  const troubles = troubleList(walk, []);
  const drills = drillSheet(walk, troubles, 3);
  expect(drills.map(({ trouble }) => trouble)).toEqual(troubles.slice(0, 3));
  for (const drill of drills) {
    expect(drill.stages.map(({ stage }) => stage)).toEqual(stages);
    expect(drill.stages.map(({ walk: { tempo } }) => tempo)).toEqual([90, 75, 105, 120]);
    expect(drill.stages.map(({ goal }) => goal)).toEqual([150, 120, 150, 150]);
  }
});
