import { expect } from "@playwright/test";
import { editorOf, placeLink, test, writeSong } from "./openApp.ts";

test("a chart with mistakes is played, and each wrong bar says so on both pages", async ({
  page,
}) => {
  await writeSong(page, "Title: Bent Nail\nKey: G\n\n| G | Xm | C | Q | D |");
  const meaning = page.getByRole("region", { name: "What the chart says" });
  const bars = meaning.getByRole("listitem");
  await expect(bars).toHaveCount(5);
  await expect(bars.filter({ hasText: "To mend" })).toHaveCount(2);
  await expect(bars.nth(1)).toContainText("?");
  await expect(bars.nth(1).getByTitle(/Xm/)).toBeVisible();
  await expect(bars.nth(3).getByTitle(/Q/)).toBeVisible();

  await placeLink(page, "Play").click();
  const strip = page.getByRole("navigation", { name: "Bars of the song" });
  await expect(strip.getByRole("button", { name: /to mend/ })).toHaveCount(2);
  await expect(strip.getByRole("button", { name: /^Bar 2: .*to mend: .*Xm/ })).toContainText("?");
  await page.getByRole("link", { name: "2 things to mend" }).click();
  await expect(placeLink(page, "Chart")).toHaveAttribute("aria-current", "page");

  await editorOf(page).press("ControlOrMeta+a");
  await page.keyboard.insertText("Title: Bent Nail\nKey: G\n\n| G | Em | C | A | D |");
  await expect(bars.filter({ hasText: "To mend" })).toHaveCount(0);
  await placeLink(page, "Play").click();
  await expect(strip.getByRole("button", { name: /^Bar 2: Em/ })).toBeVisible();
  await expect(strip.getByRole("button", { name: /to mend/ })).toHaveCount(0);
  await expect(page.getByRole("link", { name: /to mend/ })).toHaveCount(0);
});

test("a key chosen on Play is said on the Chart page, and taken back there", async ({ page }) => {
  await writeSong(page, "Title: Tin Ladle\nKey: G\n\n| G | C |");
  const meaning = page.getByRole("region", { name: "What the chart says" });
  await expect(meaning.getByText(/written in/)).toHaveCount(0);
  await placeLink(page, "Play").click();
  await page.getByRole("combobox", { name: /^Key to play in/ }).click();
  await page.getByRole("option", { name: "E", exact: true }).click();
  await placeLink(page, "Chart").click();
  await expect(meaning.getByText("Played in E, written in G")).toBeVisible();
  await expect(meaning.getByRole("listitem").first()).toContainText("E");
  await meaning.getByRole("button", { name: "Play as written" }).click();
  await expect(meaning.getByText(/written in/)).toHaveCount(0);
  await expect(meaning.getByRole("listitem").first()).toContainText("G");
});
