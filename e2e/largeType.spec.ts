import { expect, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Long Names
Key: G
Time: 4/4
Tempo: 100

| G | F#m7b5 | Bbmaj7 | N.C. | D7 |`;

const openLarge = async (page: Page) => {
  await writeSong(page, CHART);
  await placeLink(page, "Play").press("Enter");
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("t");
  const view = page.getByRole("dialog", { name: "Large type" });
  await expect(view).toBeVisible();
  return view;
};
/** Where everything stands, in whole pixels. */
const places = (page: Page) =>
  page
    .locator(".large-type .name, .large-type .detail, .large-type .shape, .large-type .pips")
    .evaluateAll((all) =>
      all.map((each) => {
        const { x, y, width, height } = each.getBoundingClientRect();
        return [x, y, width, height].map(Math.round).join(" ");
      }),
    );

test("one key shows chord, next chord, shape and beats alone, and Escape leaves", async ({
  page,
}) => {
  const view = await openLarge(page);
  const box = await view.boundingBox();
  expect(box).toEqual({ x: 0, y: 0, width: 1280, height: 800 });
  await expect(view.getByRole("img", { name: "4 beats left" })).toBeVisible();
  await expect(view).toContainText("Neck. Now G");
  await page.keyboard.press("Escape");
  await expect(view).toHaveCount(0);
  await page.keyboard.press("t");
  await expect(view).toBeVisible();
  await page.keyboard.press("t");
  await expect(view).toHaveCount(0);
});

test("the place, the loop and play have their keys there too", async ({ page }) => {
  const view = await openLarge(page);
  await page.keyboard.press("ArrowRight");
  await expect(view).toContainText("Now F#m7b5");
  await page.keyboard.press("l");
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  await expect(view.getByRole("img", { name: /^Count-in/ })).toBeVisible();
  await page.keyboard.press("Space");
  await page.keyboard.press("Escape");
  await expect(button(page, "Clear loop: Bar 2")).toBeVisible();
  await expect(button(page, "Play")).toBeVisible();
});

for (const [width, height] of [
  [1280, 800],
  [1024, 768],
  [390, 844],
] as const) {
  test(`nothing moves from chord to chord, nothing is cut off, at ${width} by ${height}`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    const view = await openLarge(page);
    const first = await places(page);
    expect(first).toHaveLength(7);
    for (const chord of ["F#m7b5", "Bbmaj7", "N.C.", "D7"]) {
      await page.keyboard.press("ArrowRight");
      await expect(view).toContainText(`Now ${chord}`);
      expect(await places(page)).toEqual(first);
      const cut = await view.evaluate((root) =>
        [...root.querySelectorAll(".place, .detail, .pips")]
          .filter((each) => each.checkVisibility())
          .filter((each) => {
            const range = document.createRange();
            range.selectNodeContents(each);
            const text = range.getBoundingClientRect();
            const column = each.closest(".now, .next, .stand")?.getBoundingClientRect();
            return column !== undefined && text.right > column.right + 1;
          })
          .map((each) => each.textContent),
      );
      expect(cut).toEqual([]);
    }
  });
}

for (const [width, height] of [
  [1280, 800],
  [1024, 768],
] as const) {
  test(`the chord is to be read from two metres at ${width} by ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openLarge(page);
    /*
     * ISO 9241-303 asks for characters of 20 to 22 minutes of arc: 12 to 13 mm at two metres. A
     * small screen of 12 inches across with 1280 by 800 has 0.2 mm to a pixel, one with 1024 by 768
     * about 0.24: 64 pixels, of which a capital takes two thirds of the size of its type.
     */
    const tallest = (selector: string) =>
      page
        .locator(selector)
        .first()
        .evaluate((each) => Number.parseFloat(getComputedStyle(each).fontSize) * 0.66);
    expect(await tallest(".large-type .now .name")).toBeGreaterThan(128);
    expect(await tallest(".large-type .next .name")).toBeGreaterThan(64);
    const pip = await page.locator(".large-type .pips span").first().boundingBox();
    expect(pip?.height).toBeGreaterThan(48);
  });
}

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("large type has nothing against it", async ({ page }) => {
      await openLarge(page);
      expect(await findings(page)).toEqual([]);
    });
  });
}
