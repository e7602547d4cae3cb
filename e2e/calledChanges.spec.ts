import { expect, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { button, editorOf, placeLink, test, writeSong } from "./openApp.ts";

const openJam = async (page: Page): Promise<void> => {
  await button(page, "Call the changes").press("Enter");
  await expect(page.getByRole("heading", { name: "Call the changes" })).toBeVisible();
};
const called = (page: Page) => page.getByRole("list", { name: "Called bars" });
const neck = (page: Page) => page.getByRole("img", { name: /^Neck\./ });
const current = (page: Page) => called(page).locator("[aria-current=true]");

test("a figure names the chord, Shift makes it minor, and once more its seventh", async ({
  page,
}) => {
  await openJam(page);
  await expect(neck(page)).toHaveAccessibleName(/Now N\.C\./);
  await page.keyboard.press("1");
  await expect(neck(page)).toHaveAccessibleName(/Now G, D shape, fret 7/);
  await page.keyboard.press("Shift+Digit6");
  await expect(neck(page)).toHaveAccessibleName(/Now Em,/);
  await page.keyboard.press("5");
  await expect(neck(page)).toHaveAccessibleName(/Now D,/);
  await page.keyboard.press("5");
  await expect(neck(page)).toHaveAccessibleName(/Now D7,/);
  await page.keyboard.press("7");
  await page.keyboard.press("b");
  await expect(neck(page)).toHaveAccessibleName(/Now F,/);
  await page.keyboard.press("Backspace");
  await expect(neck(page)).toHaveAccessibleName(/Now N\.C\./);
});

test("the nearest placement is shown at once, and the band follows on the next bar", async ({
  page,
}) => {
  await openJam(page);
  await page.keyboard.press("c");
  await page.keyboard.press("c");
  await expect(page.getByRole("radio", { name: "0 bars" })).toBeChecked();
  await page.keyboard.press("1");
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  await expect(current(page)).toHaveAttribute("aria-label", "Bar 1: G, called");
  await expect(current(page)).toHaveAttribute("aria-label", "Bar 2: G");
  await page.keyboard.press("4");
  await expect(neck(page)).toHaveAccessibleName(/Now G.*Next C: Up 5 to the D shape/);
  await expect(current(page)).toHaveAttribute("aria-label", /^Bar \d: C, called$/);
  await expect(neck(page)).toHaveAccessibleName(/Now C, D shape, fret 12/);
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();
});

test("what was called is kept as a song, opened on its chart", async ({ page }) => {
  await openJam(page);
  await page.keyboard.press("1");
  await page.keyboard.press("c");
  await page.keyboard.press("c");
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  await expect(current(page)).toHaveAttribute("aria-label", "Bar 1: G, called");
  await page.keyboard.press("5");
  await page.keyboard.press("5");
  await expect(current(page)).toHaveAttribute("aria-label", "Bar 2: D7, called");
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();
  const bar = Number((await current(page).getAttribute("aria-label"))?.match(/\d+/)?.[0]);
  await button(page, "Keep as a song").press("Enter");
  await expect(editorOf(page)).toBeFocused();
  await expect(editorOf(page)).toContainText("Title: Called in G");
  const bars = ["1", ...Array.from({ length: bar - 1 }, () => "5-7")];
  await expect(editorOf(page)).toContainText(`| ${bars.slice(0, 4).join(" | ")} |`);
  await placeLink(page, "Songbook").press("Enter");
  await expect(page.getByRole("list", { name: "Songs", exact: true })).toContainText("Called in G");
});

test("key, metre and tempo come from the song one was playing, and a tap calls too", async ({
  page,
}) => {
  await writeSong(page, "Title: Tin Pier\nKey: A\nTime: 3/4\nTempo: 92\n\n| A | D |");
  await placeLink(page, "Play").press("Enter");
  await page.getByRole("group", { name: "Transport" }).waitFor();
  await page.keyboard.press("j");
  await expect(page.getByRole("combobox", { name: "Key: A" })).toBeVisible();
  await expect(page.getByRole("combobox", { name: "Metre: 3/4" })).toBeVisible();
  const tempo = page.getByRole("group", { name: "Tempo", exact: true }).getByRole("status");
  await expect(tempo).toHaveText("92");
  await page.keyboard.press("+");
  await expect(tempo).toHaveText("95");
  await button(page, "Call 4 D").click();
  await expect(neck(page)).toHaveAccessibleName(/Now D,/);
  await page.keyboard.press("5");
  await expect(neck(page)).toHaveAccessibleName(/Now E,/);
  await page.getByRole("combobox", { name: "Key: A" }).click();
  await page.getByRole("option", { name: "G", exact: true }).click();
  await expect(neck(page)).toHaveAccessibleName(/Now D,/);
  await page.keyboard.press("1");
  await expect(neck(page)).toHaveAccessibleName(/Now G,/);
  await expect(page.getByRole("combobox", { name: "Metre: 3/4" })).toBeDisabled();
});

test("the calls are still there after a look at the songbook, and starting over can be undone", async ({
  page,
}) => {
  await openJam(page);
  await page.keyboard.press("4");
  await placeLink(page, "Songbook").press("Enter");
  await openJam(page);
  await expect(neck(page)).toHaveAccessibleName(/Now C,/);
  await button(page, "Start over").press("Enter");
  await expect(neck(page)).toHaveAccessibleName(/Now N\.C\./);
  await expect(button(page, "Keep as a song")).toBeDisabled();
  await button(page, "Undo").press("Enter");
  await expect(neck(page)).toHaveAccessibleName(/Now C,/);
});

test("large type and announcements go with called changes", async ({ page }) => {
  await openJam(page);
  await page.keyboard.press("i");
  await page.keyboard.press("1");
  await page.keyboard.press("t");
  const view = page.getByRole("dialog", { name: "Large type" });
  await expect(view).toContainText("Call the next chord");
  await page.keyboard.press("2");
  await expect(view).toContainText("Now A");
  await page.keyboard.press("Escape");
  await expect(view).toHaveCount(0);
});

for (const [width, height] of [
  [1280, 800],
  [1024, 768],
  [390, 844],
] as const) {
  test(`nothing is cut off at the side at ${width} by ${height}, and targets are 40 pixels`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await openJam(page);
    const wide = await page.evaluate(() => document.querySelector("main")?.scrollWidth);
    expect(wide).toBe(width);
    const small = await page.locator("main button:visible").evaluateAll((all) =>
      all
        .filter((each) => {
          const { width: across, height: down } = each.getBoundingClientRect();
          return down < 40 || across < (each.matches("[role=radio]") ? 32 : 40);
        })
        .map((each) => each.ariaLabel ?? each.textContent),
    );
    expect(small.filter((name) => !/^[012] bars?$/.test(name ?? ""))).toEqual([]);
  });
}

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("calling the changes has nothing against it", async ({ page }) => {
      await openJam(page);
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("1");
      await expect(neck(page)).toHaveAccessibleName(/Now G,/);
      expect(await findings(page)).toEqual([]);
    });
  });
}
