import { expect } from "@playwright/test";
import { editorOf, placeLink, songsOf, test, writeSong } from "./openApp.ts";

const chart = "Title: Bramble Cut\nKey: D\n\n| D | G | A | D |";

test("search narrows the list while it is typed, and says when nothing is found", async ({
  page,
}) => {
  await writeSong(page, chart);
  await writeSong(page, "Title: Otter Ford\nKey: G\n\n| G | C |");
  await placeLink(page, "Songbook").click();
  const rows = songsOf(page).getByRole("listitem");
  await expect(rows).toHaveCount(2);
  const search = page.getByRole("searchbox", { name: "Search the songbook" });
  await search.pressSequentially("ott");
  await expect(rows).toHaveCount(1);
  await expect(rows).toContainText("Otter Ford");
  await search.pressSequentially("erly");
  await expect(page.getByText("No song matches “otterly”.")).toBeVisible();
  await search.fill("");
  await expect(rows).toHaveCount(2);
});

test("a demo that is opened twice is in the songbook once", async ({ page }) => {
  const demos = page.getByRole("list", { name: "Demo songs" }).getByRole("button");
  await demos.first().click();
  await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
  await placeLink(page, "Songbook").click();
  await page.getByText("Demo songs").click();
  await demos.first().click();
  await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
  await placeLink(page, "Songbook").click();
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(1);
});

test("a song with a mistake opens on its chart, a sound one on Play", async ({ page }) => {
  await writeSong(page, "Title: Bent Nail\n\n| G | Xm |");
  await placeLink(page, "Songbook").click();
  await songsOf(page)
    .getByRole("button", { name: /^Bent Nail/ })
    .press("Enter");
  await expect(placeLink(page, "Chart")).toHaveAttribute("aria-current", "page");
  await editorOf(page).press("ControlOrMeta+a");
  await page.keyboard.insertText(chart);
  await placeLink(page, "Songbook").click();
  await songsOf(page)
    .getByRole("button", { name: /^Bramble Cut/ })
    .press("Enter");
  await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
});

test("with the line down the text stays and says so, and trying again saves it", async ({
  page,
  context,
}) => {
  await writeSong(page, chart);
  await context.setOffline(true);
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.type(" Bm |");
  const alert = page.getByRole("alert").filter({ hasText: "Not saved" });
  await expect(alert).toBeVisible();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm |");

  await placeLink(page, "Songbook").click();
  await expect(page.getByRole("button", { name: /^Not saved/ })).toBeVisible();
  await placeLink(page, "Chart").click();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm |");

  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(alert).toBeVisible();
  await context.setOffline(false);
  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await page.reload();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm |");
});

test("a song that cannot be saved is not left for another one unasked", async ({
  page,
  context,
}) => {
  await writeSong(page, "Title: Otter Ford\n\n| G | C |");
  await writeSong(page, chart);
  await placeLink(page, "Songbook").click();
  await expect(songsOf(page).getByRole("button", { name: /^Bramble Cut/ })).toBeVisible();
  await placeLink(page, "Chart").click();
  await context.setOffline(true);
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.type(" Bm |");
  await placeLink(page, "Songbook").click();
  await songsOf(page)
    .getByRole("button", { name: /^Otter Ford/ })
    .click();
  const dialog = page.getByRole("alertdialog", { name: "“Bramble Cut” is not saved" });
  await dialog.getByRole("button", { name: "Stay with it" }).click();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm |");

  await placeLink(page, "Songbook").click();
  await songsOf(page)
    .getByRole("button", { name: /^Otter Ford/ })
    .click();
  await context.setOffline(false);
  await dialog.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Otter Ford" })).toBeVisible();
  await placeLink(page, "Songbook").click();
  await page.getByRole("button", { name: "Edit the chart of Bramble Cut" }).click();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm |");
});

test("two songs deleted one after the other come back one after the other", async ({ page }) => {
  await writeSong(page, "Title: Otter Ford\n\n| G | C |");
  await writeSong(page, chart);
  await placeLink(page, "Songbook").click();
  await page.getByRole("button", { name: "Delete Bramble Cut" }).press("Enter");
  await page.getByRole("button", { name: "Delete Otter Ford" }).press("Enter");
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
  await page.keyboard.press("ControlOrMeta+z");
  const rows = songsOf(page).getByRole("listitem");
  await expect(rows).toHaveCount(1);
  await expect(rows).toContainText("Otter Ford");
  await expect(page.getByText("“Otter Ford” is deleted.")).toHaveCount(0);
  await page.keyboard.press("ControlOrMeta+z");
  await expect(rows).toHaveCount(2);
  await expect(page.getByRole("button", { name: "Undo" })).toHaveCount(0);
});

test("a songbook that cannot be read says why, and is there again after trying again", async ({
  page,
  context,
}) => {
  await writeSong(page, chart);
  await context.setOffline(true);
  await placeLink(page, "Songbook").click();
  const alert = page.getByRole("main").getByRole("alert");
  await expect(alert).toBeVisible();
  await context.setOffline(false);
  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(alert).toHaveCount(0);
  await expect(songsOf(page).getByRole("button", { name: /^Bramble Cut/ })).toBeVisible();
});

test("when Shortslide has ended the chart is still on the screen", async ({ page, served }) => {
  await writeSong(page, chart);
  await served.stop();
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.type(" Em |");
  await expect(page.getByRole("alert").filter({ hasText: "Not saved" })).toBeVisible();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Em |");
});

test("an address of a song that is not there leads back to the songbook", async ({ page }) => {
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
  let reads = 0;
  page.on("request", (request) => {
    if (request.url().endsWith("/call/readSong")) reads += 1;
  });
  await page.evaluate(() => {
    location.hash = "#/play/no-such-song";
  });
  await expect(page.getByRole("main").getByRole("alert")).toBeVisible();
  await page.getByRole("main").getByRole("button", { name: "Try again" }).click();
  await expect.poll(() => reads).toBe(2);
  await expect(page.getByRole("main").getByRole("alert")).toBeVisible();
  await page.getByRole("main").getByRole("button", { name: "Songbook" }).click();
  await expect(page.getByRole("heading", { name: "Songbook", exact: true })).toBeVisible();
  expect(reads).toBe(2);
});

test("the three places are reached by keyboard, past a link that skips them", async ({ page }) => {
  await writeSong(page, chart);
  await page.reload();
  await expect(editorOf(page)).toBeVisible();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the page" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toBeFocused();
  await placeLink(page, "Play").press("Enter");
  await expect(page).toHaveTitle("Bramble Cut · Shortslide");
  await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
});

test("a chosen theme stays after a reload", async ({ page }) => {
  await page.getByRole("button", { name: /^Light or dark/ }).press("Enter");
  await page.getByRole("menuitemradio", { name: "Dark" }).press("Enter");
  await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");
  await page.reload();
  await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");
});
