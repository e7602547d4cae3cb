import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { itemId } from "../../../src-shared/practice/itemId.ts";
import type { LogEntry } from "../../../src-shared/practice/logLine.ts";
import type { Mark } from "../../../src-shared/practice/practice.ts";
import { dueItems, restDays, standings } from "../../../src-shared/practice/spacing.ts";
import { bpm } from "../../../src-shared/units.ts";
import { change, loggedRound } from "../../laws/loggedRound.ts";

const DAY_MS = 86_400_000;
const dayOf = (atMs: number): number => Math.floor(atMs / DAY_MS);
const SONG = "ferry-gate";
const on = (day: number, marks: readonly (Mark | null)[]): readonly LogEntry[] =>
  marks.map((mark, index) =>
    loggedRound(`${day} ${index}`, { mark, atMs: day * DAY_MS + 1000 * index }),
  );
const dueOn = (log: readonly LogEntry[]) => standings(log, SONG, dayOf).map((one) => one.dueOn);
const good = ["clean", "clean", "not-yet", "clean"] as const;
const poor = ["clean", "not-yet", "clean", "not-yet"] as const;

describe("what was practised", () => {
  test("is due the next day at first, then after 2, 4, 8 and 16 days, and no later", () => {
    let day = 100;
    let log: readonly LogEntry[] = [];
    const gaps: number[] = [];
    for (let visit = 0; visit < 7; visit += 1) {
      log = [...log, ...on(day, good)];
      const next = dueOn(log)[0] ?? 0;
      gaps.push(next - day);
      day = next;
    }
    expect(gaps).toEqual([1, 2, 4, 8, 16, 16, 16]);
  });

  test("is due the next day after a poor one, and begins again from there", () => {
    const log = [...on(100, good), ...on(101, good), ...on(103, poor)];
    expect(dueOn(log)).toEqual([104]);
    expect(dueOn([...log, ...on(104, good)])).toEqual([106]);
  });

  test("waits no longer for having been played again too early", () => {
    const log = [...on(100, good), ...on(101, good), ...on(102, good)];
    expect(dueOn(log)).toEqual([104]);
  });

  test("went well on a day whose last four marks were clean but for one, however it began", () => {
    const late = ["not-yet", "not-yet", "not-yet", "clean", "clean", "clean"] as const;
    expect(dueOn([...on(100, good), ...on(101, late)])).toEqual([103]);
  });

  test("is not due where it was never marked, and an unmarked day changes nothing", () => {
    expect(dueOn(on(100, [null, null]))).toEqual([]);
    expect(dueOn([...on(100, good), ...on(107, [null])])).toEqual([101]);
  });

  test("is due with the stage it was last played in and the tempo it was last clean at", () => {
    const log = [
      loggedRound("a", { atMs: 5 * DAY_MS, tempo: bpm(88) }),
      loggedRound("b", { atMs: 6 * DAY_MS, tempo: bpm(94), mark: "not-yet", stage: "song" }),
    ];
    expect(dueItems(log, SONG, 7, dayOf)).toEqual([{ item: change, stage: "song", tempo: 88 }]);
  });

  test("of other songs, and exercises, is asked for on its own", () => {
    const exercise = { kind: "exercise", name: "pairs in D" } as const;
    const log = [
      ...on(3, good),
      loggedRound("x", { item: exercise, atMs: 4 * DAY_MS }, null),
      loggedRound("y", { atMs: 4 * DAY_MS }, { id: "mill", title: "Mill Race" }),
    ];
    expect(dueItems(log, null, 30, dayOf).map(({ item }) => item)).toEqual([exercise]);
    expect(dueItems(log, "mill", 30, dayOf)).toHaveLength(1);
  });
});

const anyDay = fc.record({
  day: fc.integer({ min: 0, max: 60 }),
  bar: fc.integer({ min: 0, max: 4 }),
  marks: fc.array(fc.constantFrom("clean" as const, "not-yet" as const, null), { maxLength: 6 }),
});
const logOf = (days: readonly { day: number; bar: number; marks: readonly (Mark | null)[] }[]) =>
  days.flatMap(({ day, bar, marks }, visit) =>
    marks.map((mark, index) =>
      loggedRound(`${visit} ${index}`, {
        item: { kind: "passage", firstBar: bar, lastBar: bar + 1 },
        mark,
        atMs: day * DAY_MS + 1000 * visit + index,
      }),
    ),
  );

describe("every log", () => {
  test("has nothing due on the day it was marked, and everything 16 days after at the latest", () => {
    fc.assert(
      fc.property(fc.array(anyDay, { maxLength: 30 }), (days) => {
        const log = logOf(days);
        for (const { id, dueOn: due } of standings(log, SONG, dayOf)) {
          const marked = log.filter(
            ({ round }) => itemId(round.item) === id && round.mark !== null,
          );
          const last = Math.max(...marked.map(({ round }) => dayOf(round.atMs)));
          expect(restDays).toContain(due - last);
        }
      }),
    );
  });

  test("says the same whatever order its lines are in", () => {
    fc.assert(
      fc.property(fc.array(anyDay, { maxLength: 20 }), (days) => {
        const log = logOf(days);
        expect(dueItems(log.toReversed(), SONG, 61, dayOf)).toEqual(dueItems(log, SONG, 61, dayOf));
      }),
    );
  });

  test("lets nothing starve: whoever plays the first due thing of each day comes to all of them", () => {
    fc.assert(
      fc.property(fc.array(anyDay, { minLength: 1, maxLength: 20 }), fc.nat(), (days, seed) => {
        let log: readonly LogEntry[] = logOf(days);
        const all = standings(log, SONG, dayOf).map(({ id }) => id);
        const seen = new Set<string>();
        for (let day = 61; day < 61 + 40; day += 1) {
          const [first] = dueItems(log, SONG, day, dayOf);
          if (first) {
            seen.add(itemId(first.item));
            const mark = (seed + day) % 3 === 0 ? "not-yet" : "clean";
            const round = { item: first.item, mark, atMs: day * DAY_MS } as const;
            log = [...log, loggedRound(`day ${day}`, round)];
          }
        }
        expect([...seen].toSorted()).toEqual(all.toSorted());
      }),
    );
  });
});
