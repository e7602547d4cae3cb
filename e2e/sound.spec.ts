import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, type Page, test } from "@playwright/test";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { createServer, type ViteDevServer } from "vite";
import type { Score, Span } from "../src-shared/score/score.ts";
import { firstPreferences, type MixPart, type Preferences } from "../src-shared/settings.ts";
import { bpm, tick } from "../src-shared/units.ts";
import { levelOf, onsetsOf, peakOf, pitchAt, type Sound } from "./sound/analysis.ts";
import { handMadeScore, type Pluck, pitchOf, rhythm, roll } from "./sound/handMadeScore.ts";
import type { Sent, Sighting } from "./sound/harness.ts";

const SAMPLE_RATE = 48_000;
/** RENDER_LEAD_IN of src-renderer/sound/renderOffline.ts. */
const LEAD_IN = 0.08;
/** Half notes a minute; an eighth then lasts 150 ms. */
const TEMPO = 100;
const EIGHTH = 0.15;
const PARTS = ["banjo", "bass", "guitar", "chop", "click"] as const;

let server: ViteDevServer;
let cache: string;

test.beforeAll(async () => {
  cache = await mkdtemp(join(tmpdir(), "shortslide-sound-"));
  server = await createServer({
    root: fileURLToPath(new URL("..", import.meta.url)),
    configFile: false,
    plugins: [svelte()],
    cacheDir: cache,
    logLevel: "error",
    server: { port: 0, host: "127.0.0.1", hmr: false, watch: null },
    optimizeDeps: { entries: ["e2e/sound/harness.html"], include: ["tone"] },
  });
  await server.listen();
});

test.afterAll(async () => {
  await server.close();
  await rm(cache, { recursive: true, force: true });
});

test.beforeEach(async ({ page }) => {
  const [url] = server.resolvedUrls?.local ?? [];
  await page.goto(`${url}e2e/sound/harness.html`);
  await page.waitForFunction(() => "harness" in window);
});

const received = ({ start, base64 }: Sent, sampleRate: number): Sound => {
  const bytes = Buffer.from(base64, "base64");
  const samples = new Float32Array(
    bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length),
  );
  return { start, sampleRate, samples };
};

/** A mix in which exactly these parts sound, at full. */
const only = (...parts: readonly MixPart[]): Preferences["mix"] => {
  const level = (part: MixPart) => ({
    volume: 1,
    muted: !parts.includes(part),
    solo: false,
    pan: 0,
  });
  return {
    banjo: level("banjo"),
    bass: level("bass"),
    guitar: level("guitar"),
    chop: level("chop"),
    click: level("click"),
  };
};

/** The score as sound, its first tick at time 0. */
const render = async (page: Page, score: Score, mix: Preferences["mix"]): Promise<Sound> => {
  const range = { start: tick(0), end: score.length };
  const rendering = {
    score,
    tempo: bpm(TEMPO),
    mix,
    range,
    countInBars: 0,
    sampleRate: SAMPLE_RATE,
  };
  const [sent] = await page.evaluate((what) => window.harness.render(what), rendering);
  return received({ ...sent, start: -LEAD_IN }, SAMPLE_RATE);
};

/** For each expected time, how far the nearest heard one is from it; as many of both, or NaN. */
const errors = (heard: readonly number[], expected: readonly number[]): readonly number[] =>
  heard.length === expected.length
    ? heard.map((time, index) => time - (expected[index] ?? Number.NaN))
    : [Number.NaN];

const worst = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

const eighthsOf = (score: Score): readonly number[] =>
  score.notes.map((note) => (note.tick / 240) * EIGHTH);

const tell = (what: string, value: string): void => {
  test.info().annotations.push({ type: "measured", description: `${what}: ${value}` });
  console.log(`  measured: ${what}: ${value}`);
};

test("every instrument is silent before its stroke, sounds from its first sample, and lets go of all", async ({
  page,
}) => {
  for (const part of PARTS) {
    const { sound, voices } = await page.evaluate(
      ([name, rate]) => window.harness.instrumentAlone(name, rate),
      [part, SAMPLE_RATE] as const,
    );
    const alone = received(sound, SAMPLE_RATE);
    const first = alone.samples.findIndex((x) => x !== 0);
    expect(first, part).toBe(0.25 * SAMPLE_RATE);
    expect(peakOf(alone, 0.25, 0.28), part).toBeGreaterThan(0.05);
    expect(peakOf(alone, 0.31, 1), part).toBe(0);
    const [during, over, disposed] = voices;
    expect(during, part).toBeGreaterThan(1);
    expect([over, disposed], part).toEqual([0, 0]);
  }
});

test("the banjo sounds at the score's times, and a score that is late by 5 ms is found out", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  const late = {
    ...score,
    notes: score.notes.map((note) => ({ ...note, tick: tick(note.tick + 8) })),
  };
  const onsets = onsetsOf(await render(page, score, only("banjo")));
  const lateOnsets = onsetsOf(await render(page, late, only("banjo")));
  const found = worst(errors(onsets, eighthsOf(score)));
  tell("onsets heard / written", `${onsets.length} / ${score.notes.length}`);
  tell("worst onset error, ms", (found * 1000).toFixed(3));
  expect(found).toBeLessThan(0.002);
  expect(worst(errors(lateOnsets, eighthsOf(score)))).toBeGreaterThan(0.004);
});

test("every fret of every string is within 10 cents", async ({ page }) => {
  const places = ([1, 2, 3, 4, 5] as const).flatMap((string) =>
    Array.from({ length: 18 }, (_, place) => ({ string, place })).filter(
      ({ place }) => string !== 5 || place === 0 || place > 5,
    ),
  );
  const plucks = places.map(
    ({ string, place }, index): Pluck => ({ at: index * 2, string, fret: place, lasts: 1.9 }),
  );
  const score = handMadeScore(Math.ceil(plucks.length / 4), plucks);
  const sound = await render(page, score, only("banjo"));
  const cents = places.map(({ string, place }, index) => {
    const heard = pitchAt(sound, index * 2 * EIGHTH + 0.05, 0.15);
    return 100 * (heard - pitchOf(string, place));
  });
  tell("worst pitch error, cents", worst(cents).toFixed(2));
  expect(worst(cents)).toBeLessThan(10);
  expect(cents.every(Number.isFinite)).toBe(true);
});

test("a sliding note leaves its fret on time, passes every fret between, and has arrived on time", async ({
  page,
}) => {
  const slides = [
    { from: 5, toFret: 10 },
    { from: 12, toFret: 7 },
  ];
  for (const { from, toFret } of slides) {
    const pluck: Pluck = {
      at: 0,
      string: 2,
      fret: from,
      lasts: 7,
      glide: { from: 2, to: 4, toFret },
    };
    const sound = await render(page, handMadeScore(1, [pluck]), only("banjo"));
    const near = (pitch: number, fret: number): number => 100 * (pitch - pitchOf(2, fret));
    const before = pitchAt(sound, 2 * EIGHTH - 0.06, 0.06);
    const after = pitchAt(sound, 4 * EIGHTH, 0.06);
    tell(
      `slide ${from} to ${toFret}, cents off before and after`,
      `${near(before, from).toFixed(2)} ${near(after, toFret).toFixed(2)}`,
    );
    expect(Math.abs(near(before, from))).toBeLessThan(10);
    expect(Math.abs(near(after, toFret))).toBeLessThan(10);
    const early = pitchAt(sound, 4 * EIGHTH - 0.03, 0.024);
    expect(Math.abs(near(early, toFret - Math.sign(toFret - from)))).toBeLessThan(25);
    const way = Array.from({ length: 40 }, (_, index) =>
      pitchAt(sound, 2 * EIGHTH - 0.02 + index * 0.0075, 0.024),
    );
    expect(way.every(Number.isFinite)).toBe(true);
    const backward = way.map(
      (pitch, index) => Math.sign(from - toFret) * (pitch - (way[index - 1] ?? pitch)),
    );
    tell("most backward step on the way, cents", (100 * Math.max(...backward)).toFixed(2));
    expect(100 * Math.max(...backward)).toBeLessThan(10);
  }
});

test("a note that is slid into sets in softer, and no later", async ({ page }) => {
  const plain = handMadeScore(1, [{ at: 0, string: 2, fret: 9, lasts: 4 }]);
  const slid = { ...plain, notes: plain.notes.map((note) => ({ ...note, slideInto: true })) };
  const [hard, soft] = [
    await render(page, plain, only("banjo")),
    await render(page, slid, only("banjo")),
  ];
  const drop = levelOf(hard, 0, 0.004) - levelOf(soft, 0, 0.004);
  tell("a slid note's attack is softer by, dB", drop.toFixed(1));
  expect(drop).toBeGreaterThan(3);
  expect(drop).toBeLessThan(9);
  expect(levelOf(hard, 0.1, 0.3)).toBeCloseTo(levelOf(soft, 0.1, 0.3), 1);
  expect(onsetsOf(soft)).toEqual([0]);
});

test("a note stops where the score stops it", async ({ page }) => {
  const sound = await render(
    page,
    handMadeScore(1, [{ at: 0, string: 3, fret: 5, lasts: 2 }]),
    only("banjo"),
  );
  const drop = levelOf(sound, 0.27, 0.3) - levelOf(sound, 0.31, 0.315);
  tell("fall within 10 ms of the end, dB", drop.toFixed(1));
  expect(drop).toBeGreaterThan(30);
  expect(peakOf(sound, 0.325, 1)).toBe(0);
});

test("a string that is picked again lets go of what it sounded, whatever its length says", async ({
  page,
}) => {
  const twice = (lasts: number) =>
    handMadeScore(1, [
      { at: 0, string: 1, fret: 3, lasts },
      { at: 3, string: 1, fret: 8, lasts: 3 },
    ]);
  const exact = await render(page, twice(3), only("banjo"));
  const long = await render(page, twice(7), only("banjo"));
  expect(peakOf(long, 3 * EIGHTH, 6 * EIGHTH)).toBeGreaterThan(0.1);
  expect(Buffer.from(long.samples.buffer).equals(Buffer.from(exact.samples.buffer))).toBe(true);
});

test("nothing reaches full scale with every part at full, and each part is heard alone and silent when muted", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 12), rhythm(4));
  const end = 4 * 8 * EIGHTH;
  const all = await render(page, score, only(...PARTS));
  const peak = peakOf(all, -LEAD_IN, end + 0.4);
  tell("peak with every part at full", peak.toFixed(3));
  expect(peak).toBeLessThan(1);
  expect(peak).toBeGreaterThan(0.3);
  for (const part of PARTS) {
    const alone = await render(page, score, only(part));
    tell(
      `${part} alone at full, peak and RMS dB`,
      `${peakOf(alone, 0, end).toFixed(3)} ${levelOf(alone, 0, end).toFixed(1)}`,
    );
    expect(levelOf(alone, 0, end)).toBeGreaterThan(-45);
  }
  const none = await render(page, score, only());
  expect(peakOf(none, 0, end)).toBe(0);
  const usual = await render(page, score, firstPreferences.mix);
  tell(
    "usual mix, peak and RMS dB",
    `${peakOf(usual, 0, end).toFixed(3)} ${levelOf(usual, 0, end).toFixed(1)}`,
  );
  for (const part of PARTS) {
    const mix = { ...only(), [part]: firstPreferences.mix[part] };
    const alone = await render(page, score, mix);
    tell(
      `${part} in the usual mix, peak and RMS dB`,
      `${peakOf(alone, 0, end).toFixed(3)} ${levelOf(alone, 0, end).toFixed(1)}`,
    );
  }
});

/** Opens the score live, plays it, and does what `meanwhile` does until it is over. */
const record = async (
  page: Page,
  score: Score,
  loop: Span | null,
  meanwhile: () => Promise<void>,
): Promise<{ sound: Sound; sightings: readonly Sighting[] }> => {
  const rate = await page.evaluate(
    async ([what, tempo, mix, round]) => {
      const { live } = window.harness;
      await live.open(what, tempo, mix);
      live.engine.setLoop(round);
      live.engine.play(what.bars[0]?.start ?? what.length, 0);
      return live.sampleRate;
    },
    [score, TEMPO, only("banjo"), loop] as const,
  );
  await meanwhile();
  const { sound, sightings } = await page.evaluate(() => window.harness.live.take());
  return { sound: received(sound, rate), sightings };
};

const gapsOf = (times: readonly number[]): readonly number[] =>
  times.slice(1).map((time, index) => time - (times[index] ?? 0));

const toEnd = (page: Page): Promise<void> => page.evaluate(() => window.harness.live.over());

test("live, every note comes an eighth after the last, and the position shown is the one heard", async ({
  page,
}) => {
  const score = handMadeScore(3, roll(3, 7));
  const { sound, sightings } = await record(page, score, null, () => toEnd(page));
  const onsets = onsetsOf(sound);
  const jitter = worst(gapsOf(onsets).map((gap) => gap - EIGHTH));
  tell("live onsets heard / written", `${onsets.length} / ${score.notes.length}`);
  tell("live jitter, ms", (jitter * 1000).toFixed(3));
  expect(onsets).toHaveLength(score.notes.length);
  expect(jitter).toBeLessThan(0.002);
  const begun = onsets[0] ?? Number.NaN;
  const shown = sightings.filter(({ at }) => at > 0 && at < score.length);
  const off = shown.map(({ since, at, till }) => {
    const time = begun + at * (EIGHTH / 240);
    return Math.max(0, since - time, time - till);
  });
  tell(
    "shown position off what is heard, worst of so many, ms",
    `${(worst(off) * 1000).toFixed(3)} of ${shown.length}`,
  );
  expect(shown.length).toBeGreaterThan(100);
  expect(worst(off)).toBeLessThan(0.003);
  expect(await page.evaluate(() => window.harness.live.ended)).toBe(1);
});

test("live, a main thread that is held for 100 of every 150 ms makes nothing late", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  const { sound } = await record(page, score, null, async () => {
    await page.evaluate((end) => window.harness.live.labour(end), score.length - 240);
    await toEnd(page);
  });
  const onsets = onsetsOf(sound);
  const jitter = worst(gapsOf(onsets).map((gap) => gap - EIGHTH));
  tell("jitter with a busy main thread, ms", (jitter * 1000).toFixed(3));
  expect(onsets).toHaveLength(score.notes.length);
  expect(jitter).toBeLessThan(0.002);
});

test("live, a new tempo takes hold within the look-ahead and neither skips nor repeats a note", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  const faster = 140;
  let asked = Number.NaN;
  const { sound, sightings } = await record(page, score, null, async () => {
    asked = await page.evaluate(
      async ([at, tempo]) => {
        const { live } = window.harness;
        await live.reach(at);
        live.engine.setTempo(tempo);
        return live.now();
      },
      [tick(2500), bpm(faster)] as const,
    );
    await toEnd(page);
  });
  const onsets = onsetsOf(sound);
  const gaps = gapsOf(onsets);
  const short = (EIGHTH * TEMPO) / faster;
  const change = gaps.findIndex((gap) => Math.abs(gap - EIGHTH) > 0.001);
  const around = gaps.slice(change - 2, change + 3).map((gap) => (gap * 1000).toFixed(2));
  tell("gaps around the change, ms", around.join(" "));
  expect(onsets).toHaveLength(score.notes.length);
  expect(change).toBeGreaterThan(8);
  expect(gaps[change]).toBeGreaterThan(short - 0.001);
  expect(gaps[change]).toBeLessThan(EIGHTH);
  expect(worst(gaps.slice(change + 1).map((gap) => gap - short))).toBeLessThan(0.001);
  expect((onsets[change] ?? Number.NaN) - asked).toBeLessThan(0.2 + EIGHTH);
  const leaps = sightings.slice(1).map(({ till, at }, index) => {
    const before = sightings[index];
    const most = ((till - (before?.since ?? till)) / short) * 240;
    return at - (before?.at ?? at) - most;
  });
  expect(Math.max(...leaps)).toBeLessThan(5);
});

test("live, a loop of one bar goes round without a seam, and then on when it is let go", async ({
  page,
}) => {
  const upTheNeck = roll(1, 12).map((pluck) => ({ ...pluck, at: pluck.at + 8 }));
  const plucks = [...roll(1, 5), ...upTheNeck].map((pluck) => ({ ...pluck, lasts: 0.8 }));
  const score = handMadeScore(2, plucks);
  const loop = { start: tick(0), end: tick(1920) };
  const { sound, sightings } = await record(page, score, loop, async () => {
    await page.evaluate(async () => {
      const { live } = window.harness;
      await live.pass(2.5);
      live.engine.setLoop(null);
    });
    await toEnd(page);
  });
  const onsets = onsetsOf(sound);
  const heard = onsets.map((time) => Math.round(pitchAt(sound, time + 0.02, 0.09)));
  const barOf = (first: number): readonly number[] =>
    score.notes.slice(first, first + 8).map(({ midi }) => midi);
  tell(
    "worst gap at a seam, ms off",
    (1000 * worst(gapsOf(onsets).map((gap) => gap - EIGHTH))).toFixed(3),
  );
  expect(heard).toEqual([...barOf(0), ...barOf(0), ...barOf(0), ...barOf(8)]);
  expect(worst(gapsOf(onsets).map((gap) => gap - EIGHTH))).toBeLessThan(0.002);
  expect(Math.max(...sightings.filter(({ till }) => till < 2).map(({ at }) => at))).toBeLessThan(
    1920,
  );
});

test("live, a pause is silent at once, and play goes on where it stopped", async ({ page }) => {
  const score = handMadeScore(4, roll(4, 7));
  let paused = { at: 0, now: 0, again: 0 };
  const { sound } = await record(page, score, null, async () => {
    paused = await page.evaluate(async () => {
      const { live } = window.harness;
      await live.pass(1.03);
      const at = live.engine.pause();
      const now = live.now();
      await live.pass(0.5);
      live.engine.play(at, 0);
      return { at, now, again: live.now() };
    });
    await toEnd(page);
  });
  const onsets = onsetsOf(sound);
  const after = onsets.filter((time) => time > paused.again);
  const left = score.notes.filter((note) => note.tick >= paused.at);
  expect(peakOf(sound, paused.now + 0.06, paused.again)).toBeLessThan(1e-3);
  expect(after).toHaveLength(left.length);
  expect(worst(gapsOf(after).map((gap) => gap - EIGHTH))).toBeLessThan(0.002);
});

test("live, the player counts in, follows the song in the words of the screen, and stops at its end", async ({
  page,
}) => {
  const score = handMadeScore(2, roll(2, 7));
  const placements = [
    { start: tick(0), length: tick(960) },
    { start: tick(960), length: tick(2880) },
  ];
  const seen = await page.evaluate(([what, held]) => window.harness.follow(what, held), [
    score,
    placements,
  ] as const);
  expect(seen.problem).toBeNull();
  expect(seen.lines).toEqual([
    "stopped, bar 0 beat 0, placement 0",
    "countingIn, bar 0 beat 0, placement 0",
    "countingIn, bar 0 beat 1, placement 0",
    "playing, bar 0 beat 0, placement 0",
    "playing, bar 0 beat 1, placement 1",
    "playing, bar 1 beat 0, placement 1",
    "playing, bar 1 beat 1, placement 1",
    "stopped, bar 0 beat 0, placement 0",
  ]);
  expect(seen.least).toBeLessThan(-1800);
  expect(seen.backward).toEqual([]);
  expect(seen.loads).toBe(1);
});
