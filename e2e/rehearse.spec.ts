import { expect, type Locator, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { button, placeLink, test, writeSong } from "./openApp.ts";

const SONG = "Title: Wether Ford\nKey: G\nTempo: 240\n\n| G | C | G | D | G | C | D | G |";

const rehearse = async (page: Page): Promise<void> => {
  await placeLink(page, "Rehearse").press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Rehearse Wether Ford" })).toBeVisible();
};
const changes = (page: Page): Locator =>
  page.getByRole("list", { name: "Changes, hardest first" }).getByRole("button");
const neck = (page: Page): Locator => page.getByRole("img", { name: /^Neck\./ });
/** The tempo that is played: "96" of "96 of 160 quarter notes a minute". */
const tempo = async (page: Page): Promise<number> =>
  Number(
    (await page
      .getByText(/quarter notes a minute/)
      .locator("..")
      .locator("b")
      .textContent()) ?? "",
  );
/** The music has come round: the second chord has been heard, and then the first. */
const hearRound = async (page: Page): Promise<void> => {
  const bars = page.locator("[data-drill-bar]");
  const patience = { timeout: 15_000 };
  await expect(bars).not.toHaveAttribute("data-drill-bar", "0", patience);
  await expect(bars).toHaveAttribute("data-drill-bar", "0", patience);
};
const secondsIn = async (page: Page): Promise<number> => {
  const says = (await page.getByText(/ in this part/).textContent()) ?? "";
  const [, minutes = "0", seconds = "0"] = /(\d+):(\d\d) in this part/.exec(says) ?? [];
  return 60 * Number(minutes) + Number(seconds);
};

test("ten minutes are led through by keys alone, with a rest, to the whole song", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await writeSong(page, SONG);
  await rehearse(page);
  // The session's time is turned on by hand; the sound goes on in its own.
  await page.clock.install();
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  const parts: string[] = [];
  for (let part = 1; part <= 9; part += 1) {
    const progress = page.getByRole("img", { name: `Part ${part} of 9` });
    await expect(progress).toBeVisible();
    const heading = page.getByRole("heading", { level: 1 });
    parts.push((await heading.textContent()) ?? "");
    if (part === 5) {
      await expect(heading).toHaveText("Rest your hands");
      await expect(heading).toBeFocused();
      await page.clock.fastForward(61_000);
      continue;
    }
    // The time of a part begins with its sound.
    await expect(button(page, "Pause")).toBeVisible();
    await expect(neck(page)).toBeVisible();
    if (part === 1) {
      await hearRound(page);
      await page.keyboard.press("v");
      await expect(page.getByText("Marked clean")).toBeVisible();
      await page.keyboard.press("Space");
      await expect(button(page, "Play")).toBeVisible();
      const left = await secondsIn(page);
      await page.clock.fastForward(30_000);
      await expect.poll(() => secondsIn(page)).toBe(left);
      await page.keyboard.press("Space");
      await expect(button(page, "Pause")).toBeVisible();
    }
    await page.clock.fastForward(1000 * ((await secondsIn(page)) + 1));
  }
  await expect(page.getByRole("heading", { level: 1, name: "Done for now" })).toBeFocused();
  await expect(page.getByText(/1 marked clean/)).toBeVisible();
  expect(parts.at(-1)).toBe("The whole song");
  const drilled = parts.filter((part) => !["Rest your hands", "The whole song"].includes(part));
  expect(new Set(drilled).size).toBe(3);
  expect(drilled.every((part, index) => part !== drilled[index + 1])).toBe(true);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Rehearse Wether Ford" })).toBeVisible();
});

test("a change is one tap from its loop, and goes up after three clean rounds by a pedal's keys", async ({
  page,
}) => {
  await writeSong(page, SONG);
  await rehearse(page);
  const says = (await changes(page).first().textContent()) ?? "";
  const [, from = "?", to = "?"] = /([A-G]) to ([A-G])/.exec(says) ?? [];
  await changes(page).first().press("Enter");
  await button(page, "Understood, play").press("Enter");
  await expect(page.getByRole("radio", { name: "Bare slide" })).toBeChecked();
  await expect(neck(page)).toHaveAccessibleName(new RegExp(`Now ${from},.* Next ${to}:`));
  await expect(button(page, "Pause")).toBeVisible({ timeout: 20_000 });
  const start = await tempo(page);
  for (const left of ["2 more clean rounds", "1 more clean round"]) {
    await hearRound(page);
    await page.keyboard.press("ArrowUp");
    await expect(page.getByText(left)).toBeVisible();
  }
  await hearRound(page);
  await page.keyboard.press("ArrowUp");
  await expect.poll(() => tempo(page)).toBeGreaterThan(start);
  await page.getByRole("radio", { name: "In the song" }).press("Space");
  await expect(page.getByRole("radio", { name: "In the song" })).toBeChecked();
  await page.keyboard.press("s");
  await expect(changes(page).first()).toBeVisible();
});

test("an exercise needs no song, in one shape and in the other", async ({ page }) => {
  await placeLink(page, "Rehearse").press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Exercises" })).toBeVisible();
  await button(page, "1 and 4 in G").press("Enter");
  await button(page, "Understood, play").press("Enter");
  await expect(neck(page)).toHaveAccessibleName(/Now (G|C), F shape/);
  await button(page, "Back").press("Enter");
  await page.getByRole("radio", { name: "D shape" }).press("Space");
  await button(page, "1 and 4 in G").press("Enter");
  await expect(neck(page)).toHaveAccessibleName(/Now (G|C), D shape/);
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();
});

test("from Play one key leads to the song's changes; a song without bars says what to do", async ({
  page,
}) => {
  await writeSong(page, SONG);
  await placeLink(page, "Play").press("Enter");
  await page.getByRole("group", { name: "Transport" }).waitFor();
  await page.keyboard.press("d");
  await expect(changes(page).first()).toBeVisible();
  await writeSong(page, "Title: Bare Post\n");
  await placeLink(page, "Rehearse").press("Enter");
  await expect(page.getByText("No bars yet: write the changes on the Chart page.")).toBeVisible();
  await expect(page.getByRole("link", { name: "Open the chart" })).toBeVisible();
});

for (const colorScheme of ["light", "dark"] as const) {
  test(`nothing stands against list, drill, ladder and rest in the ${colorScheme} theme`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
    await writeSong(page, SONG);
    await rehearse(page);
    expect(await findings(page)).toEqual([]);
    await changes(page).first().press("Enter");
    await button(page, "Understood, play").press("Enter");
    await expect(button(page, "Pause")).toBeVisible();
    expect(await findings(page)).toEqual([]);
    await button(page, "Ladder").press("Enter");
    await expect(page.getByRole("dialog", { name: "Ladder" })).toBeVisible();
    expect(await findings(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await button(page, "Back").press("Enter");
    await page.keyboard.press("Space");
    for (let part = 1; part <= 4; part += 1) {
      await expect(page.getByRole("img", { name: `Part ${part} of 9` })).toBeVisible();
      await page.keyboard.press("g");
    }
    await expect(page.getByRole("heading", { name: "Rest your hands" })).toBeVisible();
    expect(await findings(page)).toEqual([]);
  });
}
