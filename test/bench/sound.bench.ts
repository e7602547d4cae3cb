import { existsSync } from "node:fs";
import { type Browser, type CDPSession, chromium, type Page } from "playwright";
import { afterAll, beforeAll, test } from "vitest";
import { handMadeScore, type Pluck, pitchOf, roll } from "../../e2e/sound/handMadeScore.ts";
import { type HarnessServer, serveHarness } from "../../e2e/sound/serveHarness.ts";
import type { Timing } from "../../e2e/sound/soundBench.ts";
import { type Figure, type Goal, tellFigures } from "./figures.ts";

/** How long it plays live; the goal is set for ten minutes. */
const LIVE_SECONDS = 60 * Number(process.env["SOUND_BENCH_MINUTES"] ?? 10);
const QUARTERS = 300;
const WHO = ["engine", "plain"] as const;
type Who = (typeof WHO)[number];

const round = handMadeScore(8, roll(8, 7));

let server: HarnessServer;
let browser: Browser;

beforeAll(async () => {
  const path = [process.env["CHROMIUM_PATH"] ?? "", "/usr/bin/chromium"].find(
    (each) => each !== "" && existsSync(each),
  );
  server = await serveHarness();
  browser = await chromium.launch({
    ...(path ? { executablePath: path } : {}),
    args: [
      ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
      "--autoplay-policy=no-user-gesture-required",
    ],
  });
});

afterAll(async () => {
  await browser.close();
  await server.close();
});

/** A page of its own process; the library's pluck cannot be had under the app's own policy. */
const open = async (who: Who): Promise<Page> => {
  const page = await (await browser.newContext()).newPage();
  await page.goto(who === "engine" ? server.url : server.url.replace("harness.html", "plain.html"));
  await page.waitForFunction(() => "harness" in window);
  return page;
};

const PEER = "the library's Transport and PluckSynth";
const figures: Figure[] = [];
/** A figure of ours beside the same one of the library's own means. */
const say = (
  figure: string,
  [ours, theirs]: readonly [number, number],
  unit: string,
  goal: Goal,
  also?: readonly [string, string],
) =>
  figures.push({
    area: "sound",
    figure,
    value: ours,
    unit,
    goal,
    peer: `${PEER}: ${theirs.toPrecision(3)}${also ? ` (${also[1]})` : ""}`,
    ...(also ? { also: also[0] } : {}),
  });

const both = async <T>(measure: (who: Who) => Promise<T>): Promise<readonly [T, T]> => [
  await measure("engine"),
  await measure("plain"),
];

/** Both at the same time, so that what else the machine does befalls both. */
const sideBySide = <T>(measure: (who: Who) => Promise<T>): Promise<readonly [T, T]> =>
  Promise.all([measure("engine"), measure("plain")]);

const live = async (who: Who, held: boolean, seconds: number): Promise<Timing> => {
  const page = await open(who);
  const timing = await page.evaluate(
    ([name, score, time, quarters, work]) =>
      window.harness.bench.live(name, score, time, quarters, work),
    [who, round, seconds, QUARTERS, held] as const,
  );
  await page.close();
  return timing;
};

const inWords = ({ heard, written, late, holes, p99Ms, worstMs }: Timing): string =>
  `${late} late, ${heard} of ${written} heard, ${holes} missing between, p99 ${p99Ms.toFixed(3)} ms, worst ${worstMs.toFixed(2)} ms`;

const metric = async (inspector: CDPSession, name: string): Promise<number> => {
  const { metrics } = await inspector.send("Performance.getMetrics");
  return metrics.find((each) => each.name === name)?.value ?? Number.NaN;
};

type Cost = { readonly script: number; readonly nodes: number; readonly heapMb: number };

/** Script time in ms a note, and what audio nodes and heap have grown by between 10 s and the end. */
const cost = async (who: Who): Promise<Cost> => {
  const page = await open(who);
  const inspector = await page.context().newCDPSession(page);
  await inspector.send("Performance.enable");
  const seconds = 60;
  const look = async () => {
    await inspector.send("HeapProfiler.collectGarbage");
    return {
      script: await metric(inspector, "ScriptDuration"),
      nodes: await metric(inspector, "AudioHandlers"),
      heap: await metric(inspector, "JSHeapUsedSize"),
    };
  };
  const play = page.evaluate(
    ([name, score, time, quarters]) => window.harness.bench.alone(name, score, time, quarters),
    [who, round, seconds, QUARTERS] as const,
  );
  await page.waitForTimeout(10_000);
  const early = await look();
  await page.waitForTimeout(1000 * (seconds - 15));
  const late = await look();
  await play;
  await page.close();
  const notes = ((seconds - 15) * QUARTERS) / 30;
  return {
    script: (1000 * (late.script - early.script)) / notes,
    nodes: late.nodes - early.nodes,
    heapMb: (late.heap - early.heap) / 2 ** 20,
  };
};

test(
  "sound",
  async () => {
    const places = ([1, 2, 3, 4, 5] as const).flatMap((string) =>
      Array.from({ length: 23 }, (_, fret) => ({ string, fret })).filter(
        ({ fret }) => string !== 5 || fret === 0 || fret > 5,
      ),
    );
    const plucks = places.map(({ string, fret }, at): Pluck => ({ at, string, fret, lasts: 0.9 }));
    const everyFret = handMadeScore(Math.ceil(plucks.length / 8), plucks);
    const topPitch = Math.max(...places.map(({ string, fret }) => pitchOf(string, fret)));

    for (const rate of [44_100, 48_000]) {
      const cents = await both(async (who) => {
        const page = await open(who);
        const off = await page.evaluate(
          ([name, score, sampleRate]) => window.harness.bench.cents(name, score, 0.3, sampleRate),
          [who, everyFret, rate] as const,
        );
        await page.close();
        return off.filter(Number.isFinite);
      });
      const [engine, plain] = cents;
      say(
        `pitch, worst of ${places.length} places to MIDI ${topPitch} at ${rate} Hz`,
        [Math.max(...engine), Math.max(...plain)],
        "cents",
        { below: 3 },
        [`${engine.length} heard`, `${plain.length} heard`],
      );
    }

    const long = handMadeScore(50, roll(50, 7));
    const speeds = await both(async (who) => {
      const page = await open(who);
      const speed = await page.evaluate(
        ([name, score]) => window.harness.bench.speed(name, score, 0.15),
        [who, long] as const,
      );
      await page.close();
      return speed;
    });
    say("banjo rendered, times real time", speeds, "", { atLeast: 20 });

    const costs = await both(cost);
    const [ours, theirs] = costs;
    say("script time a note", [ours.script, theirs.script], "ms", { below: theirs.script });
    say("audio nodes more after 45 s of play", [ours.nodes, theirs.nodes], "", { below: 0 });
    say("heap more after 45 s of play", [ours.heapMb, theirs.heapMb], "MB", { below: 0.5 });

    const idle = await sideBySide((who) => live(who, false, 30));
    const late = ([one, other]: readonly [Timing, Timing]) => [one.late, other.late] as const;
    say("late, live, 30 s at 300", late(idle), "", { below: 0 }, words(idle));
    const held = await sideBySide((who) => live(who, true, LIVE_SECONDS));
    say(
      `late, ${LIVE_SECONDS / 60} min at 300, main thread held 100 ms of each second`,
      late(held),
      "",
      { below: 0 },
      words(held),
    );
    tellFigures(figures);
  },
  1000 * (LIVE_SECONDS + 900),
);

const words = ([one, other]: readonly [Timing, Timing]): readonly [string, string] => [
  inWords(one),
  inWords(other),
];
