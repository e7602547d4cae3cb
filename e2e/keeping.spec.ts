import { spawn } from "node:child_process";
import { once } from "node:events";
import { chmod, mkdtemp, readdir, readFile, rm, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test as plain } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, editorOf, placeLink, songsOf, test, writeSong } from "./openApp.ts";
import { startServer } from "./serve.ts";

const chart = "Title: Bramble Cut\nKey: D\n\n| D | G | A | D |\n";
const longer = `${chart}| Bm | Em | A | D |\n`;

test("an earlier version is looked at, brought back, and undone again", async ({ page }) => {
  await writeSong(page, chart);
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.insertText("| Bm | Em | A | D |");
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await button(page, "Earlier versions").click();
  const dialog = page.getByRole("dialog", { name: "Earlier versions of “Bramble Cut”" });
  const versions = dialog.getByRole("list", { name: "Earlier versions" }).getByRole("button");
  await versions.first().click();
  await expect(dialog.getByText(/^It brings back|^It takes away/)).toBeVisible();
  expect(await findings(page)).toEqual([]);
  await dialog.getByRole("button", { name: "Bring it back" }).click();
  await expect(dialog).toHaveCount(0);
  await expect(editorOf(page)).not.toContainText("Bm");
  await page.getByRole("button", { name: "Undo" }).first().click();
  await expect(editorOf(page)).toContainText("| Bm | Em | A | D |");
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
});

test("a chart that was cut off on the disk is said, and its last good version opened", async ({
  page,
  served,
}) => {
  await writeSong(page, longer);
  const book = join(served.home, "songbook");
  await truncate(join(book, "new-song.txt"), chart.length + 4);
  await page.reload();
  const alert = page.getByRole("main").getByRole("alert");
  await expect(alert).toContainText("it ends in the middle of a line");
  await alert.getByRole("button", { name: "Open the last good version" }).click();
  await expect(editorOf(page)).toContainText("| Bm | Em | A | D |");
  await expect(page.getByLabel("Messages")).toContainText("The damaged file is kept as");
  expect((await readdir(book)).filter((name) => name.includes(".damaged-"))).toHaveLength(1);
});

test("preferences that are damaged come back, and it is said", async ({ page, served }) => {
  await page.getByRole("button", { name: /^Light or dark/ }).press("Enter");
  await page.getByRole("menuitemradio", { name: "Dark" }).press("Enter");
  const path = join(served.home, "preferences.json");
  await expect
    .poll(() => readFile(path, "utf8").catch((error: Error) => error.message))
    .toContain("dark");
  await writeFile(path, '{"version":1,"theme":"da');
  await page.reload();
  await expect(page.getByLabel("Messages")).toContainText("Your preferences were damaged.");
  await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");
});

test("what is typed goes to the disk although the page is closed in the same breath", async ({
  page,
  served,
}) => {
  await writeSong(page, chart);
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.insertText("| F#m |");
  await page.close();
  await expect
    .poll(() => readFile(join(served.home, "songbook", "new-song.txt"), "utf8"))
    .toContain("| F#m |");
});

test("with the line down for a while the text is saved by itself when it is back", async ({
  page,
  context,
}) => {
  await writeSong(page, chart);
  await context.setOffline(true);
  await editorOf(page).press("ControlOrMeta+End");
  await page.keyboard.insertText("| Bm |");
  const alert = page.getByRole("alert").filter({ hasText: "Not saved" });
  await expect(alert).toBeVisible();
  await context.setOffline(false);
  await expect(page.getByText("Saved", { exact: true })).toBeVisible({ timeout: 30_000 });
  await expect(alert).toHaveCount(0);
});

test("a page that is loaded again comes back to its song and bar", async ({ page }) => {
  await writeSong(page, longer);
  await placeLink(page, "Play").click();
  await barOf(page, 6).click();
  await expect(barOf(page, 6)).toHaveAttribute("aria-current", "true");
  await page.reload();
  await expect(barOf(page, 6)).toHaveAttribute("aria-current", "true");
  await placeLink(page, "Songbook").click();
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(1);
});

plain("what goes wrong is shown with a way on, and is in the log", async ({ page }) => {
  const served = await startServer();
  await page.goto(served.url);
  await button(page, "Show log").click();
  const log = page.getByRole("dialog", { name: "Log" });
  await expect(log).toContainText("Nothing has gone wrong so far.");
  await log.getByRole("button", { name: "Close" }).click();
  await page.evaluate(() => {
    setTimeout(() => {
      throw new RangeError("a slip of ours");
    });
    void Promise.reject(new Error("a promise broken"));
  });
  const messages = page.getByLabel("Messages");
  await expect(messages).toContainText("RangeError: a slip of ours");
  await expect(messages).toContainText("a promise broken");
  await messages.getByRole("button", { name: "Show log" }).first().click();
  await expect(log.getByRole("textbox", { name: "Log" })).toHaveValue(
    /screen: RangeError: a slip of ours[\s\S]*|[\s\S]*a promise broken/,
  );
  await expect(log).toContainText(join(served.home, "log", "errors.log"));
  expect(await findings(page)).toEqual([]);
  expect(await readFile(join(served.home, "log", "errors.log"), "utf8")).toContain(
    "a slip of ours",
  );
  await served.stop();
});

plain("the browser is opened without the secret on its command line", async ({ page }) => {
  plain.skip(process.platform !== "linux", "BROWSER names the browser on Linux only");
  const home = await mkdtemp(join(tmpdir(), "shortslide-e2e-"));
  const browser = join(home, "browser");
  await writeFile(
    browser,
    `#!/bin/sh\necho "$@" > "${home}/asked.new"\nmv "${home}/asked.new" "${home}/asked"\n`,
  );
  await chmod(browser, 0o755);
  const program = join(import.meta.dirname, "..", "out", "main", "local.cjs");
  const { CI: _ci, ...env } = process.env;
  const server = spawn(process.execPath, [program], {
    // Without the machine's own desktop entries the opener takes the browser it is told.
    env: {
      ...env,
      SHORTSLIDE_HOME: home,
      DISPLAY: ":7",
      BROWSER: browser,
      XDG_DATA_DIRS: home,
      XDG_DATA_HOME: home,
      XDG_CONFIG_DIRS: home,
      XDG_CONFIG_HOME: home,
    },
    stdio: "ignore",
  });
  const ended = once(server, "exit");
  const asked = (): Promise<string> =>
    readFile(join(home, "asked"), "utf8").catch((error: Error) => error.message);
  await expect.poll(asked).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#launch=[\w-]+\n$/);
  await page.goto((await asked()).trim());
  await expect(page.getByRole("navigation", { name: "Places" })).toBeVisible();
  expect(page.url()).not.toContain("launch");
  await page.reload();
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();

  const thief = await page.context().newPage();
  await thief.goto((await asked()).trim());
  await expect(thief.getByRole("alert")).toContainText("This address was used before.");
  server.kill("SIGINT");
  expect(await ended).toEqual([0, null]);
  await rm(home, { recursive: true });
});
