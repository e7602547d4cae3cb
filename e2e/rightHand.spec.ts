import { readFile, writeFile } from "node:fs/promises";
import { expect, type Locator, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Heron Weir
Key: G
Tempo: 100

[A]
|: G | C | D | G :|
[B]
| Em | C | D | G |`;

const playSong = async (page: Page): Promise<void> => {
  await writeSong(page, CHART);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
};
/** The right hand's letters under the tablature, as far as they are on the screen. */
const lettersOf = (page: Page): Promise<string> =>
  page
    .locator(".lanes text.finger")
    .allTextContents()
    .then((texts) => texts.slice(0, 8).join(""));
const handOf = (page: Page): Locator => page.getByRole("button", { name: /^Right hand: / });
const cell = (page: Page, name: string): Locator =>
  page.getByRole("gridcell", { name, exact: true });
const benchOf = (page: Page): Locator => page.getByRole("dialog", { name: "My patterns" });
const openBench = async (page: Page): Promise<void> => {
  await page.keyboard.press("h");
  await button(page, "My patterns").click();
  await expect(benchOf(page)).toBeVisible();
};
const savedIn = (page: Page): Locator => benchOf(page).getByText("Saved", { exact: true });
const tabTo = async (page: Page, target: Locator): Promise<void> => {
  await expect(async () => {
    await page.keyboard.press("Tab");
    await expect(target).toBeFocused({ timeout: 50 });
  }).toPass({ intervals: [0], timeout: 20_000 });
};

test("a style chosen for the song changes the tablature, and undo brings it back", async ({
  page,
}) => {
  await playSong(page);
  await expect(handOf(page)).toHaveAccessibleName("Right hand: forward, one measure");
  const forward = await lettersOf(page);
  await page.keyboard.press("h");
  await page.getByRole("radio", { name: /^Backward roll/ }).check();
  await page.keyboard.press("Escape");
  await expect(handOf(page)).toHaveAccessibleName("Right hand: backward, one measure");
  const backward = await lettersOf(page);
  expect([forward, backward]).toEqual(["TIMTIMTM", "TMITMITI"]);
  await page.keyboard.press("ControlOrMeta+z");
  await expect(handOf(page)).toHaveAccessibleName("Right hand: forward, one measure");
  expect(await lettersOf(page)).toBe(forward);
});

test("a section, a sung one, and one chord by itself are picked in their own ways", async ({
  page,
}) => {
  await playSong(page);
  await page.keyboard.press("h");
  await page.getByLabel("B: style").selectOption("Vamp");
  await page.getByLabel("A: sung").check();
  await page.getByLabel("G in bar 1: style").selectOption("Strum");
  await page.getByRole("checkbox", { name: /^Every time/ }).uncheck();
  await page.keyboard.press("Escape");
  await expect(handOf(page)).toHaveAccessibleName(/^Right hand: single strum/);
  await barOf(page, 2).click();
  await expect(handOf(page)).toHaveAccessibleName("Right hand: forward, one measure, on the beats");
  await barOf(page, 5).click();
  await expect(handOf(page)).toHaveAccessibleName(/^Right hand: forward/);
  await barOf(page, 9).click();
  await expect(handOf(page)).toHaveAccessibleName("Right hand: vamp, one measure");
});

test("a pattern is made with the keyboard alone, mended, saved, used, and is there after a reload", async ({
  page,
}) => {
  await playSong(page);
  await page.keyboard.press("h");
  await tabTo(page, button(page, "My patterns"));
  await page.keyboard.press("Enter");
  await tabTo(page, button(page, "New pattern"));
  await page.keyboard.press("Enter");
  await expect(cell(page, "Eighth 1, string 3: nothing, to mend")).toBeFocused();
  // Thumb on 3, index on 2 twice running, middle on 1, thumb on 3.
  await page.keyboard.press("t");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("i");
  await page.keyboard.press("a");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("i");
  await page.keyboard.press("End");
  await page.keyboard.press("PageUp");
  await page.keyboard.press("Enter");
  await expect(cell(page, "Eighth 8, string 1: middle")).toBeFocused();
  await expect(cell(page, "Eighth 2, accent: yes")).toBeVisible();
  await expect(
    page.getByText("The index finger strikes twice running, on eighths 2 and 3."),
  ).toBeVisible();
  await expect(page.getByRole("columnheader", { name: /3.*to mend/ })).toBeVisible();
  await expect(button(page, "Use for this song")).toBeDisabled();
  await expect(benchOf(page).getByText(/Draft: not used until mended/)).toBeVisible();

  await page.keyboard.press("ControlOrMeta+z");
  await expect(
    cell(page, "Eighth 8, string 1: nothing, to mend").or(
      cell(page, "Eighth 8, string 1: nothing"),
    ),
  ).toBeVisible();
  await page.keyboard.press("ControlOrMeta+y");
  await expect(cell(page, "Eighth 8, string 1: middle")).toBeVisible();

  const mend = page.getByRole("button", { name: /^Mend/ });
  await tabTo(page, mend);
  await page.keyboard.press("Enter");
  await expect(mend).toHaveCount(0);
  await expect(cell(page, "Eighth 3, string 2: thumb")).toBeVisible();

  const name = page.getByRole("textbox", { name: "Name" });
  await name.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("Tin gate");
  await page.keyboard.press("Enter");
  await tabTo(page, button(page, "Use for this song"));
  await page.keyboard.press("Enter");
  await expect(button(page, "Used for this song")).toBeVisible();
  await expect(savedIn(page)).toBeVisible();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await expect(handOf(page)).toHaveAccessibleName("Right hand: Tin gate");
  expect((await lettersOf(page)).slice(0, 4)).toBe("TITM");

  await placeLink(page, "Chart").click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await page.reload();
  await placeLink(page, "Play").click();
  await expect(handOf(page)).toHaveAccessibleName("Right hand: Tin gate");
  await openBench(page);
  await expect(cell(page, "Eighth 2, string 2: index")).toBeVisible();
});

test("patterns are exported, deleted, brought back by undo, and imported beside others", async ({
  page,
}, info) => {
  await playSong(page);
  await openBench(page);
  await page.getByLabel("Start from").selectOption({ label: "Backward, one measure" });
  await button(page, "New pattern").click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    button(page, "Export").click(),
  ]);
  const path = info.outputPath("patterns.json");
  await download.saveAs(path);
  const file: unknown = JSON.parse(await readFile(path, "utf8"));
  expect(file).toMatchObject({
    shortslidePatterns: 1,
    patterns: [{ name: "Backward, one measure" }],
  });

  const list = page.getByRole("list", { name: "My patterns" }).getByRole("button");
  await button(page, "Delete").click();
  await expect(list).toHaveCount(0);
  await button(page, "Undo").last().click();
  await expect(list).toHaveCount(1);

  const input = page.getByLabel("File of patterns to import");
  await input.setInputFiles(path);
  await expect(
    benchOf(page).getByRole("status").filter({ hasText: "you have already" }),
  ).toBeVisible();
  await cell(page, "Eighth 8, string 2: index").click();
  await input.setInputFiles(path);
  await expect(list).toHaveCount(2);
  await expect(benchOf(page).getByText(/is kept as “Backward, one measure 2”/)).toBeVisible();

  const broken = info.outputPath("broken.json");
  await writeFile(broken, '{"shortslidePatterns":1,"patterns":[{"name":"Weir","meter":"7/8"}]}');
  await input.setInputFiles(broken);
  await expect(page.getByRole("alert").filter({ hasText: "Pattern 1 (“Weir”)" })).toContainText(
    /Nothing was imported/,
  );
  await expect(list).toHaveCount(2);
});

test("a pattern is heard on the chord held now, its eighths shown, and the song comes back", async ({
  page,
}) => {
  await playSong(page);
  await barOf(page, 3).click();
  await openBench(page);
  await page.getByLabel("Start from").selectOption({ label: "Forward, one measure" });
  await button(page, "New pattern").click();
  await expect(benchOf(page).getByText(/^Heard on D, /)).toBeVisible();
  await button(page, "Hear it").click();
  await button(page, "Understood, play").click();
  await expect(page.locator("th.now")).toHaveText(/^[5-8]/);
  await expect(page.locator("th.now")).toHaveText(/^[1-4]/);
  await button(page, "Stop").click();
  await expect(page.locator("th.now")).toHaveCount(0);
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true");
  await button(page, "Play").click();
  // A bar of count-in and bar 3 itself last 4.8 seconds at this tempo.
  await expect(barOf(page, 4)).toHaveAttribute("aria-current", "true", { timeout: 20_000 });
  await button(page, "Pause").click();
});

test("who has clicked a bar plays with the space bar, also after the panel and the bench", async ({
  page,
}) => {
  await playSong(page);
  await barOf(page, 3).click();
  await page.keyboard.press("h");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Space");
  await button(page, "Understood, play").click();
  await expect(button(page, "Pause")).toBeVisible();
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();

  await barOf(page, 5).click();
  await openBench(page);
  await button(page, "New pattern").click();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Escape");
  await expect(benchOf(page)).toHaveCount(0);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await page.keyboard.press("Space");
  await expect(button(page, "Pause")).toBeVisible();
  await button(page, "Pause").click();
});

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("the panel and the bench have nothing against them", async ({ page }) => {
      await playSong(page);
      await page.keyboard.press("h");
      await page.getByLabel("B: style").selectOption("Vamp");
      expect(await findings(page)).toEqual([]);
      await button(page, "My patterns").click();
      await expect(benchOf(page)).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await page.getByLabel("Start from").selectOption({ label: "Forward, two measures" });
      await button(page, "New pattern").click();
      await cell(page, "Eighth 3, string 1: middle").focus();
      await page.keyboard.press("ArrowLeft");
      await page.keyboard.press("m");
      await expect(page.getByRole("button", { name: /^Mend/ }).first()).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await button(page, "Delete").click();
      await expect(benchOf(page).getByText(/is deleted/)).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });
  });
}
