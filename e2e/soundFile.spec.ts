import { readFile } from "node:fs/promises";
import { expect } from "@playwright/test";
import wavefile from "wavefile";
import { findings } from "./findings.ts";
import { button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = "Title: Weir and Willow\nKey: G\nTime: 2/2\nTempo: 120\n\n| G | C | D7 | G |";

test("the Play drawer saves the song as a WAV file", async ({ page }) => {
  await writeSong(page, CHART);
  await placeLink(page, "Play").click();
  await button(page, "Route and band").click();
  await page.getByRole("tab", { name: "Band" }).click();
  await button(page, "Save as sound").click();
  const dialog = page.getByRole("dialog", { name: "Save as sound" });
  await expect(dialog).toBeVisible();
  expect(await findings(page)).toEqual([]);

  await dialog.getByRole("radio", { name: "24 bit" }).click();
  await dialog.getByRole("radio", { name: "48 kHz" }).click();
  await dialog.getByRole("radio", { name: "You are the banjo" }).click();
  await dialog.getByRole("checkbox", { name: "Count-in before it" }).check();
  const coming = page.waitForEvent("download");
  await dialog.getByRole("button", { name: "Save WAV" }).click();
  const download = await coming;
  expect(download.suggestedFilename()).toBe("Weir and Willow.wav");
  await expect(dialog.getByRole("status")).toContainText("Weir and Willow.wav");

  const wav = new wavefile.WaveFile();
  wav.fromBuffer(await readFile(await download.path()));
  expect(wav.bitDepth).toBe("24");
  expect(wav.fmt).toMatchObject({ sampleRate: 48_000, numChannels: 2 });
  // A bar of clicks and four bars at 120 half notes a minute, 80 ms before and 500 ms after.
  const frames = wav.getSamples(true, Float64Array).length / 2;
  expect(frames).toBe(Math.ceil((0.08 + 5 + 0.5) * 48_000));

  await dialog.getByRole("button", { name: "Close" }).click();
  await expect(dialog).toBeHidden();
});

test("the dialog covers the drawer it was opened from, and what is being written can be cancelled", async ({
  page,
}) => {
  const downloads: string[] = [];
  page.on("download", (download) => downloads.push(download.suggestedFilename()));
  const bars = Array.from({ length: 30 }, () => "| G | C | D7 | G |").join("\n");
  await writeSong(page, CHART.replace(/Tempo: 120[\s\S]*/, `Tempo: 30\n\n${bars}`));
  await placeLink(page, "Play").click();
  await button(page, "Route and band").click();
  const drawer = page.getByRole("dialog", { name: "Route and band" });
  await page.getByRole("tab", { name: "Band" }).click();
  const place = await drawer.boundingBox();
  await button(page, "Save as sound").click();
  const dialog = page.getByRole("dialog", { name: "Save as sound" });
  await expect(dialog).toBeVisible();
  const top = await page.evaluate(([x, y]) => document.elementFromPoint(x, y)?.className ?? "", [
    (place?.x ?? 0) + (place?.width ?? 0) - 8,
    (place?.y ?? 0) + 8,
  ] as const);
  expect(top).toContain("veil");
  expect(top).not.toContain("veil-clear");

  const progress = dialog.getByRole("progressbar");
  for (const stop of ["Cancel", "Escape"]) {
    await dialog.getByRole("button", { name: "Save WAV" }).click();
    await expect(progress).toBeVisible();
    if (stop === "Cancel") {
      await dialog.getByRole("button", { name: stop }).click();
      await expect(dialog.getByRole("button", { name: "Save WAV" })).toBeVisible();
    } else {
      await page.keyboard.press(stop);
      await expect(dialog).toBeHidden();
    }
    await expect(progress).toHaveCount(0);
  }
  await button(page, "Save as sound").click();
  await expect(dialog.getByRole("status")).toHaveCount(0);
  await expect(dialog.getByRole("alert")).toHaveCount(0);
  expect(downloads).toEqual([]);
});
