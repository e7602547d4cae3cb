import { readFile } from "node:fs/promises";
import { expect } from "@playwright/test";
import { NOW_SHARE, quarterWidth } from "../../src-renderer/geometry/laneGeometry.ts";
import { TICKS_PER_EIGHTH, TICKS_PER_QUARTER } from "../../src-shared/units.ts";
import { tellFigures } from "../../test/bench/figures.ts";
import { barOf, button, placeLink, test, writeSong } from "../openApp.ts";
import { onsetsOf } from "../sound/analysis.ts";
import { quantile } from "./frameTimes.ts";

const SLOWED = 4;
const BARS = 12;
const TEMPO = 120;
const EIGHTH = 30 / TEMPO;

const chart = `Title: Level Ford\nKey: G\nTime: 4/4\nTempo: ${TEMPO}\n\n| ${Array.from(
  { length: BARS },
  (_, bar) => ["G", "C", "D7"][bar % 3],
).join(" | ")} |`;

/** A frame of the lanes: when it was drawn (page's clock, ms), and how far they were pushed (px). */
type Shown = { readonly at: number; readonly shift: number };
/** What the page wrote down. */
type Seen = {
  readonly rate: number;
  readonly blocks: readonly { readonly frame: number; readonly samples: readonly number[] }[];
  /** A sample's audio time, and when it left the speaker by the page's clock. */
  readonly stamps: readonly { readonly contextTime: number; readonly performanceTime: number }[];
  readonly frames: readonly Shown[];
  readonly width: number;
};

// The recorder comes from outside the page.
test.use({ bypassCSP: true });

/** Runs in the page before the app: taps what goes to the speaker, and reads each frame after it is drawn. */
const watch = (processor: string): void => {
  const seen = { rate: 0, blocks: [], stamps: [], frames: [], width: 0 } as {
    rate: number;
    blocks: { frame: number; samples: number[] }[];
    stamps: AudioTimestamp[];
    frames: Shown[];
    width: number;
  };
  Object.assign(window, { seen });
  const connect = AudioNode.prototype.connect;
  const tapped = new Set<BaseAudioContext>();
  const tap = async (source: AudioNode, context: AudioContext): Promise<void> => {
    await context.audioWorklet.addModule(processor);
    const node = new AudioWorkletNode(context, "recorder", {
      channelCount: 1,
      channelCountMode: "explicit",
    });
    const silent = new GainNode(context, { gain: 0 });
    seen.rate = context.sampleRate;
    node.port.onmessage = ({ data }) => {
      seen.blocks.push({ frame: data.frame, samples: Array.from(data.samples) });
    };
    for (const [from, to] of [
      [source, node],
      [node, silent],
      [silent, context.destination],
    ]) {
      Reflect.apply(connect, from, [to]);
    }
    const frame = (): void => {
      requestAnimationFrame(frame);
      const at = performance.now();
      seen.stamps.push(context.getOutputTimestamp());
      const drawn = new MessageChannel();
      drawn.port1.onmessage = () => {
        const scroller = document.querySelector<HTMLElement>(".scroller");
        const shift = Number(
          /translate3d\(([-\d.e]+)px/.exec(scroller?.style.transform ?? "")?.[1],
        );
        seen.width = document.querySelector(".lanes")?.clientWidth ?? 0;
        if (!Number.isNaN(shift)) seen.frames.push({ at, shift });
      };
      drawn.port2.postMessage(null);
    };
    requestAnimationFrame(frame);
  };
  AudioNode.prototype.connect = function (this: AudioNode, ...to: [never]) {
    const { context } = this;
    const target: unknown = to[0];
    if (
      context instanceof AudioContext &&
      !(this instanceof GainNode && this.gain.value === 0) &&
      target === context.destination &&
      !tapped.has(context)
    ) {
      tapped.add(context);
      tap(this, context).catch((error: unknown) => {
        console.log(`not recorded (${context.state}): ${error}`);
      });
    }
    return connect.apply(this, to);
  } as typeof connect;
};

test(`the now-line against recorded onsets, processor slowed ${SLOWED} times`, async ({ page }) => {
  const processor = await readFile(
    new URL("../sound/recorderProcessor.js", import.meta.url),
    "utf8",
  );
  await page.addInitScript(watch, `data:text/javascript,${encodeURIComponent(processor)}`);
  await page.reload();
  await writeSong(page, chart);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toBeVisible();
  await page.keyboard.press("Space");
  await button(page, "Understood, play").click();
  const line = await page.context().newCDPSession(page);
  await line.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  await expect(barOf(page, BARS)).toHaveAttribute("aria-current", "true", { timeout: 60_000 });
  await line.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await page.keyboard.press("Space");
  const { rate, blocks, stamps, frames, width } = await page.evaluate<Seen>("window.seen");
  expect(blocks.length).toBeGreaterThan(0);

  const first = blocks[0]?.frame ?? 0;
  const samples = new Float32Array((blocks.at(-1)?.frame ?? 0) + 128 - first);
  for (const block of blocks) samples.set(block.samples, block.frame - first);
  const onsets = onsetsOf({ start: first / rate, sampleRate: rate, samples });
  // The output's stamps waver from call to call; how far apart the two clocks are does not.
  const apart = quantile(
    stamps
      .filter(({ contextTime, performanceTime }) => contextTime > 0 && performanceTime > 0)
      .map(({ contextTime, performanceTime }) => performanceTime - 1000 * contextTime),
    0.5,
  );
  const start = onsets[0] ?? Number.NaN;
  const heard = onsets.map((at) => ({
    at: 1000 * at + apart,
    tick: Math.round((at - start) / EIGHTH) * TICKS_PER_EIGHTH,
  }));
  const perQuarter = quarterWidth(width, 1);
  const apartBy = frames.flatMap(({ at, shift }) => {
    const next = heard.findIndex((onset) => onset.at > at);
    const [before, after] = [heard[next - 1], heard[next]];
    if (!before || !after) return [];
    const share = (at - before.at) / (after.at - before.at);
    const tick = before.tick + share * (after.tick - before.tick);
    const shown = ((NOW_SHARE * width - shift) / perQuarter) * TICKS_PER_QUARTER;
    return shown < 0 ? [] : [(shown - tick) / TICKS_PER_EIGHTH];
  });
  // Which eighth the first recorded onset is, the lanes say; how far they are from it, the sound.
  const eighths = Math.round(quantile(apartBy, 0.5));
  const off = apartBy.map((by) => 1000 * EIGHTH * (by - eighths));
  const far = off.map(Math.abs);
  const shared = { area: "screen", peer: "recorded onsets", unit: "ms" } as const;
  const frame = 1000 / 60;
  tellFigures([
    { ...shared, figure: "now-line: onsets recorded", value: onsets.length, unit: "", goal: null },
    {
      ...shared,
      figure: "now-line before the sound, median",
      value: quantile(off, 0.5),
      goal: null,
    },
    {
      ...shared,
      figure: "now-line off the sound, p95",
      value: quantile(far, 0.95),
      goal: { below: frame },
      also: `${off.length} frames`,
    },
    {
      ...shared,
      figure: "now-line off the sound, most",
      value: Math.max(...far),
      goal: { below: frame },
    },
  ]);
  // Every eighth but for those that are the bass's or the chop's alone.
  expect(onsets.length).toBeGreaterThan(BARS * 4);
});
