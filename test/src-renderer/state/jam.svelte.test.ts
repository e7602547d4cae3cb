// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { Jam } from "../../../src-renderer/state/jam.svelte.ts";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { degreeCall } from "../../../src-shared/jam/call.ts";

const placesOf = ({ walk }: Jam) =>
  (walk.route?.placements ?? []).map(({ chord, bar, voicing }) => [
    chord.name,
    bar,
    voicing.shape,
    voicing.position,
  ]);

test("before the first call the band is silent", () => {
  const jam = new Jam();
  expect(jam.walk.timeline.stays.map(({ chord }) => chord)).toEqual([null]);
  expect(jam.walk.score.notes).toEqual([]);
  expect(jam.walk.notes).toEqual([]);
});

test("a called chord is taken where it is nearest to the hand, and goes on to the end", () => {
  const jam = new Jam();
  jam.callDegree(1, false, 0);
  jam.callDegree(4, false, 4);
  // D shape: G root at fret 8, C at 13 (common practice, no published source); a slide of five
  // frets beats the F shape at 9, which every finger would have to be formed anew for.
  expect(placesOf(jam)).toEqual([
    ["G", 0, "D", 7],
    ["C", 4, "D", 12],
  ]);
  const last = jam.walk.route?.placements.at(-1);
  expect((last?.start ?? 0) + (last?.length ?? 0)).toBe(jam.walk.timeline.length);
});

test("a later call changes nothing that is being played, and the score grows ahead of it", () => {
  const jam = new Jam();
  jam.callDegree(1, false, 0);
  const before = jam.walk.score.notes.filter(({ tick }) => tick < 3 * 1920);
  jam.callDegree(5, false, 4);
  expect(jam.walk.score.notes.filter(({ tick }) => tick < 3 * 1920)).toEqual(before);
  const { length } = jam.walk.timeline.bars;
  jam.reach(length - 1);
  expect(jam.walk.timeline.bars.length).toBeGreaterThanOrEqual(length + 31);
});

test("the score is not made anew while there are bars enough ahead", () => {
  const jam = new Jam();
  jam.callDegree(1, false, 0);
  const { walk } = jam;
  jam.reach(3);
  expect(jam.walk).toBe(walk);
});

test("what was called is kept from the first call up to the present bar, and reads back", () => {
  const jam = new Jam();
  expect(jam.toKeep(9)).toBeNull();
  jam.callDegree(1, false, 2);
  jam.callDegree(4, false, 4);
  const kept = jam.toKeep(6);
  const { value, notes } = readChart(kept?.text ?? "");
  expect(notes).toEqual([]);
  expect(value.title).toBe("Called in G");
  const bars = value.sections.flatMap((section) => section.bars);
  expect(bars.map(({ stays }) => stays[0]?.symbol)).toEqual(["1", "1", "4", "4"]);
});

test("a call that is still to come is kept too", () => {
  const jam = new Jam();
  jam.callDegree(1, false, 0);
  jam.callDegree(5, false, 3);
  expect(jam.toKeep(1)?.text).toContain("| 1 | 1 | 1 | 5 |");
});

test("a song's key, metre and tempo are taken over only before the first call", () => {
  const song = readChart("Title: Pier\nKey: A\nTime: 3/4\nTempo: 92\n| A |").value;
  const jam = new Jam();
  jam.agreeOn(song);
  expect([jam.setting.key.tonic, jam.setting.meter.beats, jam.setting.tempo]).toEqual(["A", 3, 92]);
  jam.call(degreeCall(1, ""), 0);
  jam.agreeOn(readChart("Title: Pier\nKey: C\n| C |").value);
  expect(jam.setting.key.tonic).toBe("A");
});

test("in another key the same calls are other chords", () => {
  const jam = new Jam();
  jam.callDegree(1, false, 0);
  jam.change({ key: { tonic: "D", mode: "major" } });
  expect(placesOf(jam).map(([chord]) => chord)).toEqual(["D"]);
});

const degreeIn = (bar: number): number => [1, 4, 1, 5][bar % 4] ?? 1;
const bySteps = (last: number): Jam => {
  const jam = new Jam();
  for (let bar = 0; bar <= last; bar += 1) {
    jam.callDegree(degreeIn(bar), false, bar);
    jam.reach(bar);
  }
  return jam;
};

test("a long jam plans what is near, and keeps all of it", () => {
  const jam = bySteps(500);
  const placements = jam.walk.route?.placements ?? [];
  expect(placements.at(-1)?.bar).toBe(500);
  expect(placements.length).toBeLessThan(64);
  expect(placements[0]?.bar).toBeLessThanOrEqual(500 - 16);
  const kept = readChart(jam.toKeep(501)?.text ?? "").value;
  const bars = kept.sections.flatMap((section) => section.bars);
  expect(bars.map(({ stays }) => stays[0]?.symbol)).toEqual(
    Array.from({ length: 501 }, (_, bar) => String(degreeIn(bar))),
  );
});

test("leaving out what was played long ago changes nothing of the bars that are near", () => {
  const jam = bySteps(45);
  const near = () =>
    jam.walk.score.notes
      .filter(({ tick }) => tick >= 40 * 1920 && tick < 46 * 1920)
      .map(({ placement: _, ...note }) => note);
  const before = { notes: near(), placements: jam.walk.route?.placements.length };
  jam.reach(49);
  expect(jam.walk.route?.placements.length).toBeLessThan(before.placements ?? 0);
  expect(before.notes.length).toBeGreaterThan(30);
  expect(near()).toEqual(before.notes);
});

test("starting over forgets the calls, and says what they were", () => {
  const jam = new Jam();
  jam.callDegree(1, false, 0);
  jam.reach(4);
  expect(jam.begun).toBe(true);
  expect(jam.startOver()).toHaveLength(1);
  expect([jam.isNew, jam.begun]).toEqual([true, false]);
});
