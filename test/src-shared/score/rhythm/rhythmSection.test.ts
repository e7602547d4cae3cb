import { describe, expect, test } from "vitest";
import { chartToScore, withFeel } from "../../../../src-shared/chartToScore.ts";
import type { Part } from "../../../../src-shared/score/score.ts";
import { wholeNeckPlan } from "../../../../src-shared/settings.ts";

const plain = { dynamics: false, walkUps: false, fills: false };
const round = { ...wholeNeckPlan, goesRound: true };

const hitsOf = (chart: string, part: Part, feel = plain, plan = round) =>
  withFeel(chartToScore(chart, plan, null), feel).score.hits.filter((hit) => hit.part === part);
const ticksOf = (...asked: Parameters<typeof hitsOf>) => hitsOf(...asked).map(({ tick }) => tick);
const linesOf = (...asked: Parameters<typeof hitsOf>) =>
  hitsOf(...asked).map(({ tick, pitches }) => [tick, ...pitches]);

// Who plays where: common practice, no published source. Pitches: C4 = 60, A4 = 69 (ISO 16, MIDI).
describe("the rhythm section", () => {
  test("in 4/4 plays root on 1 and fifth on 3, and chops on 2 and 4", () => {
    // G1 is 31; D1 would lie below the bass's E1 (28).
    expect(linesOf("| G |", "bass")).toEqual([
      [0, 31],
      [960, 38],
    ]);
    expect(ticksOf("| G |", "chop")).toEqual([480, 1440]);
  });

  test("in 3/4 plays bass on 1, root one bar and fifth the next, and chops on 2 and 3", () => {
    const chart = "Time: 3/4\n| C | C |";
    expect(linesOf(chart, "bass")).toEqual([
      [0, 36],
      [1440, 31],
    ]);
    expect(ticksOf(chart, "chop")).toEqual([480, 960, 1920, 2400]);
  });

  test("in 2/4 plays bass on 1 and chops on 2", () => {
    const chart = "Time: 2/4\n| C | F |";
    expect(ticksOf(chart, "bass")).toEqual([0, 960]);
    expect(ticksOf(chart, "chop")).toEqual([480, 1440]);
  });

  test("in 6/8 plays bass on eighths 1 and 4, and chops on 3 and 6", () => {
    const chart = "Time: 6/8\n| G |";
    expect(linesOf(chart, "bass")).toEqual([
      [0, 31],
      [720, 38],
    ]);
    expect(ticksOf(chart, "chop")).toEqual([480, 1200]);
  });

  test("in 9/8 plays bass on eighth 1, root one bar and fifth the next, and chops on 4 and 7", () => {
    const chart = "Time: 9/8\n| C | C |";
    expect(linesOf(chart, "bass")).toEqual([
      [0, 36],
      [2160, 31],
    ]);
    expect(ticksOf(chart, "chop")).toEqual([720, 1440, 2880, 3600]);
  });

  test("gives a chord of half a bar its root, and a slash chord its bass tone", () => {
    expect(linesOf("| G D/F# |", "bass")).toEqual([
      [0, 31],
      [960, 30],
    ]);
  });

  test("plays the root for the other note where the slash stands on the fifth", () => {
    expect(linesOf("| C/G |", "bass")).toEqual([
      [0, 31],
      [960, 36],
    ]);
  });

  test("gives a chord that lies between the bass's beats its root all the same", () => {
    // In 3/4 the bass has beat 1 alone; the D of beats 2 and 3 would go without.
    expect(linesOf("Time: 3/4\n| G D . | G |", "bass")).toEqual([
      [0, 31],
      [480, 38],
      [1440, 31],
    ]);
  });

  test("chops the chord's own tones from G3 up", () => {
    // A C E are 57 60 64.
    expect(hitsOf("| Am |", "chop")[0]?.pitches).toEqual([57, 60, 64]);
  });

  test("has the guitar play the bass's note an octave up, then a strum lighter than it", () => {
    const guitar = hitsOf("| G |", "guitar");
    expect(guitar.map(({ tick }) => tick)).toEqual([0, 480, 720, 960, 1440, 1680]);
    expect(guitar.map(({ pitches }) => pitches.length)).toEqual([1, 4, 3, 1, 4, 3]);
    expect(guitar[0]?.pitches).toEqual([43]);
    // D3 G3 B3 D4: 50 55 59 62.
    expect(guitar[1]?.pitches).toEqual([50, 55, 59, 62]);
    expect(guitar[1]?.level).toBeLessThan(guitar[0]?.level ?? 0);
    expect(guitar[2]?.level).toBeLessThan(guitar[1]?.level ?? 0);
  });

  test("keeps silent for N.C.", () => {
    const { score } = chartToScore("| N.C. | G |", round, null);
    expect(score.hits.length).toBeGreaterThan(0);
    expect(score.hits.every(({ tick }) => tick >= 1920)).toBe(true);
  });
});

describe("a walk-up", () => {
  const walking = { ...plain, walkUps: true };

  test("leads out of a chord that has lasted two bars, on beats 3 and 4", () => {
    expect(linesOf("| G | G | C | D |", "bass", walking).slice(2, 6)).toEqual([
      [1920, 31],
      [2880, 33],
      [3360, 35],
      [3840, 36],
    ]);
  });

  test("does not come at every change, but does at the end of a phrase of four bars", () => {
    const line = linesOf("| G | C | G | C | G | D |", "bass", walking);
    expect(line.slice(0, 6).map(([, pitch]) => pitch)).toEqual([31, 38, 36, 31, 31, 38]);
    // C down to G by B and A.
    expect(line.slice(6, 9)).toEqual([
      [5760, 36],
      [6720, 35],
      [7200, 33],
    ]);
  });

  test("in 3/4 takes beats 2 and 3", () => {
    const line = linesOf("Time: 3/4\n| G | G | C | D |", "bass", walking);
    expect(line.slice(1, 5)).toEqual([
      [1440, 38],
      [1920, 33],
      [2400, 35],
      [2880, 36],
    ]);
  });

  test("leaves out what the chord has no room for", () => {
    // Half a bar of C: its root sounds on 3, and only beat 4 is left.
    const line = linesOf("| G | G | G | G C | D |", "bass", walking);
    expect(line.filter(([tick = 0]) => tick >= 5760 && tick < 7680)).toEqual([
      [5760, 31],
      [6720, 36],
    ]);
  });

  test("takes the chord's own third and not the key's note beside it", () => {
    // Under A7 in G: B and C# up to D, not C (35 37 38).
    const line = linesOf("Key: G\n| A7 | A7 | D | G |", "bass", walking);
    expect(line.slice(2, 6).map(([, pitch]) => pitch)).toEqual([33, 35, 37, 38]);
  });
});

describe("the last bar before a new section", () => {
  const chart = "[Verse]\n| G | C |\n[Chorus]\n| D | G |";
  const filling = { ...plain, fills: true };

  test("has a bass run and more chop, which grows", () => {
    const bass = linesOf(chart, "bass", filling).filter(([at = 0]) => at >= 1920 && at < 3840);
    // C up to D: the root, then the note between.
    expect(bass).toEqual([
      [1920, 36],
      [2880, 36],
      [3360, 37],
    ]);
    const chop = hitsOf(chart, "chop", filling).filter(({ tick }) => tick >= 1920 && tick < 3840);
    expect(chop.map(({ tick }) => tick - 1920)).toEqual([480, 1200, 1440, 1680]);
    const levels = chop.map(({ level }) => level);
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
    expect(new Set(levels).size).toBe(4);
  });

  test("takes three notes where the way is long enough, also onto the same root", () => {
    const line = (bars: string) =>
      linesOf(bars, "bass", filling).filter(([at = 0]) => at >= 1920 && at < 3840);
    expect(line("[A]\n| G | G |\n[B]\n| D | G |")).toEqual([
      [1920, 31],
      [2400, 33],
      [2880, 35],
      [3360, 36],
    ]);
    expect(line("Key: C\n[A]\n| C | C |\n[B]\n| C | G |").map(([, pitch]) => pitch)).toEqual([
      36, 31, 33, 35,
    ]);
  });

  test("leads a song that goes round back to its start", () => {
    expect(ticksOf("| G | G | C | D |", "chop", filling).filter((at) => at >= 5760)).toEqual([
      6240, 6960, 7200, 7440,
    ]);
  });
});

describe("an ending", () => {
  const once = { ...wholeNeckPlan, goesRound: false };
  const lastOf = (chart: string) => {
    const { hits, length } = withFeel(chartToScore(chart, once, null), plain).score;
    const at = hits.at(-1)?.tick ?? 0;
    return { at, length, hits: hits.filter(({ tick }) => tick >= at) };
  };

  test("has all parts strike together and hold to the end of the song", () => {
    for (const [chart, at] of [
      ["Time: 4/4\n| G | C | D | G |", 3 * 1920 + 960],
      ["Time: 2/2\n| G | C | D | G |", 3 * 1920 + 960],
      ["Time: 3/4\n| G | C | D | G |", 3 * 1440],
      ["Time: 2/4\n| G | C | D | G |", 3 * 960],
      ["Time: 6/8\n| G | C | D | G |", 3 * 1440 + 720],
    ] as const) {
      const last = lastOf(chart);
      expect(last.at, chart).toBe(at);
      expect(last.hits.map(({ part }) => part).toSorted()).toEqual(["bass", "chop", "guitar"]);
      for (const hit of last.hits) {
        expect(hit.tick + hit.ticks, chart).toBe(last.length);
      }
      expect(last.hits.find(({ part }) => part === "bass")?.pitches).toEqual([31]);
    }
  });

  test("waits for a chord that comes late in the bar", () => {
    expect(lastOf("| G | C | D | D . . G |").at).toBe(3 * 1920 + 1440);
  });

  test("is none where the song ends in silence", () => {
    const { hits } = chartToScore("| G | N.C. |", once, null).score;
    expect(Math.max(...hits.map(({ tick }) => tick))).toBeLessThan(1920);
  });
});

describe("section dynamics", () => {
  const differing = { ...plain, dynamics: true };
  const levels = (chart: string) => hitsOf(chart, "bass", differing).map(({ level }) => level);

  test("hold verses back and play choruses full", () => {
    expect(levels("[Verse]\n| G |\n[Chorus 2]\n| C |")).toEqual([0.8, 0.8, 1, 1]);
  });

  test("take the second part of a tune without a chorus for the full one", () => {
    expect(levels("Form: A B A\n[A]\n| G |\n[B]\n| C |")).toEqual([0.8, 0.8, 1, 1, 0.8, 0.8]);
  });

  test("leave a song of one section alone", () => {
    expect(levels("[Verse]\n| G |")).toEqual([1, 1]);
    expect(levels("| G |")).toEqual([1, 1]);
  });
});
