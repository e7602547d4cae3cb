import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";

const folder = mkdtempSync(join(tmpdir(), "shortslide-plan-"));

const plan = (chart: string, ...options: readonly string[]) => {
  const file = join(folder, "song.txt");
  writeFileSync(file, chart);
  const run = spawnSync("npm", ["run", "--silent", "plan", "--", file, ...options], {
    encoding: "utf8",
  });
  return { status: run.status, out: run.stdout, says: run.stderr };
};

type Report = {
  readonly title: string;
  readonly key: string;
  readonly meter: readonly number[];
  readonly tempo: number;
  readonly tuning: readonly number[];
  readonly placements: readonly {
    readonly bar: number;
    readonly tick: number;
    readonly ticks: number;
    readonly chord: string;
    readonly shape: string;
    readonly frets: readonly (number | null)[];
    readonly fingers: readonly (number | null)[];
    readonly position: number;
    readonly positionMm: number;
    readonly root: { readonly string: number; readonly fret: number } | null;
  }[];
  readonly changes: readonly {
    readonly from: number;
    readonly to: number;
    readonly frets: number;
    readonly mm: number;
  }[];
  readonly travelMm: number;
  readonly notes: readonly {
    readonly tick: number;
    readonly string: number;
    readonly fret: number;
    readonly midi: number;
    readonly finger: string;
    readonly slideTo?: boolean;
  }[];
};

const chart = "Title: Gate Song  Key: G  Time: 4/4  Tempo: 150\n| G | C D | G |";

test("plan prints one JSON object whose figures agree with each other and with the formulas", () => {
  const { status, out } = plan(chart, "--shapes", "D", "--frets", "5-17", "--loop");
  expect(status).toBe(0);
  const report: Report = JSON.parse(out);
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
  const inBb: Report = JSON.parse(plan(chart, "--key", "Bb").out);
  expect(inBb.key).toBe("Bb");
  expect(inBb.placements.map(({ chord }) => chord)).toEqual(["Bb", "Eb", "F", "Bb"]);
  const travel: Report = JSON.parse(plan(chart, "--aim", "travel").out);
  const ease: Report = JSON.parse(plan(chart, "--aim", "ease").out);
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

test("plan exits with 2 for wrong use", () => {
  expect(plan(chart, "--aim", "speed").status).toBe(2);
  expect(plan(chart, "--frets", "17-5").says).toContain("--frets");
  const missing = spawnSync("npm", ["run", "--silent", "plan", "--", join(folder, "nowhere.txt")], {
    encoding: "utf8",
  });
  expect(missing.status).toBe(2);
  expect(missing.stderr).toContain("nowhere.txt");
});
