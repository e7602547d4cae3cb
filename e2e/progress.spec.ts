import { existsSync } from "node:fs";
import { appendFile, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Locator, type Page } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { fillLog } from "./filledLog.ts";
import { findings } from "./findings.ts";
import { button, placeLink, test, writeSong } from "./openApp.ts";
import { startServer } from "./serve.ts";

const SONG = "Title: Bramble Cut\nKey: G\nTempo: 160\n\n| G | C | G | D | G | C | D | G |";

const toProgress = (page: Page): Promise<void> =>
  page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: "Progress" }).click();
const roundsIn = (page: Page): Locator =>
  page.getByRole("list", { name: "Rounds", exact: true }).getByRole("listitem");
const logOf = async (home: string): Promise<string> =>
  readFile(join(home, "practice.jsonl"), "utf8");

test("a round that is played and marked is in the log, and is still there after a restart", async ({
  page,
  served,
}) => {
  test.setTimeout(90_000);
  await toProgress(page);
  await expect(page.getByRole("heading", { name: "Nothing is in the log yet" })).toBeVisible();
  await writeSong(page, SONG);
  await placeLink(page, "Rehearse").click();
  await page
    .getByRole("list", { name: "Changes, hardest first" })
    .getByRole("button")
    .first()
    .click();
  await button(page, "Play").click();
  await button(page, "Understood, play").press("Enter");
  await expect(button(page, "Pause")).toBeVisible();
  await button(page, "Clean").click();
  // A round is written down when it has been played to its end.
  const file = async (): Promise<string> =>
    existsSync(join(served.home, "practice.jsonl")) ? logOf(served.home) : "";
  await expect.poll(file, { timeout: 40_000 }).toContain('"mark":"clean"');
  await toProgress(page);
  await expect(roundsIn(page).first()).toContainText("Clean");

  const again = await startServer(served.home);
  await page.goto(again.url);
  await toProgress(page);
  await expect(roundsIn(page).filter({ hasText: "Clean" }).first()).toContainText("Bramble Cut");
  await again.stop();
});

test("a round is deleted, brought back by undo, and deleted for good", async ({ page, served }) => {
  await fillLog(served.home);
  await toProgress(page);
  await expect(page.getByRole("figure", { name: "Minutes a week" })).toBeVisible();
  expect(await findings(page)).toEqual([]);
  const first = roundsIn(page).first();
  const id = await first.getByRole("button").getAttribute("data-round");
  const line = page.locator(`[data-round="${id}"]`);
  await line.click();
  await expect(line).toHaveCount(0);
  await expect(roundsIn(page).first().getByRole("button")).toBeFocused();
  await page
    .getByRole("region", { name: "Messages" })
    .getByRole("button", { name: "Undo" })
    .click();
  await expect(line).toBeFocused();
  await line.press("Enter");
  await expect(line).toHaveCount(0);
  await page.keyboard.press("ControlOrMeta+z");
  await expect(line).toHaveCount(1);
  await line.click();
  const lastLines = async (): Promise<string> =>
    [...(await logOf(served.home)).matchAll(/"kind":"(round|deleted|restored)"/g)]
      .slice(-6)
      .map(([, kind]) => kind)
      .join(" ");
  await expect.poll(lastLines).toBe("round deleted restored deleted restored deleted");
  await page.reload();
  await expect(roundsIn(page).first()).toBeVisible();
  await expect(line).toHaveCount(0);
});

test("the log is saved as a table that a spreadsheet reads", async ({ page, served }) => {
  await fillLog(served.home);
  await toProgress(page);
  const saved = page.waitForEvent("download");
  await button(page, "Save as a table (CSV)").click();
  const file = await saved;
  expect(file.suggestedFilename()).toBe("practice-log.csv");
  const rows: readonly Record<string, string>[] = parse(await readFile(await file.path(), "utf8"), {
    bom: true,
    columns: true,
  });
  expect(rows).toHaveLength(90);
  expect(rows[0]).toMatchObject({ Song: "Bramble Cut", What: "G at 3 to C♯m at 9" });
});

test("a line that a crash has cut is told, and the others are shown", async ({ page, served }) => {
  await fillLog(served.home);
  await appendFile(join(served.home, "practice.jsonl"), '{"version":1,"kind":"rou');
  await toProgress(page);
  await expect(page.getByText("One line of the log is damaged and was passed over.")).toBeVisible();
  await expect(roundsIn(page).first()).toBeVisible();
});

test("the hand that the marks tell is taken only when the player says so, and given back", async ({
  page,
  served,
}) => {
  await fillLog(served.home);
  await writeSong(page, SONG);
  const changes = async (): Promise<string> => {
    await placeLink(page, "Play").click();
    await button(page, "Route and band").click();
    await page.getByRole("tab", { name: "Changes" }).click();
    const drawer = page.getByRole("dialog", { name: "Route and band" });
    await expect(drawer.getByRole("listitem").first()).toBeVisible();
    const text = await drawer.getByRole("tabpanel", { name: "Changes" }).textContent();
    await page.keyboard.press("Escape");
    return text ?? "";
  };
  const usual = await changes();
  await toProgress(page);
  const hand = page.getByRole("region", { name: "Your hand" });
  await expect(hand.getByRole("heading", { name: /^Your hand, from \d+ marks$/ })).toBeVisible();
  expect(await changes()).toBe(usual);

  await toProgress(page);
  await button(page, "Not now").click();
  await expect(hand).toContainText("You said no to this.");
  await button(page, "Use it after all").click();
  await expect(hand).toContainText("In use now: your hand");
  const mine = await changes();
  expect(mine).not.toBe(usual);
  await page.reload();
  expect(await changes()).toBe(mine);

  await toProgress(page);
  await button(page, "Back to the usual hand").click();
  expect(await changes()).toBe(usual);
});
