import { existsSync, readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { readChart } from "../../src-shared/chart/readChart.ts";
import { chartToScore } from "../../src-shared/chartToScore.ts";
import { hasErrors } from "../../src-shared/diagnostic.ts";
import { readAbc, readAbcText } from "../../src-shared/exchange/readAbc.ts";
import { wholeNeckPlan } from "../../src-shared/settings.ts";

/*
 * All tunes of five files of the Nottingham folk tune collection (Eric Foxley's Nottingham Music
 * Database, as cleaned in github.com/jukedeck/nottingham-dataset).
 */
const folder = resolve("../shared/nottingham");
const there = existsSync(folder);
const files = there ? readdirSync(folder).filter((name) => name.endsWith(".abc")) : [];
/** Each tune of the files by itself: its text, and the song or songs that it gives. */
const tunes = files.flatMap((file) =>
  readFileSync(resolve(folder, file), "utf8")
    .split(/^(?=X:)/m)
    .filter((text) => text.startsWith("X:"))
    .map((text) => {
      const found = readAbcText(text);
      return { file, text, songs: found.ok ? found.tunes : [] };
    }),
);

describe.runIf(there)("the tunes of the Nottingham collection", () => {
  test("are all found, and play or say why they cannot", () => {
    const inFiles = files.flatMap((file) => {
      const found = readAbc(readFileSync(resolve(folder, file)));
      return found.ok ? found.tunes.map((tune) => tune.title) : [];
    });
    const apart = tunes.flatMap(({ songs }) => songs.map((song) => song.title));
    expect(apart).toEqual(inFiles);
    const refusals = new Map<string, number>();
    let [played, parts] = [0, 0];
    const songs = tunes.flatMap(({ file, songs: own }) =>
      own.map((tune, part) => ({ file, tune, part })),
    );
    for (const { file, tune, part } of songs) {
      if (!tune.ok) {
        const why = tune.says.replace(/bar \d+/, "a bar");
        refusals.set(why, (refusals.get(why) ?? 0) + 1);
        expect(tune.try, tune.title).toMatch(/^\S.+\.$/);
        continue;
      }
      const walk = chartToScore(tune.chart, wholeNeckPlan, null);
      const errors = walk.notes.filter((note) => note.severity === "error");
      expect(
        errors.map((note) => note.says),
        `${file}: ${tune.title}\n${tune.chart}`,
      ).toEqual([]);
      expect(hasErrors(walk.notes)).toBe(false);
      expect(walk.score.notes.length, tune.title).toBeGreaterThan(0);
      expect(walk.route?.placements.length, tune.title).toBeGreaterThan(0);
      played += part === 0 ? 1 : 0;
      parts += part === 0 ? 0 : 1;
    }
    console.info(
      `Nottingham: ${tunes.length} tunes, ${played} import, plan and play (with ${parts} further parts in another metre)`,
    );
    for (const [why, count] of refusals) {
      console.info(`  ${count}: ${why}`);
    }
    expect(played + [...refusals.values()].reduce((sum, count) => sum + count, 0)).toBe(
      tunes.length,
    );
  });

  test("have the roots that their files write, one after the other", () => {
    // Read with a plain expression, without the parser: quotes with a root, two in a row are one.
    const runs = (roots: readonly string[]): string =>
      roots.filter((root, at) => root !== roots[at - 1]).join(" ");
    let alike = 0;
    for (const { text, songs } of tunes) {
      const all = songs.filter((song) => song.ok);
      const [tune] = all;
      if (tune === undefined) {
        continue;
      }
      const own = (text.split(/\n[ \t]*\n/)[0] ?? "").replace(/^N:.*$/m, "");
      const quoted = [...own.matchAll(/"([^"]*)"/g)].map((match) => match[1] ?? "");
      const inFile = quoted.flatMap((each) => /^\s*\(?([A-G][b#]?)/.exec(each)?.[1] ?? []);
      const inChart = all
        .flatMap((song) => readChart(song.chart).value.sections)
        .flatMap((section) => section.bars.flatMap((bar) => bar.stays))
        .flatMap((stay) => stay.chord?.root ?? []);
      if (runs(inFile) === runs(inChart)) {
        alike += 1;
      } else {
        // Whatever is not in the chart has been said: the other of two chords, or a pick-up's.
        expect(tune.left.join(" "), tune.title).toMatch(/is the other|pick-up|between two eighths/);
      }
    }
    console.info(`Nottingham: ${alike} of them have just the roots that their files write`);
    expect(alike).toBeGreaterThan(150);
  });
});
