import { expect, type Locator, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Sluice and Wheel
Key: G
Time: 2/2
Tempo: 100

[Verse]
| G | G | C | G |
| Em | F#m7b5 | D7 | N.C. |
[Chorus]
| C | D | G D | G |`;

const neckOf = (page: Page): Locator => page.getByLabel(/^Neck\. Now /);
const routesOf = (page: Page): Locator => page.getByRole("dialog", { name: "Other routes" });
const drawerOf = (page: Page): Locator => page.getByRole("dialog", { name: "Route and band" });
const playSong = async (page: Page, chart: string = CHART): Promise<void> => {
  await writeSong(page, chart);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
};
const openRoutes = async (page: Page): Promise<void> => {
  await page.keyboard.press("r");
  await expect(routesOf(page).getByRole("status")).toHaveText("5 routes that really differ");
};
/** What the neck shows in a bar. */
const neckIn = async (page: Page, bar: number): Promise<string> => {
  await barOf(page, bar).click();
  await expect(barOf(page, bar)).toHaveAttribute("aria-current", "true");
  return (await neckOf(page).getAttribute("aria-label")) ?? "";
};

test("another route is one tap away, undo brings the first one back, and a reload keeps it", async ({
  page,
}) => {
  await playSong(page);
  const before = await neckIn(page, 6);
  expect(before).toContain("Now F#m7b5");
  await openRoutes(page);
  const cards = routesOf(page).getByRole("listitem");
  await expect(cards).toHaveCount(5);
  await expect(cards.first()).toHaveAttribute("aria-current", "true");
  await expect(cards.first()).toContainText("In use");
  for (const card of await cards.all()) {
    await expect(card).toContainText(/Hand travel\s*\d+ c?mm?/);
    await expect(card).toContainText(/Hardest change\s*\S+ to \S+, .+: needs \d+ of \d+\sms/);
    await expect(card).toContainText(/Up to \d+ half notes a minute/);
    await expect(card).toContainText(/\d+ slides?, \d+ re-formed/);
  }
  await expect(cards.nth(1)).toContainText(/Elsewhere: .*F#m7b5/);
  const travel = await cards.nth(1).locator("dd").first().textContent();
  await cards.nth(1).click({ position: { x: 60, y: 120 } });
  await expect(routesOf(page)).toHaveCount(0);
  await expect(neckOf(page)).not.toHaveAttribute("aria-label", before);
  const after = await neckIn(page, 6);
  expect(after).toContain("Now F#m7b5");

  await page.keyboard.press("ControlOrMeta+z");
  await expect(neckOf(page)).toHaveAttribute("aria-label", before);
  await page.keyboard.press("ControlOrMeta+Shift+z");
  await expect(neckOf(page)).toHaveAttribute("aria-label", after);

  await placeLink(page, "Chart").click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await page.reload();
  await placeLink(page, "Play").click();
  expect(await neckIn(page, 6)).toBe(after);
  // Its pins hold the whole song, and there is a choice all the same.
  await openRoutes(page);
  await expect(cards.first().locator("dd").first()).toHaveText(travel ?? "");
  await expect(cards).toHaveCount(5);
});

test("the message offers undo, and the drawer counts the pins and takes them off", async ({
  page,
}) => {
  await playSong(page);
  const before = await neckIn(page, 6);
  await openRoutes(page);
  await button(page, "Take route 2").press("Enter");
  await expect(neckOf(page)).not.toHaveAttribute("aria-label", before);
  await page
    .getByRole("region", { name: "Messages" })
    .getByRole("button", { name: "Undo" })
    .click();
  await expect(neckOf(page)).toHaveAttribute("aria-label", before);

  await openRoutes(page);
  await button(page, "Take route 3").click();
  await expect(neckOf(page)).not.toHaveAttribute("aria-label", before);
  await button(page, "Route and band").click();
  await expect(drawerOf(page).getByText(/^\d+ grips held\. No choice is left/)).toBeVisible();
  await button(page, "Take all pins off").click();
  await expect(drawerOf(page).getByText("No pins")).toBeFocused();
  await expect(neckOf(page)).toHaveAttribute("aria-label", before);
});

test("the drawer's button leads to the routes, and Escape back to where one was", async ({
  page,
}) => {
  await playSong(page);
  await button(page, "Route and band").click();
  await drawerOf(page).getByRole("button", { name: "Other routes" }).click();
  await expect(drawerOf(page)).toHaveCount(0);
  await expect(routesOf(page)).toBeVisible();
  await expect(routesOf(page).locator(":focus")).toHaveCount(1);
  await page.keyboard.press("Escape");
  await expect(routesOf(page)).toHaveCount(0);
  await expect(button(page, "Route and band")).toBeFocused();
});

test("each aim and each hand can be chosen by the keys, and the route follows the aim", async ({
  page,
}) => {
  await playSong(page);
  await button(page, "Route and band").click();
  const drawer = drawerOf(page);
  const travel = drawer.locator("dd").first();
  const byEase = await travel.textContent();
  const aims = drawer.getByRole("group", { name: "Aim" }).getByRole("radio");
  await expect(aims).toHaveCount(7);
  await drawer.getByRole("radio", { name: /^Ease / }).focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await expect(drawer.getByRole("radio", { name: /^Shortest travel/ })).toBeChecked();
  await expect(travel).not.toHaveText(byEase ?? "");
  await expect(drawer.getByRole("group", { name: "Hand" }).getByRole("radio")).toHaveCount(3);
  await expect(drawer.getByText(/not measured on a banjo/)).toBeVisible();
  await drawer.getByRole("radio", { name: /^Two/ }).check();
  await expect(drawer.getByRole("radio", { name: /^Two/ })).toBeChecked();
});

test("changes that grow too fast with the tempo are marked, and a tap leads to the bar before", async ({
  page,
}) => {
  await playSong(page);
  const openChanges = async (): Promise<void> => {
    await button(page, "Route and band").click();
    await drawerOf(page).getByRole("tab", { name: "Changes" }).click();
  };
  const verdict = drawerOf(page).getByRole("status");
  const rows = drawerOf(page).getByRole("list", { name: "Changes" }).getByRole("listitem");
  await openChanges();
  await expect(verdict).toHaveText("11 changes, all in time at 100 half notes a minute");
  await expect(rows).toHaveCount(11);
  await expect(rows.filter({ hasText: "Too fast" })).toHaveCount(0);
  await page.keyboard.press("Escape");

  for (let tempo = 100; tempo < 160; tempo += 5) await page.keyboard.press("+");
  await openChanges();
  await expect(verdict).toContainText(/^\s*\d+ of 11 changes too fast at 160 half notes a minute$/);
  const late = rows.filter({ hasText: "Too fast" });
  const count = Number((await verdict.textContent())?.match(/\d+/)?.[0]);
  expect(count).toBeGreaterThan(0);
  await expect(late).toHaveCount(count);
  for (const row of await late.all()) {
    await expect(row).toContainText(/Slow down to \d+\.|With the aim Easiest hardest change: /);
  }
  await drawerOf(page).getByRole("checkbox", { name: "Only those too fast" }).check();
  await expect(rows).toHaveCount(count);
  await expect(rows.first()).toContainText("Bar 11");
  await rows.first().getByRole("button").click();
  await expect(drawerOf(page)).toHaveCount(0);
  await expect(barOf(page, 10)).toHaveAttribute("aria-current", "true");
  await button(page, "Route and band").click();
  await expect(rows).toHaveCount(11);
});

test("a song without a route says why instead of offering routes", async ({ page }) => {
  await playSong(page);
  await button(page, "Route and band").click();
  await drawerOf(page).getByRole("slider", { name: "Highest fret" }).focus();
  for (let fret = 17; fret > 1; fret -= 1) await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("Escape");
  await page.keyboard.press("r");
  await expect(routesOf(page).getByRole("status")).toContainText("within frets 1 to 1");
});

test("a song without chords leads to its chart instead of to routes", async ({ page }) => {
  await writeSong(page, "Title: Nothing Yet\nKey: D");
  await placeLink(page, "Play").click();
  await expect(page.getByRole("link", { name: "Open the chart" })).toBeVisible();
  await page.keyboard.press("r");
  await expect(routesOf(page)).toContainText("No chords yet: write the changes on the Chart page.");
});

test("a long song's routes are announced while they are looked for, and leaving then loses nothing", async ({
  page,
}) => {
  const turns = ["G7", "Em", "F#m7b5", "Bb"];
  const lines = Array.from(
    { length: 24 },
    (_, index) => `| C | Am7 D7 | ${turns[index % 4]} A7 | Dm G7 | F | Fm | C | Dm7 G7 |`,
  );
  await playSong(page, `Title: Long Reach\nKey: C\nTime: 4/4\nTempo: 160\n\n${lines.join("\n")}`);
  await page.evaluate(() => {
    const seen: string[] = [];
    Object.assign(window, { statesSeen: seen });
    new MutationObserver(() => {
      const says = document.querySelector(".dialog [role=status]")?.textContent ?? "";
      if (says !== seen.at(-1)) seen.push(says);
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  await page.keyboard.press("r");
  await expect(routesOf(page).getByRole("listitem").first()).toContainText("In use");
  await page.keyboard.press("Escape");
  await expect(routesOf(page)).toHaveCount(0);
  await openRoutes(page);
  const seen = await page.evaluate(() =>
    "statesSeen" in window ? (window.statesSeen as readonly string[]) : [],
  );
  expect(seen.slice(-2)).toEqual(["Looking for routes…", "5 routes that really differ"]);
});

for (const [width, height] of [
  [1280, 800],
  [1024, 768],
  [720, 900],
  [390, 844],
] as const) {
  test(`routes and changes fit at ${width} by ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await playSong(page);
    await openRoutes(page);
    const sides = async (part: Locator): Promise<boolean> =>
      part.evaluate((element) => element.scrollWidth <= element.clientWidth);
    expect(await sides(routesOf(page))).toBe(true);
    for (const card of await routesOf(page).getByRole("listitem").all()) {
      expect(await sides(card)).toBe(true);
    }
    await page.keyboard.press("Escape");
    await button(page, "Route and band").click();
    expect(await sides(drawerOf(page))).toBe(true);
    await drawerOf(page).getByRole("tab", { name: "Changes" }).click();
    expect(await sides(drawerOf(page))).toBe(true);
  });
}

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("routes, the drawer's tabs and its marks have nothing against them", async ({ page }) => {
      await playSong(page);
      await openRoutes(page);
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      for (let tempo = 100; tempo < 200; tempo += 5) await page.keyboard.press("+");
      await button(page, "Route and band").click();
      for (const tab of ["Route", "Changes", "Band"]) {
        await drawerOf(page).getByRole("tab", { name: tab }).click();
        await expect(drawerOf(page).getByRole("tabpanel")).toHaveCount(1);
        expect(await findings(page)).toEqual([]);
      }
    });
  });
}
