import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { expect, type Locator, type Page } from "@playwright/test";
import type { AxeResults } from "axe-core";
import { placeLink, test, writeSong } from "./openApp.ts";

const axeSource = await readFile(
  createRequire(import.meta.url).resolve("axe-core/axe.min.js"),
  "utf8",
);
const findings = async (page: Page): Promise<readonly string[]> => {
  // Evaluated over the debugging line, which the page's policy does not forbid.
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate<AxeResults>("axe.run(document)");
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`));
};

const CHART = `Title: Sluice and Wheel
Key: G
Time: 2/2
Tempo: 100

[Verse]
| G | G | C | G |
| Em | F#m7b5 | D7 | N.C. |
[Chorus]
| C | D | G D | G |`;

const barOf = (page: Page, bar: number): Locator =>
  page.getByLabel("Bars of the song").getByRole("button", { name: new RegExp(`^Bar ${bar}:`) });
const button = (page: Page, name: string): Locator =>
  page.getByRole("button", { name, exact: true });
const playSong = async (page: Page): Promise<void> => {
  await writeSong(page, CHART);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
};
const startPlaying = async (page: Page): Promise<void> => {
  await page.keyboard.press("Space");
  await button(page, "Understood, play").click();
  await expect(button(page, "Pause")).toBeVisible();
};

test("the keys play, step by bars, loop, slow down and take the banjo out", async ({ page }) => {
  await playSong(page);
  await startPlaying(page);
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();

  await page.keyboard.press("Home");
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true");

  await page.keyboard.press("[");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("]");
  await expect(button(page, "Clear loop: Bars 3 to 4")).toBeVisible();
  await page.keyboard.press("l");
  await expect(button(page, "Loop this bar")).toBeVisible();

  const tempo = page.getByRole("group", { name: "Tempo", exact: true }).getByRole("status");
  await page.keyboard.press("-");
  await expect(tempo).toHaveText("95");
  await page.keyboard.press("+");
  await expect(tempo).toHaveText("100");

  await page.keyboard.press("m");
  await expect(button(page, "You are the banjo")).toHaveAttribute("aria-pressed", "true");
});

test("Space plays also after a click on another control, and keys rest under the drawer", async ({
  page,
}) => {
  await playSong(page);
  await startPlaying(page);
  await button(page, "Loop this bar").click();
  await expect(page.getByRole("button", { name: /^Clear loop/ })).toBeVisible();
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();
  await expect(page.getByRole("button", { name: /^Clear loop/ })).toBeVisible();

  await button(page, "Route and mix").click();
  const drawer = page.getByRole("dialog", { name: "Route and mix" });
  await drawer.getByRole("tab", { name: "Mix" }).click();
  await drawer.getByRole("slider", { name: "Bass volume" }).focus();
  await page.keyboard.press("l");
  await page.keyboard.press("Escape");
  await expect(drawer).toHaveCount(0);
  await expect(button(page, "Route and mix")).toBeFocused();
  await expect(page.getByRole("button", { name: /^Clear loop/ })).toBeVisible();
});

test("a drag over the bars loops them, either way", async ({ page }) => {
  await playSong(page);
  const middle = async (bar: number): Promise<{ x: number; y: number }> => {
    const box = await barOf(page, bar).boundingBox();
    if (!box) throw new Error(`bar ${bar} is not on the screen`);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const [from, to] = [await middle(10), await middle(6)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
  await expect(button(page, "Clear loop: Bars 6 to 10")).toBeVisible();
  await button(page, "Clear loop: Bars 6 to 10").click();
  await expect(button(page, "Loop this bar")).toBeVisible();
});

test("within a chord the lanes move by their transform alone", async ({ page }) => {
  await playSong(page);
  const scroller = page.locator(".scroller");
  await scroller.evaluate((moving) => {
    const seen = { moves: 0, others: [] as string[] };
    Object.assign(window, { seenInLanes: seen });
    new MutationObserver((changes) => {
      for (const { target, type, attributeName } of changes) {
        if (target === moving && attributeName === "style") seen.moves += 1;
        else seen.others.push(`${type} ${attributeName} of ${target.nodeName}`);
      }
    }).observe(moving, { subtree: true, childList: true, characterData: true, attributes: true });
  });
  await startPlaying(page);
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  const seen = await page.evaluate(() =>
    "seenInLanes" in window
      ? (window.seenInLanes as { readonly moves: number; readonly others: readonly string[] })
      : null,
  );
  expect(seen?.others).toEqual([]);
  expect(seen?.moves).toBeGreaterThan(10);
});

test("nothing but the shapes and the lanes moves as the chords change", async ({ page }) => {
  await playSong(page);
  const fixed = [
    page.getByRole("img", { name: /^Neck\./ }),
    page.locator(".sentence"),
    page.locator(".detail"),
    page.locator(".lanes"),
    button(page, "Route and mix"),
    page.getByRole("group", { name: "Tempo", exact: true }),
  ];
  const corners = async (): Promise<readonly (readonly number[])[]> =>
    Promise.all(
      fixed.map(async (part) => {
        const box = await part.boundingBox();
        return box ? [box.x, box.y] : [];
      }),
    );
  const atFirst = await corners();
  for (const bar of [3, 5, 6, 8, 11]) {
    await barOf(page, bar).click();
    await expect(barOf(page, bar)).toHaveAttribute("aria-current", "true");
    expect(await corners()).toEqual(atFirst);
  }
});

test("settings that leave no route say why, and the drawer mends them", async ({ page }) => {
  await playSong(page);
  await button(page, "Route and mix").click();
  const drawer = page.getByRole("dialog", { name: "Route and mix" });
  await drawer.getByRole("slider", { name: "Highest fret" }).focus();
  for (let fret = 17; fret > 1; fret -= 1) await page.keyboard.press("ArrowLeft");
  await expect(drawer.getByRole("status")).toContainText("Allow more frets");
  await page.keyboard.press("End");
  await expect(drawer.getByText("Hand travel")).toBeVisible();
  await expect(drawer.getByRole("status")).toHaveCount(0);
});

test("a song without bars leads to its chart", async ({ page }) => {
  await writeSong(page, "Title: Nothing Yet\nKey: D");
  await placeLink(page, "Play").click();
  await expect(page.getByText("No bars yet: write the changes on the Chart page.")).toBeVisible();
  await page.getByRole("link", { name: "Open the chart" }).click();
  await expect(placeLink(page, "Chart")).toHaveAttribute("aria-current", "page");
});

for (const [width, height] of [
  [1280, 800],
  [1024, 768],
  [720, 900],
  [390, 844],
] as const) {
  test(`nothing is cut off at the side at ${width} by ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await playSong(page);
    const wide = await page.evaluate(() => ({
      page: document.documentElement.scrollWidth,
      main: document.querySelector("main")?.scrollWidth,
    }));
    expect(wide).toEqual({ page: width, main: width });
    for (const name of ["Play", "You are the banjo", "Route and mix", "Keys"]) {
      await button(page, name).scrollIntoViewIfNeeded();
      await expect(button(page, name)).toBeInViewport({ ratio: 1 });
    }
  });
}

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("Play, its drawer, keys and caution have nothing against them", async ({ page }) => {
      await playSong(page);
      expect(await findings(page)).toEqual([]);
      await button(page, "Keys").click();
      await expect(page.getByRole("dialog", { name: "Keys" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await button(page, "Route and mix").click();
      await expect(page.getByRole("dialog", { name: "Route and mix" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await button(page, "Play").click();
      await expect(page.getByRole("dialog", { name: "Before the first note" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });
  });
}
