import { expect, type Locator, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, editorOf, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Heron Weir
Key: G
Time: 2/2
Tempo: 100

|: G | C | D | G :|`;

const neckOf = (page: Page): Locator => page.getByRole("img", { name: /^Neck\./ });
const marks = (page: Page): Locator =>
  page.getByRole("list", { name: "Places for this chord" }).getByRole("button");
const markOf = (page: Page, name: string): Locator =>
  page.getByRole("list", { name: "Places for this chord" }).getByRole("button", {
    name: new RegExp(`^${name}`),
  });
const choose = async (page: Page, name: string, choice: string): Promise<void> => {
  await markOf(page, name).click();
  await page.getByRole("menuitem", { name: choice, exact: true }).click();
};
const toBar = async (page: Page, bar: number): Promise<void> => {
  await barOf(page, bar).click();
  await expect(barOf(page, bar)).toHaveAttribute("aria-current", "true");
};
const playSong = async (page: Page, chart = CHART): Promise<void> => {
  await writeSong(page, chart);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
};
const saved = async (page: Page): Promise<void> => {
  await placeLink(page, "Chart").click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
};

// G on strings 3-2-1: barre at fret 12; C: barre at 5 and 17, D shape with its index finger at 12
// (common practice, no published source).
test("a place pinned by keys is where the route goes, through a reload, an edit and undo", async ({
  page,
}) => {
  await playSong(page);
  await toBar(page, 2);
  await expect(marks(page)).toHaveCount(0);
  await page.keyboard.press("o");
  await expect(button(page, "Other places")).toHaveAttribute("aria-pressed", "true");
  await markOf(page, "C, barre, fret 17").focus();
  await page.keyboard.press("Enter");
  await expect(
    page.getByRole("menuitem", { name: "Hold it here this time", exact: true }),
  ).toBeVisible();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17/);
  await expect(markOf(page, "C, barre, fret 17")).toHaveAccessibleName(/held now, pinned/);
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17, pinned/);
  await expect(neckOf(page).locator("[data-pinned]")).toBeVisible();
  await toBar(page, 6);
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17/);

  await saved(page);
  await page.reload();
  await placeLink(page, "Play").click();
  await toBar(page, 2);
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17/);

  await placeLink(page, "Chart").click();
  await editorOf(page).getByText("|: G | C").click();
  await page.keyboard.press("Home");
  await page.keyboard.insertText("| Em | Am |\n");
  await placeLink(page, "Play").click();
  await toBar(page, 4);
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17/);
  await toBar(page, 2);
  await expect(neckOf(page)).not.toHaveAccessibleName(/pinned/);

  await page.keyboard.press("ControlOrMeta+z");
  await toBar(page, 2);
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17/);
  await page.keyboard.press("o");
  await choose(page, "C, barre, fret 17", "Take the pin off");
  await expect(neckOf(page)).not.toHaveAccessibleName(/pinned/);
  await expect(neckOf(page).locator("[data-pinned]")).toHaveCount(0);
});

test("a place held this time leaves the other times alone, and one kept off is left", async ({
  page,
}) => {
  await playSong(page);
  await toBar(page, 6);
  const usual = (await neckOf(page).getAttribute("aria-label")) ?? "";
  await button(page, "Other places").click();
  await choose(page, "C, barre, fret 17", "Hold it here this time");
  await expect(neckOf(page)).toHaveAccessibleName(/Now C, barre, fret 17/);
  await toBar(page, 2);
  await expect(neckOf(page)).not.toHaveAccessibleName(/Now C, barre, fret 17/);
  await toBar(page, 6);
  await choose(page, "C, barre, fret 17", "Take the pin off");
  await expect(neckOf(page)).toHaveAccessibleName(usual);
  const held = /Now (C, [^,.]+, fret \d+)/.exec(usual)?.[1] ?? "";
  await choose(page, held, "Keep off this place");
  await expect(neckOf(page)).not.toHaveAccessibleName(usual);
  await expect(markOf(page, held)).toHaveAccessibleName(/kept off/);
});

test("where pins leave no route, one press takes them off", async ({ page }) => {
  await playSong(page);
  await page.keyboard.press("o");
  const takeOff = button(page, "Take these pins off");
  const held = page.getByRole("button", { name: /, held now/ });
  const most = await marks(page).count();
  expect(most).toBeGreaterThan(3);
  for (let kept = 0; kept < most && (await held.count()) > 0; kept += 1) {
    const name = (await held.getAttribute("aria-label"))?.replace(/, held now.*/, "") ?? "";
    await choose(page, name, "Keep off this place");
    await expect(page.getByRole("button", { name: `${name}, held now` })).toHaveCount(0);
  }
  await expect(page.getByText(/^G has no F shape, D shape or barre within frets/)).toBeVisible();
  await takeOff.click();
  await expect(neckOf(page)).toHaveAccessibleName(/Now G, .*fret/);
});

test("Why here? says what other places cost, and holds one of them", async ({ page }) => {
  await playSong(page);
  await toBar(page, 2);
  await page.keyboard.press("w");
  const card = page.getByRole("dialog", { name: "Why here?" });
  await expect(card.getByRole("heading", { level: 2 })).toHaveText(/^C in bar 2: /);
  await expect(card.getByText(/Needs \d+ ms, has \d+ ms/)).toHaveCount(2);
  const others = card.getByRole("listitem");
  await expect(others.first()).toContainText(/\d+ mm more|just as good/);
  const name = (await others.first().locator("b").textContent()) ?? "";
  await card.getByRole("button", { name: `Hold it here: ${name}` }).click();
  await expect(card).toHaveCount(0);
  await expect(barOf(page, 2)).toBeFocused();
  await expect(neckOf(page)).toHaveAccessibleName(new RegExp(`Now C, ${name}`));
  await page.keyboard.press("w");
  await expect(card.getByText("You have pinned it here")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(card).toHaveCount(0);
});

test("a pin whose chord is gone sleeps, says so, and can be cleared", async ({ page }) => {
  await playSong(page);
  await page.keyboard.press("o");
  await choose(page, "G, barre, fret 12", "Hold it here every time");
  await saved(page);
  await editorOf(page).press("ControlOrMeta+a");
  await page.keyboard.insertText(CHART.replace("|: G", "|: Bm"));
  await placeLink(page, "Play").click();
  await expect(page.getByText("1 pin sleeps: its chord is gone")).toBeVisible();
  await button(page, "Clear it").click();
  await expect(page.getByText("1 pin sleeps: its chord is gone")).toHaveCount(0);
  await page.keyboard.press("ControlOrMeta+z");
  await expect(page.getByText("1 pin sleeps: its chord is gone")).toBeVisible();
});

test("the heading says how the change is made, and up to which tempo one too fast can be", async ({
  page,
}) => {
  await playSong(page, CHART.replace("100", "240").replace("| C |", "| C . . D |"));
  await page.keyboard.press("o");
  await choose(page, "G, F shape, fret 3", "Hold it here every time");
  await toBar(page, 2);
  await choose(page, "C, barre, fret 17", "Hold it here every time");
  await toBar(page, 1);
  const manner = page.locator(".manner");
  await expect(manner).toHaveText(/^Too fast at this tempo: up to \d+$/);
  await expect(
    page.getByRole("img", { name: /Too fast at this tempo: .*G to C in bar 2/ }),
  ).toBeVisible();
  const tempo = page.getByRole("group", { name: "Tempo", exact: true }).getByRole("status");
  const slowDown = async (): Promise<number> => {
    const upTo = Number(/\d+$/.exec((await manner.textContent()) ?? "")?.[0]);
    while (Number(await tempo.textContent()) > upTo) {
      const before = (await tempo.textContent()) ?? "";
      await page.keyboard.press("-");
      await expect(tempo).not.toHaveText(before);
    }
    return upTo;
  };
  // A new song lets the open fifth string cover what the closed strings alone cannot.
  const covered = await slowDown();
  await expect(manner).toHaveText("Open 5th string");
  await page.keyboard.press("h");
  await page
    .getByRole("group", { name: "Open 5th string" })
    .getByRole("radio", { name: /^Never/ })
    .check();
  await page.keyboard.press("Escape");
  await expect(manner).toHaveText(/^Too fast at this tempo: up to \d+$/);
  expect(await slowDown()).toBeLessThan(covered);
  await expect(manner).toHaveText("Let two notes go");
  await expect(page.locator(".fret.letGo").first()).toHaveText(/\(\d+\)$/);
});

test("a tap on the strings of a place opens its menu", async ({ page }) => {
  await playSong(page);
  await page.keyboard.press("o");
  const mark = await markOf(page, "G, barre, fret 12").boundingBox();
  const neck = await neckOf(page).boundingBox();
  if (!mark || !neck) throw new Error("the neck is not on the screen");
  await page.mouse.click(mark.x + mark.width / 2, neck.y + 0.35 * (mark.y - neck.y));
  await expect(page.getByRole("menu")).toContainText("G, barre, fret 12");
});

test("playing starts without the other places, and shows them when asked", async ({ page }) => {
  await playSong(page);
  await page.keyboard.press("o");
  await expect(marks(page).first()).toBeVisible();
  await page.keyboard.press("Space");
  await button(page, "Understood, play").click();
  await expect(button(page, "Pause")).toBeVisible();
  await expect(marks(page)).toHaveCount(0);
  await page.keyboard.press("o");
  await expect(marks(page).first()).toBeVisible();
  await button(page, "Pause").click();
  await page.keyboard.press("o");
  await expect(marks(page)).toHaveCount(0);
});

test("nothing moves down or up as chords with and without pins, roots and time go by", async ({
  page,
}) => {
  for (const width of [1280, 1024, 720, 390]) {
    await page.setViewportSize({ width, height: 844 });
    await playSong(page, CHART.replace("| C | D |", "| F#m7b5 | D7 |").replace("100", "230"));
    await page.keyboard.press("o");
    await choose(page, "G, F shape, fret 3", "Hold it here this time");
    await page.keyboard.press("o");
    await expect(marks(page)).toHaveCount(0);
    const tops = new Set<number>();
    for (const bar of [1, 2, 3, 4, 5, 6]) {
      await toBar(page, bar);
      tops.add(
        await neckOf(page).evaluate(
          (neck) =>
            neck.getBoundingClientRect().top + (document.querySelector("main")?.scrollTop ?? 0),
        ),
      );
    }
    expect([width, tops.size]).toEqual([width, 1]);
  }
});

test("a chord without its root says who has it", async ({ page }) => {
  await playSong(page, CHART.replace("C | D", "F#m7b5 | D7"));
  await toBar(page, 2);
  await expect(page.getByText(/no root: the bass has it/)).toBeVisible();
});

for (const width of [720, 390]) {
  test(`every place can be tapped on a screen ${width} wide`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    await playSong(page, CHART.replace("| C |", "| C7 |"));
    await toBar(page, 2);
    await button(page, "Other places").click();
    const count = await marks(page).count();
    expect(count).toBeGreaterThan(6);
    for (let index = 0; index < count; index += 1) {
      await marks(page).nth(index).click();
      await expect(page.getByRole("menu")).toBeVisible();
      await page.keyboard.press("Escape");
      await expect(page.getByRole("menu")).toHaveCount(0);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  });
}

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("other places, their menu and the why card have nothing against them", async ({
      page,
    }) => {
      await playSong(page);
      await toBar(page, 2);
      await page.keyboard.press("o");
      await choose(page, "C, barre, fret 17", "Hold it here every time");
      await choose(page, "C, barre, fret 5", "Keep off this place");
      expect(await findings(page)).toEqual([]);
      await markOf(page, "C, barre, fret 17").click();
      await expect(page.getByRole("menu")).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await toBar(page, 3);
      await button(page, "Why here?").click();
      const card = page.getByRole("dialog", { name: "Why here?" });
      await expect(card.getByRole("listitem").first()).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });
  });
}
