import { expect } from "@playwright/test";
import { barOf, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Osier Lane
Key: G
Time: 2/2
Tempo: 100

[Verse]
| G | C | D | G |
| Em | Am | D7 | G |`;

/* Type is bundled with the app; what is left to differ from machine to machine is how edges are
   smoothed, and that the tolerance takes in. `npx playwright test likeness -u` draws them anew. */
const tolerance = { maxDiffPixelRatio: 0.03, threshold: 0.3, animations: "disabled" } as const;

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("the neck and the lanes look as they did", async ({ page }) => {
      await writeSong(page, CHART);
      await placeLink(page, "Play").click();
      await barOf(page, 2).click();
      await page.keyboard.press("l");
      await barOf(page, 2).evaluate((bar) => bar.blur());
      await page.mouse.move(2, 2);
      await page.evaluate(() => document.fonts.ready);
      await expect(page.locator(".neck")).toHaveScreenshot(`neck-${colorScheme}.png`, tolerance);
      await expect(page.locator(".lanes")).toHaveScreenshot(`lanes-${colorScheme}.png`, tolerance);
    });
  });
}
