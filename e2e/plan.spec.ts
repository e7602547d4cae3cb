import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import type { PlanReport } from "../src-main/command/planReport.ts";

const folder = mkdtempSync(join(tmpdir(), "shortslide-plan-"));

const plan = (chart: string, ...options: readonly string[]) => {
  const file = join(folder, "song.txt");
  writeFileSync(file, chart);
  const run = spawnSync("npm", ["run", "--silent", "plan", "--", file, ...options], {
    encoding: "utf8",
  });
  return { status: run.status, out: run.stdout, says: run.stderr };
};

const chart = "Title: Gate Song  Key: G  Time: 4/4  Tempo: 150\n| G | C D | G |";

test("plan prints one JSON object whose figures agree with each other and with the formulas", () => {
  const { status, out } = plan(chart, "--shapes", "D", "--frets", "5-17", "--loop");
  expect(status).toBe(0);
  const report: PlanReport = JSON.parse(out);
  expect([report.title, report.key, report.meter, report.tempo]).toEqual([
    "Gate Song",
    "G",
    [4, 4],
    150,
  ]);
  // Open G, strings 1 to 5: D4 B3 G3 D3 G4 (common practice).
  expect(report.tuning).toEqual([62, 59, 55, 50, 67]);
  // D shape: G at frets 7-8-9 on strings 3-2-1, C at 12-13-14, D at 14-15-16 (common practice).
  expect(report.placements.map(({ chord, frets }) => [chord, frets])).toEqual([
    ["G", [9, 8, 7, null, null]],
    ["C", [14, 13, 12, null, null]],
    ["D", [16, 15, 14, null, null]],
    ["G", [9, 8, 7, null, null]],
  ]);
  expect(report.placements.map(({ bar, tick, ticks }) => [bar, tick, ticks])).toEqual([
    [1, 0, 1920],
    [2, 1920, 960],
    [2, 2880, 960],
    [3, 3840, 1920],
  ]);
  expect(report.changes.map(({ from, to, frets }) => [from, to, frets])).toEqual([
    [0, 1, 5],
    [1, 2, 2],
    [2, 3, -7],
    [3, 0, 0],
  ]);
  for (const placement of report.placements) {
    // Equal temperament: L (1 - 2^(-n/12)), L = 666.75 mm.
    expect(placement.positionMm).toBeCloseTo(666.75 * (1 - 2 ** (-placement.position / 12)), 2);
    expect(placement.root?.string).toBe(2);
  }
  const sum = report.changes.reduce((total, change) => total + change.mm, 0);
  expect(report.travelMm).toBeCloseTo(sum, 3);
  for (const note of report.notes) {
    expect(note.midi).toBe((report.tuning[note.string - 1] ?? 0) + note.fret);
  }
  expect(report.notes.filter((note) => note.slideTo).map((note) => note.tick)).toEqual([
    1920, 2880, 3840,
  ]);
});

test("plan --key plays the song in another key and --aim travel never travels further than ease", () => {
  const inBb: PlanReport = JSON.parse(plan(chart, "--key", "Bb").out);
  expect(inBb.key).toBe("Bb");
  expect(inBb.placements.map(({ chord }) => chord)).toEqual(["Bb", "Eb", "F", "Bb"]);
  const travel: PlanReport = JSON.parse(plan(chart, "--aim", "travel").out);
  const ease: PlanReport = JSON.parse(plan(chart, "--aim", "ease").out);
  expect(travel.travelMm).toBeLessThanOrEqual(ease.travelMm);
});

test("plan exits with 1 for a chart with a mistake and says where it is", () => {
  const { status, out, says } = plan("Key: G\n| G | X7 |");
  expect([status, out]).toEqual([1, ""]);
  expect(says).toMatch(/song\.txt:2:7: .*X7/);
});

test("plan exits with 1 where no allowed shape reaches a chord", () => {
  const { status, out, says } = plan("| G |", "--frets", "5-6");
  expect([status, out]).toEqual([1, ""]);
  expect(says).toContain("within frets 5 to 6");
});

test("plan refuses what is no chart's text: another encoding, an endless file, a folder", () => {
  const odd = join(folder, "odd.txt");
  const planOf = (file: string) =>
    spawnSync("npm", ["run", "--silent", "plan", "--", file], { encoding: "utf8" });
  writeFileSync(odd, Buffer.from([0x7c, 0x20, 0xe9, 0x20, 0x7c]));
  expect([planOf(odd).status, planOf(odd).stderr]).toEqual([2, expect.stringContaining("UTF-8")]);
  expect(planOf(folder).stderr).toContain("it is a folder");
  const endless = planOf("/dev/zero");
  expect([endless.status, endless.stderr]).toEqual([2, expect.stringContaining("too long")]);
});

test("plan says how each change is made at the tempo asked for", () => {
  const at = (tempo: string): PlanReport =>
    JSON.parse(
      plan("Time: 2/2\n| G | C |", "--shapes", "D", "--frets", "5-16", "--tempo", tempo).out,
    );
  const slow = at("60").changes[0];
  // G to C in the D shape: 111.6 mm at 9.91 mm, 30 + 75 log2(D/W + 1) ms (MacKenzie 1992).
  expect(slow?.needMs).toBeCloseTo(30 + 75 * Math.log2(111.627 / 9.911 + 1), 0);
  expect([slow?.how, slow?.windowMs]).toEqual(["let-one", 500]);
  // An eighth at 120 half notes a minute is 125 ms; three of them are 375 ms.
  expect([at("120").changes[0]?.how, at("120").changes[0]?.windowMs]).toEqual(["let-two", 375]);
  expect(at("200").changes[0]?.how).toBe("too-fast");
  expect(slow?.ceilingBpm).toBeCloseTo((3 * 60_000) / (4 * (slow?.needMs ?? 1)), 1);
});

test("plan counts the tempo of 6/8 in dotted quarters", () => {
  const report: PlanReport = JSON.parse(
    plan("Time: 6/8  Tempo: 1/4=120\n| G . . C . . |", "--shapes", "D", "--frets", "5-16").out,
  );
  // 120 quarters are 80 dotted quarters of three eighths, 240 ticks each.
  expect([report.meter, report.tempo]).toEqual([[6, 8], 80]);
  expect(report.placements.map(({ tick, ticks }) => [tick, ticks])).toEqual([
    [0, 720],
    [720, 720],
  ]);
  const [change] = report.changes;
  // An eighth is 250 ms; with the last note let go the hand has two of them.
  expect([change?.how, change?.windowMs]).toEqual(["let-one", 500]);
  expect(change?.ceilingBpm).toBeCloseTo((3 * 60_000) / (3 * (change?.needMs ?? 1)), 1);
});

test("plan offers other routes that really differ", () => {
  const report: PlanReport = JSON.parse(plan(chart, "--alternatives", "3").out);
  const told = report.alternatives?.map(({ placements }) => JSON.stringify(placements)) ?? [];
  expect(new Set(told).size).toBe(3);
  expect(report.alternatives?.[0]?.travelMm).toBe(report.travelMm);
});

test("plan exits with 2 for wrong use", () => {
  expect(plan(chart, "--aim", "speed").status).toBe(2);
  expect(plan(chart, "--frets", "17-5").says).toContain("--frets");
  const missing = spawnSync("npm", ["run", "--silent", "plan", "--", join(folder, "nowhere.txt")], {
    encoding: "utf8",
  });
  expect(missing.status).toBe(2);
  expect(missing.stderr).toContain("nowhere.txt");
});
