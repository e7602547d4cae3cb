import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { itemId } from "../../../src-shared/practice/itemId.ts";
import { tempoThatWorks } from "../../../src-shared/practice/material.ts";
import { atTempo } from "../../../src-shared/practice/planned.ts";
import type { Item, Mark, Round, Stage } from "../../../src-shared/practice/practice.ts";
import { nextStage } from "../../../src-shared/practice/standing.ts";
import { troubleList, urgency } from "../../../src-shared/practice/troubleList.ts";
import { newSongSettings, wholeNeckPlan } from "../../../src-shared/settings.ts";
import { bpm, milliseconds } from "../../../src-shared/units.ts";
import { anyPlanned } from "../../laws/anyPlanned.ts";

const plan = { ...newSongSettings.plan, shapes: ["F"] as const };
const walk = chartToScore(
  "Key: G  Time: 4/4  Tempo: 180\n| G | C | G | C | D | C | G | G |",
  plan,
  null,
);

const round = (item: Item, stage: Stage, tempo: number, mark: Mark | null): Round => ({
  item,
  stage,
  tempo: bpm(tempo),
  unit: 4,
  mark,
  atMs: 1_790_000_000_000,
  lasted: milliseconds(2300),
  shift: null,
});

const named = (list: ReturnType<typeof troubleList>): readonly string[] =>
  list.map(({ change }) => `${change.from.chord} ${change.to.chord}`);

describe("the trouble list", () => {
  test("has each change once with all its places", () => {
    const list = troubleList(walk, []);
    const places = Object.fromEntries(
      list.map((trouble, index) => [named(list)[index], trouble.places.map(({ bar }) => bar)]),
    );
    expect(places).toEqual({ "G C": [1, 3], "C G": [2, 6], "C D": [4], "D C": [5] });
  });

  test("begins with what takes the most of its time: with one shape alone the longest way", () => {
    const list = troubleList(walk, []);
    expect(list.map(({ load }) => load)).toEqual(
      list.map(({ load }) => load).toSorted((a, b) => b - a),
    );
    // G at fret 5, C at 10, D at 12: up and down 5 before up and down 2.
    expect(named(list).slice(0, 2).toSorted()).toEqual(["C G", "G C"]);
    expect(list[0]?.why).toContain("long-slide");
    expect(list.at(-1)?.why).not.toContain("long-slide");
  });

  test("says that there is no time where there is none, at this tempo and not at half of it", () => {
    const half = chartToScore(
      "Key: G  Time: 2/2  Tempo: 150\n| G C | D G |",
      { ...plan, hand: "learner" },
      null,
    );
    const fast = troubleList(half, []);
    expect(fast[0]?.load).toBeGreaterThan(1);
    expect(fast[0]?.why).toContain("no-time");
    const slow = troubleList(atTempo(half, bpm(60)), []);
    expect(slow.flatMap(({ why }) => why)).not.toContain("no-time");
  });

  test("says that fingers cross from F shape to D shape, where index and middle trade strings", () => {
    const pins = [
      { bar: 0, frets: [5, 3, 4, null, null] as const, chord: "G" },
      { bar: 1, frets: [14, 13, 12, null, null] as const, chord: "C" },
    ].map((pin) => ({ ...pin, kind: "hold" as const, eighth: 0, time: null }));
    const crossing = chartToScore("Key: G\n| G | C |", { ...wholeNeckPlan, pins }, null);
    expect(troubleList(crossing, [])[0]?.why).toContain("fingers-cross");
    expect(troubleList(walk, []).flatMap(({ why }) => why)).not.toContain("fingers-cross");
  });

  test("puts what the player marks as not yet before what is as hard, and clean ones behind", () => {
    const [first, second] = troubleList(walk, []);
    const last = troubleList(walk, []).at(-1);
    if (!first || !second || !last) throw new Error("the tune has fewer changes than that");
    const misses = Array.from({ length: 4 }, () => round(last.change, "tempo", 120, "not-yet"));
    const cleans = [first, second].flatMap(({ change }) =>
      Array.from({ length: 4 }, () => round(change, "tempo", 180, "clean")),
    );
    const list = troubleList(walk, [...misses, ...cleans]);
    expect(itemId(list[0]?.change ?? first.change)).toBe(itemId(last.change));
    expect(list[0]?.why).toContain("not-yet");
    expect(
      list
        .slice(-2)
        .map(({ change }) => itemId(change))
        .toSorted(),
    ).toEqual([first, second].map(({ change }) => itemId(change)).toSorted());
  });

  test("does not take a clean round without the roll, or far below the tempo, for one at it", () => {
    const [first] = troubleList(walk, []);
    if (!first) throw new Error("nothing moves");
    const rounds = [
      round(first.change, "slide", 180, "clean"),
      round(first.change, "slow", 90, "clean"),
    ];
    expect(troubleList(walk, rounds)[0]?.marks).toEqual([]);
  });

  test("of any song has every change that moves at exactly one entry", () => {
    fc.assert(
      fc.property(anyPlanned, (song) => {
        const list = troubleList(song, []);
        const moving = (song.route?.legs ?? []).filter(({ need }) => need > 0);
        expect(list.flatMap(({ places }) => places.map(({ leg }) => leg))).toHaveLength(
          moving.length,
        );
        expect(new Set(list.map(({ change }) => itemId(change))).size).toBe(list.length);
        expect(Math.max(0, ...list.map(({ load }) => load))).toBe(
          Math.max(0, ...moving.map(({ need, window }) => need / window)),
        );
      }),
    );
  });
});

describe("how much a change needs work", () => {
  test("grows with its load and with each miss, and falls with each clean round", () => {
    const marks = fc.array(fc.constantFrom<Mark>("clean", "not-yet"), { maxLength: 6 });
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3, noNaN: true }), marks, (load, some) => {
        expect(urgency(load * 1.1, some)).toBeGreaterThan(urgency(load, some));
        expect(urgency(load, [...some, "not-yet"])).toBeGreaterThan(
          urgency(load, [...some, "clean"]),
        );
        expect(urgency(load, some)).toBeGreaterThan(0.5 * load);
        expect(urgency(load, some)).toBeLessThan(1.5 * load);
      }),
    );
  });
});

describe("where to begin", () => {
  test("is the bare slide, and one stage after the last that was clean", () => {
    const item: Item = { kind: "passage", firstBar: 2, lastBar: 3 };
    expect(nextStage([], item)).toBe("slide");
    expect(nextStage([round(item, "slide", 100, "not-yet")], item)).toBe("slide");
    expect(nextStage([round(item, "slow", 100, "clean")], item)).toBe("tempo");
    expect(nextStage([round(item, "song", 100, "clean")], item)).toBe("song");
  });

  test("with the whole song is what was clean, else below what its hardest change allows", () => {
    expect(tempoThatWorks(walk, [round({ kind: "song" }, "song", 131, "clean")])).toBe(131);
    expect(tempoThatWorks(walk, [round({ kind: "song" }, "song", 300, "clean")])).toBe(180);
    fc.assert(
      fc.property(anyPlanned, (song) => {
        const works = tempoThatWorks(song, []);
        expect(works).toBeLessThanOrEqual(song.tempo);
        const slowed = atTempo(song, works);
        const inTime = (slowed.route?.legs ?? []).every(({ way }) => way !== "too-fast");
        expect(inTime || works <= Math.ceil(song.tempo / 2)).toBe(true);
      }),
    );
  });
});
