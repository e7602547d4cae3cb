import { describe, expect, test } from "vitest";
import { minutesByWeek, tempoSeries, whatMoved } from "../../../src-shared/practice/progress.ts";
import { bpm, milliseconds } from "../../../src-shared/units.ts";
import { loggedRound } from "../../laws/loggedRound.ts";

const DAY_MS = 86_400_000;
const dayOf = (atMs: number): number => Math.floor(atMs / DAY_MS);
const at = (day: number, tempo: number, mark: "clean" | "not-yet" | null, second = 0) =>
  loggedRound(`${day} ${tempo} ${second}`, {
    tempo: bpm(tempo),
    mark,
    atMs: day * DAY_MS + 1000 * second,
  });

describe("tempo over days", () => {
  test("has the fastest clean round of each day, and the fastest that was tried", () => {
    const log = [
      at(8, 90, "clean"),
      at(8, 96, "not-yet", 1),
      at(8, 84, "clean", 2),
      at(9, 99, null),
    ];
    expect(tempoSeries(log, dayOf).map(({ days }) => days)).toEqual([
      [
        { day: 8, clean: 90, tried: 96 },
        { day: 9, clean: null, tried: 99 },
      ],
    ]);
  });

  test("keeps the bare slide apart, and each song's changes", () => {
    const log = [
      at(3, 80, "clean"),
      loggedRound("s", { stage: "slide", atMs: 4 * DAY_MS }),
      loggedRound("o", { atMs: 5 * DAY_MS }, { id: "mill", title: "Mill Race" }),
    ];
    const found = tempoSeries(log, dayOf).map(({ song, bare }) => [song?.title, bare]);
    expect(found).toEqual([
      ["Mill Race", false],
      ["Ferry Gäte “№ 7” 🪕", true],
      ["Ferry Gäte “№ 7” 🪕", false],
    ]);
  });

  test("counts as the newest round does where a song's metre has changed", () => {
    const old = loggedRound("q", { tempo: bpm(180), unit: 4, atMs: 2 * DAY_MS });
    const six = loggedRound("d", { tempo: bpm(60), unit: 8, atMs: 3 * DAY_MS });
    const [series] = tempoSeries([old, six, at(4, 95, "clean")], dayOf);
    // 180 quarters are 90 half notes, 60 dotted quarters 45.
    expect(series?.days.map(({ clean }) => clean)).toEqual([90, 45, 95]);
    expect(series?.unit).toBe(2);
  });
});

describe("what moved", () => {
  const gains = (...log: readonly ReturnType<typeof at>[]) =>
    whatMoved(tempoSeries(log, dayOf), 40, 28).map(({ before, now }) => [before, now]);

  test("goes from the first clean day within the time to the last", () => {
    expect(gains(at(11, 70, "clean"), at(20, 75, "clean"), at(39, 88, "clean"))).toEqual([
      [75, 88],
    ]);
    expect(gains(at(13, 70, "clean"), at(14, 66, "clean"))).toEqual([[70, 66]]);
  });

  test("is nothing with one clean day, or with no change", () => {
    expect(gains(at(20, 75, "clean"), at(30, 90, "not-yet"))).toEqual([]);
    expect(gains(at(20, 75, "clean"), at(30, 75, "clean"))).toEqual([]);
  });
});

describe("minutes a week", () => {
  test("add up to what was played, with weeks of nothing in between", () => {
    const lasting = (day: number, minutes: number) =>
      loggedRound(`${day}`, { atMs: day * DAY_MS, lasted: milliseconds(60_000 * minutes) });
    // Today is day 50, the third of its week: weeks begin on days 48, 41, 34.
    const log = [lasting(34, 5), lasting(40, 7), lasting(48, 11), lasting(50, 13), lasting(33, 99)];
    expect(minutesByWeek(log, dayOf, 50, 2, 3)).toEqual([
      { from: 34, minutes: 12 },
      { from: 41, minutes: 0 },
      { from: 48, minutes: 24 },
    ]);
  });
});
