import { expect } from "@playwright/test";
import { type Figure, type Goal, tellFigures } from "../../test/bench/figures.ts";
import { barOf, button, placeLink, test, writeSong } from "../openApp.ts";
import { frameTimes, quantile } from "./frameTimes.ts";

const BARS = 500;
const SECONDS = Number(process.env["BENCH_SECONDS"] ?? 60);
const SLOWED = 4;

const turn = ["G", "Em", "C", "D7", "G", "G7", "C", "Am", "Bm", "E7", "Am7", "D7"];
const bars = Array.from({ length: BARS }, (_, bar) => turn[bar % turn.length]);
const chart = `Title: Long Weir\nKey: G\nTime: 4/4\nTempo: 220\n\n| ${bars.join(" | ")} |`;

test(`Play's frames: ${BARS} bars, processor slowed ${SLOWED} times, ${SECONDS} s`, async ({
  page,
  browser,
}) => {
  await writeSong(page, chart);
  await placeLink(page, "Play").click();
  await page.keyboard.press("Space");
  await button(page, "Understood, play").click();
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true", { timeout: 30_000 });
  const line = await page.context().newCDPSession(page);
  await line.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  await browser.startTracing(page, {
    categories: ["devtools.timeline", "v8", "disabled-by-default-v8.gc"],
  });
  // The measurement itself: as long as it is said to last.
  await page.waitForTimeout(SECONDS * 1000);
  const { gaps, scripts } = frameTimes(await browser.stopTracing());
  await line.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await page.keyboard.press("Space");

  const long = gaps.filter((gap) => gap > 33).length;
  const busy = scripts.filter((script) => script > 33).length;
  const say = (figure: string, value: number, unit: string, goal: Goal): Figure => ({
    area: "screen",
    figure,
    value,
    unit,
    goal,
    peer: "",
  });
  tellFigures([
    say("Play: frames", scripts.length, "", null),
    say("Play: script per frame, median", quantile(scripts, 0.5), "ms", null),
    say("Play: script per frame, p95", quantile(scripts, 0.95), "ms", { below: 4 }),
    say("Play: script per frame, most", Math.max(...scripts), "ms", { below: 33 }),
    say("Play: frames with script over 33 ms", busy, "", { below: 0 }),
    say(`Play: frames over 33 ms of ${gaps.length}`, long, "", { below: 0 }),
    say("Play: frame, p95", quantile(gaps, 0.95), "ms", null),
    say("Play: frame, longest", Math.max(...gaps), "ms", { below: 33 }),
  ]);
  expect(scripts.length).toBeGreaterThan(0);
});
