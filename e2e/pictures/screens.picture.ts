import { expect } from "@playwright/test";
import { placeLink, test } from "../openApp.ts";

const folder = "e2e/pictures";

for (const theme of ["light", "dark"] as const) {
  test(`the screens in ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await page.screenshot({ path: `${folder}/songbook-${theme}.png`, animations: "disabled" });
    await page.getByRole("button", { name: /Skarrow Hill Dash/ }).click();
    const bar = page.getByText(/^Bar/);
    await expect(bar).toBeVisible();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await page.screenshot({ path: `${folder}/play-${theme}.png`, animations: "disabled" });
    await placeLink(page, "Chart").click();
    await expect(page.getByRole("textbox", { name: "Chart", exact: true })).toBeVisible();
    await page.screenshot({ path: `${folder}/chart-${theme}.png`, animations: "disabled" });
  });
}
