import { test as base, expect, type Locator, type Page } from "@playwright/test";
import { type Served, startServer } from "./serve.ts";

/**
 * Every test has a server and an empty songbook of its own, open on its page, and ends without an
 * error in the page.
 */
export const test = base.extend<{ served: Served }>({
  served: [
    async ({ page }, use) => {
      const served = await startServer();
      const errors: string[] = [];
      page.on("pageerror", (error) => errors.push(error.stack ?? error.message));
      page.on("console", (message) => {
        if (/content security policy/i.test(message.text())) errors.push(message.text());
      });
      await page.goto(served.url);
      // The address' fragment holds the token until the app has started; a test may change it then.
      await expect(page.getByRole("navigation", { name: "Places" })).toBeVisible();
      await use(served);
      expect(errors).toEqual([]);
      await served.stop();
    },
    { auto: true },
  ],
});

/** The list of one's own songs. */
export const songsOf = (page: Page): Locator =>
  page.getByRole("list", { name: "Songs", exact: true });

/** The text of the chart that is being edited. */
export const editorOf = (page: Page): Locator =>
  page.getByRole("textbox", { name: "Chart", exact: true });

/** One of the places at the top. */
export const placeLink = (page: Page, name: "Songbook" | "Chart" | "Play" | "Rehearse"): Locator =>
  page.getByRole("navigation", { name: "Places" }).getByRole("link", { name });

/** Makes a new song with this chart. */
export const writeSong = async (page: Page, chart: string): Promise<void> => {
  await placeLink(page, "Songbook").click();
  await page.getByRole("button", { name: "New song", exact: true }).click();
  await expect(editorOf(page)).toBeFocused();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.insertText(chart);
  const meaning = page.getByRole("region", { name: "What the chart says" });
  await expect(meaning.getByRole("heading", { level: 1 })).not.toHaveText("New song");
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
};

/** A button by its whole name. */
export const button = (page: Page, name: string): Locator =>
  page.getByRole("button", { name, exact: true });

/** A bar of the song in Play's strip, counted from 1. */
export const barOf = (page: Page, bar: number): Locator =>
  page.getByLabel("Bars of the song").getByRole("button", { name: new RegExp(`^Bar ${bar}:`) });
