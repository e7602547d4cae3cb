import { expect, type Locator, type Page } from "@playwright/test";
import { editorOf, placeLink, songsOf, test } from "./openApp.ts";

const barsOf = (page: Page): Locator => page.getByLabel("Bars of the song");
const tempoOf = (page: Page): Locator =>
  page.getByRole("group", { name: "Tempo", exact: true }).getByRole("status");

/** 1-based number of the bar that the strip shows as current. */
const currentBar = async (page: Page): Promise<number> => {
  const label = await barsOf(page).locator('[aria-current="true"]').getAttribute("aria-label");
  return Number(/^Bar (\d+)/.exec(label ?? "")?.[1]);
};

/** Notes every bar that becomes current from now on. */
const watchBars = (page: Page): Promise<void> =>
  barsOf(page).evaluate((strip) => {
    const seen: number[] = [];
    Object.assign(window, { seenBars: seen });
    new MutationObserver((changes) => {
      for (const { target } of changes) {
        if (target instanceof HTMLElement && target.getAttribute("aria-current") === "true") {
          seen.push(Number(target.getAttribute("data-bar")) + 1);
        }
      }
    }).observe(strip, { subtree: true, attributeFilter: ["aria-current"] });
  });
const seenBars = (page: Page): Promise<readonly number[]> =>
  page.evaluate(() => ("seenBars" in window ? (window.seenBars as number[]) : []));

/** Plays for the first time in this songbook: the caution comes before the first note. */
const playFirst = async (page: Page): Promise<void> => {
  await page.getByRole("button", { name: "Play", exact: true }).click();
  await page.getByRole("button", { name: "Understood, play" }).click();
  await expect(page.getByRole("button", { name: "Pause" })).toBeVisible();
};

test("a newcomer opens a demo, plays it, slows it down and loops two bars", async ({ page }) => {
  await test.step("an empty songbook offers demo songs", async () => {
    await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
    await page.getByRole("list", { name: "Demo songs" }).getByRole("button").first().click();
    await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
  });

  await test.step("the first Play asks for care, then plays on from bar 1", async () => {
    // The hand path runs under the now-line: it has no role, being a picture of what the strip says.
    const handPath = page.locator(".lanes .scroller");
    const standing = (await handPath.getAttribute("style")) ?? "";
    await playFirst(page);
    await expect(handPath).not.toHaveAttribute("style", standing);
    await expect.poll(() => currentBar(page), { timeout: 20_000 }).toBeGreaterThan(2);
  });

  await test.step("slower is slower at once, and it goes on playing", async () => {
    const before = Number(await tempoOf(page).textContent());
    await page.getByRole("button", { name: "Slower" }).click();
    await expect.poll(async () => Number(await tempoOf(page).textContent())).toBeLessThan(before);
    await expect(page.getByRole("button", { name: "Pause" })).toBeVisible();
  });

  await test.step("two bars are looped, and it stays within them", async () => {
    await barsOf(page)
      .getByRole("button", { name: /^Bar 5:/ })
      .click();
    await page.keyboard.press("Shift+ArrowRight");
    await expect(page.getByRole("button", { name: "Clear loop: Bars 5 to 6" })).toBeVisible();
    await expect.poll(() => currentBar(page), { timeout: 20_000 }).toBe(5);
    await watchBars(page);
    const around = [6, 5, 6, 5];
    await expect
      .poll(async () => (await seenBars(page)).slice(0, around.length), { timeout: 20_000 })
      .toEqual(around);
  });

  await test.step("pause stops the bars where they are", async () => {
    await page.getByRole("button", { name: "Pause" }).click();
    await expect(page.getByRole("button", { name: "Play", exact: true })).toBeVisible();
  });
});

test("a newcomer writes a song with a mistake, mends it, plays it and finds it all again", async ({
  page,
}) => {
  await test.step("a new song waits with its title selected", async () => {
    await page.getByRole("button", { name: "New song" }).click();
    await expect(editorOf(page)).toBeFocused();
    await page.keyboard.type("Gorse Lane");
    await expect(page.getByRole("heading", { name: "Gorse Lane" })).toBeVisible();
  });

  await test.step("a mistake is marked where it stands and told in words", async () => {
    await page.keyboard.press("ControlOrMeta+End");
    await page.keyboard.type("| C | Xm | G | D |");
    await expect(editorOf(page).locator(".cm-lintRange-error")).toHaveText("Xm");
    const notes = page.getByRole("list", { name: "Notes on the chart" }).getByRole("button");
    await expect(notes).toHaveCount(1);
    await expect(notes).toContainText("Line 9");
    await expect(page.getByText("1 error to mend")).toBeVisible();
  });

  await test.step("the note leads to the mistake, and typing mends it", async () => {
    await page.getByRole("list", { name: "Notes on the chart" }).getByRole("button").press("Enter");
    await expect(editorOf(page)).toBeFocused();
    await page.keyboard.type("Am");
    await expect(page.getByText("Nothing to mend.")).toBeVisible();
    await expect(editorOf(page)).toContainText("| C | Am | G | D |");
    const meaning = page.getByRole("region", { name: "What the chart says" });
    await expect(meaning.getByRole("listitem")).toHaveCount(12);
  });

  await test.step("undo takes the mending back, and redo brings it again", async () => {
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(editorOf(page)).not.toContainText("Am");
    await page.getByRole("button", { name: "Redo" }).click();
    await expect(editorOf(page)).toContainText("| C | Am | G | D |");
  });

  await test.step("it plays, slower, with two bars looped", async () => {
    await placeLink(page, "Play").click();
    await playFirst(page);
    await page.getByRole("button", { name: "Slower" }).click();
    await barsOf(page)
      .getByRole("button", { name: /^Bar 9:/ })
      .click();
    await page.keyboard.press("Shift+ArrowRight");
    await expect.poll(() => currentBar(page), { timeout: 20_000 }).toBe(10);
  });

  await test.step("after a reload text, tempo and loop are as they were", async () => {
    // The last change is a moment old: it is saved on the way out.
    await page.getByRole("button", { name: "Slower" }).click();
    const tempo = await tempoOf(page).textContent();
    await page.reload();
    await expect(page.getByRole("heading", { name: "Gorse Lane" })).toBeVisible();
    await expect(tempoOf(page)).toHaveText(tempo ?? "");
    await expect(page.getByRole("button", { name: "Clear loop: Bars 9 to 10" })).toBeVisible();
    await placeLink(page, "Chart").click();
    await expect(editorOf(page)).toContainText("| C | Am | G | D |");
    await expect(editorOf(page)).toContainText("Title: Gorse Lane");
  });
});

test("a song deleted by mistake comes back whole", async ({ page }) => {
  await page.getByRole("list", { name: "Demo songs" }).getByRole("button").nth(1).click();
  await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
  const title = await page.getByRole("heading", { level: 1 }).textContent();
  await page.getByRole("button", { name: "Faster" }).click();
  const tempo = await tempoOf(page).textContent();
  await placeLink(page, "Songbook").click();

  await test.step("by the message's button", async () => {
    await page.getByRole("button", { name: `Delete ${title}` }).click();
    await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(songsOf(page).getByRole("button", { name: `Delete ${title}` })).toBeVisible();
    await expect(songsOf(page).getByRole("button").first()).toBeFocused();
  });

  await test.step("and by the keyboard alone", async () => {
    await page.getByRole("button", { name: `Delete ${title}` }).press("Enter");
    await expect(songsOf(page)).toHaveCount(0);
    await page.keyboard.press("ControlOrMeta+z");
    await expect(songsOf(page).getByRole("button").first()).toBeFocused();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(title ?? "");
    await expect(tempoOf(page)).toHaveText(tempo ?? "");
  });
});
