import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Locator, type Page } from "@playwright/test";
import type { SongSettings } from "../src-shared/settings.ts";
import { findings } from "./findings.ts";
import { barOf, button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Osier Bridge
Key: G
Time: 2/2
Tempo: 100

[Verse]
| G | G | C | G |
[Chorus]
| C | D | G D | G |`;

const playSong = async (page: Page, chart = CHART): Promise<void> => {
  await writeSong(page, chart);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
};
const drawerOf = (page: Page): Locator => page.getByRole("dialog", { name: "Route and band" });
const openBand = async (page: Page): Promise<Locator> => {
  await button(page, "Route and band").click();
  await drawerOf(page).getByRole("tab", { name: "Band" }).click();
  return drawerOf(page).getByRole("tabpanel");
};
const mixOf = (panel: Locator, name: string): Locator =>
  panel.getByRole("radiogroup", { name: "Who plays" }).getByRole("radio", { name, exact: true });

test("one key takes the next practice mix, and the transport says which", async ({ page }) => {
  await playSong(page);
  const offer = button(page, "You are the banjo");
  await expect(offer).toHaveAttribute("aria-pressed", "false");
  await page.keyboard.press("p");
  await expect(offer).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("p");
  await expect(button(page, "Bass and click")).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("p");
  await button(page, "Banjo alone").click();
  await expect(offer).toHaveAttribute("aria-pressed", "false");
});

test("the drawer takes a practice mix by the mouse, undo takes it back, and it stays with the song", async ({
  page,
  served,
}) => {
  await playSong(page);
  const panel = await openBand(page);
  await expect(mixOf(panel, "Everyone")).toBeChecked();
  await mixOf(panel, "Banjo alone").click();
  await expect(mixOf(panel, "Banjo alone")).toBeChecked();
  await page.keyboard.press("Escape");
  await expect(button(page, "Banjo alone")).toBeVisible();
  await page.keyboard.press("ControlOrMeta+z");
  await expect(button(page, "You are the banjo")).toHaveAttribute("aria-pressed", "false");
  await page.keyboard.press("ControlOrMeta+Shift+z");
  await expect(button(page, "Banjo alone")).toHaveAttribute("aria-pressed", "true");
  await expect
    .poll(async () => (await keptSettings(served.home)).map(({ practice }) => practice.mix))
    .toEqual(["banjo-only"]);
  await page.reload();
  await expect(button(page, "Banjo alone")).toHaveAttribute("aria-pressed", "true");
});

/** The settings of every song that lies in the songbook's folder. */
const keptSettings = async (home: string): Promise<readonly SongSettings[]> => {
  const files = await readdir(home, { recursive: true });
  const kept = files.filter((name) => name.endsWith(".json"));
  const read = await Promise.all(kept.map((name) => readFile(join(home, name), "utf8")));
  return read.map((text) => JSON.parse(text)).filter((value) => "practice" in value);
};

test("silent bars are set in bars, go on from round to round of a loop, and go on being played", async ({
  page,
}) => {
  await playSong(page);
  const panel = await openBand(page);
  await panel.getByRole("checkbox", { name: /^Silent bars/ }).check();
  const play = panel.getByRole("spinbutton", { name: "Bars to play" });
  const rest = panel.getByRole("spinbutton", { name: "Bars to rest" });
  await expect(play).toHaveValue("4");
  await play.fill("1");
  await play.press("Tab");
  await expect(rest).toBeFocused();
  await rest.fill("900");
  await rest.press("Tab");
  await expect(rest).toHaveValue("64");
  await rest.fill("");
  await rest.press("Tab");
  await expect(rest).toHaveValue("64");
  await rest.fill("1");
  await rest.press("Tab");
  await expect(panel.getByText(/before anyone drops out/)).toHaveCount(0);
  await page.keyboard.press("Escape");

  await page.keyboard.press("l");
  await openBand(page);
  await expect(panel.getByText(/before anyone drops out/)).toHaveCount(0);
  await page.keyboard.press("Escape");
  await page.keyboard.press("l");

  await button(page, "Play").click();
  await button(page, "Understood, play").click();
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("p");
  await expect(button(page, "Pause")).toBeVisible();
  await expect(barOf(page, 4)).toHaveAttribute("aria-current", "true");
});

test("feel and mix are kept: the one with the song, the other for the player", async ({ page }) => {
  await playSong(page);
  const panel = await openBand(page);
  const bounce = panel.getByRole("slider", { name: /^Eighths/ });
  await bounce.focus();
  await page.keyboard.press("End");
  await panel.getByRole("checkbox", { name: /^Walk-ups/ }).uncheck();
  await panel.getByRole("button", { name: "Bass solo" }).click();
  await expect(panel.getByText("Solo: only Bass can be heard.")).toBeVisible();
  await panel.getByText("Left and right").click();
  await panel.getByRole("slider", { name: "Guitar, from left to right" }).focus();
  await page.keyboard.press("Home");
  await page.keyboard.press("Escape");

  await playSong(page, CHART.replace("Osier Bridge", "Heron Weir").replace("2/2", "6/8"));
  await openBand(page);
  await expect(bounce).toHaveAttribute("aria-disabled", "true");
  await expect(
    panel.getByText("In 6/8 and 9/8 the eighths come in threes and stay even."),
  ).toBeVisible();
  await expect(panel.getByRole("checkbox", { name: /^Walk-ups/ })).toBeChecked();
  await expect(panel.getByText("Solo: only Bass can be heard.")).toBeVisible();
  await panel.getByText("Left and right").click();
  await expect(panel.getByRole("slider", { name: "Guitar, from left to right" })).toHaveAttribute(
    "aria-valuenow",
    "-100",
  );
});

test("a tempo in cut time is shown in half notes or in quarters, from 30 to 320", async ({
  page,
}) => {
  await playSong(page);
  const group = page.getByRole("group", { name: "Tempo", exact: true });
  const shown = group.getByRole("status");
  await group.getByRole("button", { name: "Count in quarter notes" }).press("Enter");
  await expect(shown).toHaveText("200");
  await expect(group.getByText("quarter notes a minute")).toBeVisible();
  const slider = group.getByRole("slider");
  await slider.focus();
  await page.keyboard.press("Home");
  await expect(shown).toHaveText("30");
  await group.getByRole("button", { name: "Count in half notes" }).click();
  await expect(shown).toHaveText("15");
});

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("the band in the drawer has nothing against it", async ({ page }) => {
      await playSong(page);
      const panel = await openBand(page);
      await panel.getByRole("checkbox", { name: /^Silent bars/ }).check();
      await mixOf(panel, "Bass and click").click();
      await panel.getByRole("button", { name: "Bass solo" }).click();
      await panel.getByText("Left and right").click();
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await expect(drawerOf(page)).toHaveCount(0);
      expect(await findings(page)).toEqual([]);
    });
  });
}
