import { expect } from "@playwright/test";
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

  const ms = (value: number): string => `${value.toFixed(2)} ms`;
  const long = gaps.filter((gap) => gap > 33).length;
  const busy = scripts.filter((script) => script > 33).length;
  console.table([
    { figure: "frames", measured: String(scripts.length), goal: "" },
    { figure: "script per frame, median", measured: ms(quantile(scripts, 0.5)), goal: "" },
    { figure: "script per frame, p95", measured: ms(quantile(scripts, 0.95)), goal: "below 4 ms" },
    { figure: "script per frame, most", measured: ms(Math.max(...scripts)), goal: "below 33 ms" },
    { figure: "frames with script over 33 ms", measured: String(busy), goal: "0" },
    { figure: "frames over 33 ms", measured: `${long} of ${gaps.length}`, goal: "0" },
    { figure: "frame, p95", measured: ms(quantile(gaps, 0.95)), goal: "" },
    { figure: "frame, longest", measured: ms(Math.max(...gaps)), goal: "below 33 ms" },
  ]);
  expect(scripts.length).toBeGreaterThan(0);
});
