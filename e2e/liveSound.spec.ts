import { expect, type Page } from "@playwright/test";
import type { Score, Span } from "../src-shared/score/score.ts";
import type { Preferences } from "../src-shared/settings.ts";
import { bpm, tick } from "../src-shared/units.ts";
import { onsetsOf, peakOf, pitchAt, type Sound } from "./sound/analysis.ts";
import { handMadeScore, rhythm, roll } from "./sound/handMadeScore.ts";
import type { Sighting } from "./sound/harness.ts";
import { EIGHTH, gapsOf, only, received, TEMPO, tell, test, worst } from "./sound/soundPage.ts";

type Session = {
  readonly score: Score;
  /** In beats of the meter; usually TEMPO. */
  readonly tempo?: number;
  readonly loop?: Span;
  /** Bars of clicks before each further round. */
  readonly countInEachRound?: number;
  readonly mix?: Preferences["mix"];
  readonly silent?: { readonly play: number; readonly rest: number };
};

/** Opens the score live, plays it, and does what `meanwhile` does until it is over. */
const record = async (
  page: Page,
  session: Session,
  meanwhile: () => Promise<void>,
): Promise<{ sound: Sound; sightings: readonly Sighting[] }> => {
  const { score, tempo = TEMPO, loop = null, countInEachRound = 0, mix = only("banjo") } = session;
  const { silent = null } = session;
  const rate = await page.evaluate(
    async ([what, speed, levels, round, bars, rests]) => {
      const { live } = window.harness;
      await live.open(what, speed, levels);
      live.engine.load(what, speed, rests);
      live.engine.setLoop(round);
      live.engine.setCountInEachRound(bars);
      live.engine.play(what.bars[0]?.start ?? what.length, 0);
      return live.sampleRate;
    },
    [score, bpm(tempo), mix, loop, countInEachRound, silent] as const,
  );
  await meanwhile();
  const { sound, sightings } = await page.evaluate(() => window.harness.live.take());
  return { sound: received(sound, rate), sightings };
};

const toEnd = (page: Page): Promise<void> => page.evaluate(() => window.harness.live.over());

test("live, every note comes an eighth after the last, and the position shown is the one heard", async ({
  page,
}) => {
  const score = handMadeScore(3, roll(3, 7));
  const { sound, sightings } = await record(page, { score }, () => toEnd(page));
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
  const { sound } = await record(page, { score }, async () => {
    await page.evaluate((end) => window.harness.live.labour(end), score.length - 240);
    await toEnd(page);
  });
  const onsets = onsetsOf(sound);
  const jitter = worst(gapsOf(onsets).map((gap) => gap - EIGHTH));
  tell("jitter with a busy main thread, ms", (jitter * 1000).toFixed(3));
  expect(onsets).toHaveLength(score.notes.length);
  expect(jitter).toBeLessThan(0.002);
});

for (const [before, after] of [
  [160, 100],
  [160, 60],
  [70, 160],
] as const) {
  test(`live, a new tempo takes hold within an eighth and neither skips nor repeats a note, ${before} to ${after}`, async ({
    page,
  }) => {
    const score = handMadeScore(5, roll(5, 7));
    let asked = Number.NaN;
    const { sound, sightings } = await record(page, { score, tempo: before }, async () => {
      asked = await page.evaluate(
        async ([at, tempo]) => {
          const { live } = window.harness;
          await live.reach(at);
          live.engine.setTempo(tempo);
          return live.now();
        },
        [tick(2500), bpm(after)] as const,
      );
      await toEnd(page);
    });
    const onsets = onsetsOf(sound);
    const gaps = gapsOf(onsets);
    const [old, young] = [15 / before, 15 / after];
    const change = gaps.findIndex((gap) => Math.abs(gap - old) > 0.001);
    const around = gaps.slice(change - 2, change + 3).map((gap) => (gap * 1000).toFixed(2));
    tell("gaps around the change, ms", around.join(" "));
    expect(onsets).toHaveLength(score.notes.length);
    expect(change).toBeGreaterThan(8);
    expect(gaps[change]).toBeGreaterThan(Math.min(old, young) - 0.001);
    expect(gaps[change]).toBeLessThan(Math.max(old, young) + 0.001);
    expect(worst(gaps.slice(0, change).map((gap) => gap - old))).toBeLessThan(0.001);
    expect(worst(gaps.slice(change + 1).map((gap) => gap - young))).toBeLessThan(0.001);
    // The tempo changes at some time between two onsets, told by how long the gap between them is.
    const share = ((gaps[change] ?? Number.NaN) - young) / (old - young);
    const took = (onsets[change] ?? Number.NaN) + share * old - asked;
    tell(
      "in effect after, ms (an eighth lasts)",
      `${(took * 1000).toFixed(0)} (${(old * 1000).toFixed(0)})`,
    );
    expect(took).toBeLessThan(old);
    const leaps = sightings.slice(1).map(({ till, at }, index) => {
      const last = sightings[index];
      const most = ((till - (last?.since ?? till)) / Math.min(old, young)) * 240;
      return at - (last?.at ?? at) - most;
    });
    expect(Math.max(...leaps)).toBeLessThan(5);
  });
}

test("live, a loop of one bar goes round without a seam, and then on when it is let go", async ({
  page,
}) => {
  const upTheNeck = roll(1, 12).map((pluck) => ({ ...pluck, at: pluck.at + 8 }));
  const plucks = [...roll(1, 5), ...upTheNeck].map((pluck) => ({ ...pluck, lasts: 0.8 }));
  const score = handMadeScore(2, plucks);
  const loop = { start: tick(0), end: tick(1920) };
  const { sound, sightings } = await record(page, { score, loop }, async () => {
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
  const { sound } = await record(page, { score }, async () => {
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

test("live, half a minute at 300 quarters a minute, with the main thread held 100 ms of every second, has nothing late", async ({
  page,
}) => {
  const score = handMadeScore(38, roll(38, 7));
  const { sound } = await record(page, { score, tempo: 150 }, async () => {
    await page.evaluate((end) => window.harness.live.labour(end, 900), score.length - 240);
    await toEnd(page);
  });
  const onsets = onsetsOf(sound);
  const begun = onsets[0] ?? Number.NaN;
  const late = onsets
    .map((time, index) => Math.abs(time - begun - index * 0.1))
    .toSorted((a, b) => a - b);
  const p99 = late[Math.floor(late.length * 0.99)] ?? Number.NaN;
  tell("onsets heard / written", `${onsets.length} / ${score.notes.length}`);
  tell(
    "99 % of onsets are off by less than, and the worst by, ms",
    `${(p99 * 1000).toFixed(3)} ${(worst(late) * 1000).toFixed(3)}`,
  );
  expect(onsets).toHaveLength(score.notes.length);
  expect(p99).toBeLessThan(0.001);
  expect(worst(late)).toBeLessThan(0.005);
});

test("live, a count-in before each round clicks on the beat, and is said to be one", async ({
  page,
}) => {
  const score = handMadeScore(2, roll(2, 7));
  const loop = { start: tick(0), end: tick(960) };
  const mix = only("banjo", "click");
  let said: readonly (number | null)[] = [];
  const { sound } = await record(page, { score, loop, mix, countInEachRound: 1 }, async () => {
    said = await page.evaluate(async () => {
      const { live } = window.harness;
      const places: (number | null)[] = [];
      for (const wait of [0.4, 0.6, 0.8]) {
        await live.pass(wait);
        places.push(live.engine.countsInTo);
      }
      await live.pass(2.4);
      return places;
    });
  });
  const round = [0, 1, 2, 3, 4, 8].map((eighth) => eighth * EIGHTH);
  const due = [0, 1].flatMap((lap) => round.map((time) => time + lap * 12 * EIGHTH));
  const onsets = onsetsOf(sound).slice(0, due.length);
  const begun = onsets[0] ?? Number.NaN;
  const off = worst(onsets.map((time, index) => time - begun - (due[index] ?? Number.NaN)));
  tell("worst onset in two rounds with their count-ins, ms off", (off * 1000).toFixed(3));
  expect(off).toBeLessThan(0.001);
  expect(said).toEqual([null, 0, 0]);
});

test("live, a context that the system suspends is woken up, and no note is lost or moved", async ({
  page,
}) => {
  const score = handMadeScore(3, roll(3, 7));
  let recovered = 0;
  const { sound } = await record(page, { score }, async () => {
    recovered = await page.evaluate(async () => {
      const { live } = window.harness;
      await live.pass(0.9);
      await live.interrupt();
      await live.over();
      return live.recovered;
    });
  });
  const onsets = onsetsOf(sound);
  expect(recovered).toBe(1);
  expect(onsets).toHaveLength(score.notes.length);
  expect(worst(gapsOf(onsets).map((gap) => gap - EIGHTH))).toBeLessThan(0.002);
});

test("live, a window that is hidden, with no frames and a timer once a second, plays on exactly", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  // Headless Chromium hides no window, so the page is told what a hidden one is told.
  await page.evaluate(() => {
    const { setTimeout: later, setInterval: again } = window;
    Object.defineProperties(document, {
      hidden: { get: () => true },
      visibilityState: { get: () => "hidden" },
    });
    Object.assign(window, {
      requestAnimationFrame: () => 0,
      setTimeout: (work: () => void, ms = 0) => later(work, Math.max(1000, ms)),
      setInterval: (work: () => void, ms = 0) => again(work, Math.max(1000, ms)),
    });
    document.dispatchEvent(new Event("visibilitychange"));
  });
  const { sound, sightings } = await record(page, { score }, () => toEnd(page));
  const onsets = onsetsOf(sound);
  const jitter = worst(gapsOf(onsets).map((gap) => gap - EIGHTH));
  tell("jitter in a hidden window, ms", (jitter * 1000).toFixed(3));
  tell("looks of the main thread meanwhile", String(sightings.length));
  expect(sightings.length).toBeLessThan(12);
  expect(onsets).toHaveLength(score.notes.length);
  expect(jitter).toBeLessThan(0.002);
});

test("live, a loop of one bar with one bar to rest is silent in every second round", async ({
  page,
}) => {
  const score = handMadeScore(2, roll(2, 7));
  const loop = { start: tick(0), end: tick(1920) };
  const { sound } = await record(page, { score, loop, silent: { play: 1, rest: 1 } }, () =>
    page.evaluate(() => window.harness.live.pass(4.2)),
  );
  const onsets = onsetsOf(sound);
  const begun = onsets[0] ?? Number.NaN;
  const due = [0, 2].flatMap((bar) =>
    Array.from({ length: 8 }, (_, eighth) => (8 * bar + eighth) * EIGHTH),
  );
  const off = due.map((time, index) => (onsets[index] ?? Number.NaN) - begun - time);
  expect(worst(off)).toBeLessThan(0.002);
  expect(peakOf(sound, begun + 8 * EIGHTH + 0.03, begun + 16 * EIGHTH - 0.01)).toBeLessThan(1e-3);
});

test("live, half a minute of loops leaves no audio node behind", async ({ page }) => {
  const score = handMadeScore(2, roll(2, 7), rhythm(2));
  const inspector = await page.context().newCDPSession(page);
  await inspector.send("Performance.enable");
  const handlers = async (): Promise<number> => {
    await inspector.send("HeapProfiler.collectGarbage");
    const { metrics } = await inspector.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "AudioHandlers")?.value ?? Number.NaN;
  };
  const loop = { start: tick(0), end: score.length };
  const counts: number[] = [];
  await record(
    page,
    { score, loop, tempo: 160, mix: only("bass", "guitar", "chop", "banjo") },
    async () => {
      for (const wait of [4, 26]) {
        await page.evaluate((time) => window.harness.live.pass(time), wait);
        counts.push(await handlers());
      }
      await page.evaluate(async () => {
        window.harness.live.engine.pause();
        await window.harness.live.pass(0.5);
      });
      counts.push(await handlers());
    },
  );
  const [early = Number.NaN, late = Number.NaN, silent = Number.NaN] = counts;
  tell("audio nodes after 4 s, after 30 s, and when it is silent", counts.join(" "));
  expect(late).toBeLessThan(early + 60);
  expect(silent).toBeLessThan(40);
});
