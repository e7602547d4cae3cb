import { rm } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { editorOf, placeLink, songsOf, test, writeSong } from "./openApp.ts";

const chart = "Title: Bramble Cut\nKey: D\n\n| D | G | A | D |";
const says = "This song was changed elsewhere.";

test("a song changed in two tabs is never written over: one keeps its own, or takes the other", async ({
  page,
  context,
  served,
}) => {
  await writeSong(page, chart);
  const other = await context.newPage();
  await other.goto(served.url);
  await songsOf(other).getByRole("button", { name: "Edit the chart of Bramble Cut" }).click();
  await expect(editorOf(other)).toContainText("| D | G | A | D |");

  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.type(" Bm |");
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await editorOf(other).press("ControlOrMeta+End");
  await other.keyboard.type(" Em |");
  const problem = other.getByRole("alert").filter({ hasText: says }).first();
  await expect(problem).toBeVisible();

  await problem.getByRole("button", { name: "Take the other" }).click();
  await expect(editorOf(other)).toContainText("| D | G | A | D | Bm |");
  await expect(other.getByText(says)).toHaveCount(0);
  await other.getByRole("button", { name: "Undo" }).first().click();
  await expect(editorOf(other)).toContainText("| D | G | A | D | Em |");
  await expect(other.getByText("Saved", { exact: true })).toBeVisible();

  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.type(" A |");
  await page.getByRole("button", { name: "Keep mine as a new song" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Bramble Cut (mine)");
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm | A |");
  await placeLink(page, "Songbook").click();
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(2);
  await other.reload();
  await expect(editorOf(other)).toContainText("| D | G | A | D | Em |");
});

test("a song whose file is gone is kept as a new one", async ({ page, served }) => {
  await writeSong(page, chart);
  await rm(join(served.home, "songbook", "new-song.txt"));
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.type(" Bm |");
  await page.getByRole("button", { name: "Keep mine as a new song" }).click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await expect(page).toHaveURL(/#\/chart\/bramble-cut$/);
  await page.reload();
  await expect(editorOf(page)).toContainText("| D | G | A | D | Bm |");
});

test("an address that names no place becomes the songbook's", async ({ page }) => {
  // Only a page that has started has taken its token from the address.
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
  await page.evaluate(() => {
    location.hash = "#/zzz";
  });
  await expect(page).toHaveURL(/#\/songbook$/);
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
});
