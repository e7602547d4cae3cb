import { expect, type Page } from "@playwright/test";
import { button, placeLink, test, writeSong } from "./openApp.ts";

const SONG = "Title: Wether Ford\nKey: G\nTempo: 160\n\n| G | C | G | D | G | C | D | G |";

const shots = process.env["SHOTS"];
const shoot = async (page: Page, name: string): Promise<void> => {
  if (!shots) return;
  for (const theme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme: theme });
    for (const [width, height] of [[1280, 800], [1024, 768], [390, 844]] as const) {
      await page.setViewportSize({ width, height });
      await page.waitForTimeout(150);
      await page.screenshot({ path: `${shots}/${name}-${theme}-${width}.png` });
    }
  }
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.emulateMedia({ colorScheme: "light" });
};

test("pictures", async ({ page }) => {
  test.setTimeout(120_000);
  await page.waitForTimeout(1);
  await placeLink(page, "Rehearse").click();
  await shoot(page, "exercises");
  await writeSong(page, SONG);
  await placeLink(page, "Rehearse").click();
  await shoot(page, "home");
  await page.getByRole("list", { name: "Changes, hardest first" }).getByRole("button").first().click();
  await shoot(page, "slide");
  await page.getByRole("radio", { name: "In the song" }).click();
  await shoot(page, "insong");
  await button(page, "Ladder").click();
  await page.screenshot({ path: `${shots}/ladder.png` });
  await page.keyboard.press("Escape");
  await button(page, "Back").click();
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  await expect(button(page, "Pause")).toBeVisible();
  await page.waitForTimeout(3000);
  await page.keyboard.press("v");
  await shoot(page, "session");
  for (let i = 0; i < 4; i++) await page.keyboard.press("g");
  await shoot(page, "rest");
  for (let i = 0; i < 5; i++) await page.keyboard.press("g");
  await shoot(page, "over");
});
