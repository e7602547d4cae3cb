import { test as base, type Page } from "@playwright/test";
import type { Rendering } from "../../src-renderer/sound/renderOffline.ts";
import type { Score } from "../../src-shared/score/score.ts";
import type { Level, MixPart, Preferences } from "../../src-shared/settings.ts";
import { bpm, tick } from "../../src-shared/units.ts";
import type { Sound } from "./analysis.ts";
import type { Sent } from "./harness.ts";
import { serveHarness } from "./serveHarness.ts";

export const SAMPLE_RATE = 48_000;
/** RENDER_LEAD_IN of src-renderer/sound/renderOffline.ts. */
export const LEAD_IN = 0.08;
/** Half notes a minute; an eighth then lasts 150 ms. */
export const TEMPO = 100;
export const EIGHTH = 0.15;
export const PARTS: readonly MixPart[] = ["banjo", "bass", "guitar", "chop", "click"];

/** A test whose page is the sound harness. */
export const test = base.extend<{ page: Page }, { harnessUrl: string }>({
  harnessUrl: [
    // biome wants no empty pattern, Playwright wants a pattern: the browser is started anyway.
    async ({ browser: _ }, use) => {
      const server = await serveHarness();
      await use(server.url);
      await server.close();
    },
    { scope: "worker" },
  ],
  page: async ({ page, harnessUrl }, use) => {
    await page.goto(harnessUrl);
    await page.waitForFunction(() => "harness" in window);
    await use(page);
  },
});

export const received = ({ start, base64 }: Sent, sampleRate: number): Sound => {
  const bytes = Buffer.from(base64, "base64");
  const samples = new Float32Array(
    bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length),
  );
  return { start, sampleRate, samples };
};

/** A mix in which each part is at full, changed as `change` says. */
export const mixOf = (change: (part: MixPart) => Partial<Level>): Preferences["mix"] => {
  const level = (part: MixPart): Level => ({
    volume: 1,
    muted: false,
    solo: false,
    pan: 0,
    ...change(part),
  });
  return {
    banjo: level("banjo"),
    bass: level("bass"),
    guitar: level("guitar"),
    chop: level("chop"),
    click: level("click"),
  };
};

/** A mix in which exactly these parts sound, at full. */
export const only = (...parts: readonly MixPart[]): Preferences["mix"] =>
  mixOf((part) => ({ muted: !parts.includes(part) }));

/** Both sides of a score, its first tick (of the count-in, where there is one) at time 0. */
export const renderBoth = async (
  page: Page,
  score: Score,
  mix: Preferences["mix"],
  special: Partial<Rendering> = {},
): Promise<readonly [left: Sound, right: Sound]> => {
  const range = { start: tick(0), end: score.length };
  const rendering: Rendering = {
    score,
    tempo: bpm(TEMPO),
    mix,
    range,
    countInBars: 0,
    sampleRate: SAMPLE_RATE,
    ...special,
  };
  const sent = await page.evaluate((what) => window.harness.render(what), rendering);
  const [left, right] = sent.map((side) =>
    received({ ...side, start: -LEAD_IN }, rendering.sampleRate),
  );
  if (!left || !right) {
    throw new Error("a stereo sound has not two sides");
  }
  return [left, right];
};

/** The left side, where the middle of the mix is heard as well. */
export const render = async (
  page: Page,
  score: Score,
  mix: Preferences["mix"],
  special: Partial<Rendering> = {},
): Promise<Sound> => (await renderBoth(page, score, mix, special))[0];

/** For each expected time, how far the nearest heard one is from it; as many of both, or NaN. */
export const errors = (heard: readonly number[], expected: readonly number[]): readonly number[] =>
  heard.length === expected.length
    ? heard.map((time, index) => time - (expected[index] ?? Number.NaN))
    : [Number.NaN];

export const worst = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** When each note of the score is due, at TEMPO. */
export const eighthsOf = (score: Score): readonly number[] =>
  score.notes.map((note) => (note.tick / 240) * EIGHTH);

export const gapsOf = (times: readonly number[]): readonly number[] =>
  times.slice(1).map((time, index) => time - (times[index] ?? 0));

/** Notes a measured figure, for the list and the report. */
export const tell = (what: string, value: string): void => {
  test.info().annotations.push({ type: "measured", description: `${what}: ${value}` });
  console.log(`  measured: ${what}: ${value}`);
};
