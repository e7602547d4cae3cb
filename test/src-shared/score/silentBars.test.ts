import { describe, expect, test } from "vitest";
import { handMadeScore, rhythm, roll } from "../../../e2e/sound/handMadeScore.ts";
import type { Score } from "../../../src-shared/score/score.ts";
import { silentRounds } from "../../../src-shared/score/silentBars.ts";
import { tick } from "../../../src-shared/units.ts";

const BAR = 1920;
const score = handMadeScore(8, roll(8, 7), rhythm(8));
const loopOf = (first: number, last: number) => ({
  start: tick(first * BAR),
  end: tick((last + 1) * BAR),
});
const soundingBars = ({ notes, hits }: Score): readonly number[] =>
  [...new Set([...notes, ...hits].map((stroke) => Math.floor(stroke.tick / BAR)))].toSorted();

describe("the rounds of a loop with silent bars", () => {
  test("are silent every other time where a round is as long as what is played and what rests", () => {
    const scoreIn = silentRounds(score, { play: 4, rest: 4 }, loopOf(2, 5));
    const within = (round: number) =>
      soundingBars(scoreIn(round)).filter((bar) => bar >= 2 && bar <= 5);
    expect([0, 1, 2, 3].map(within)).toEqual([[2, 3, 4, 5], [], [2, 3, 4, 5], []]);
  });

  test("are as if the loop were written out, bar by bar", () => {
    for (const [play, rest, first, last] of [
      [2, 1, 0, 3],
      [3, 2, 1, 4],
      [5, 7, 6, 7],
      [1, 1, 3, 3],
    ] as const) {
      const scoreIn = silentRounds(score, { play, rest }, loopOf(first, last));
      const length = last - first + 1;
      for (let at = 0; at < 60; at += 1) {
        const sounding = soundingBars(scoreIn(Math.floor(at / length)));
        expect(sounding.includes(first + (at % length))).toBe(at % (play + rest) < play);
      }
    }
  });

  test("are the score itself without silent bars", () => {
    expect(silentRounds(score, null, loopOf(0, 1))(7)).toBe(score);
  });
});
