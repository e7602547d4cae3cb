import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
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

test("a song in 6/8 is counted in and counted down in dotted quarters", async ({ page }) => {
  await writeSong(page, "Title: Cartwheel Lane\nTime: 6/8\nTempo: 60\n| G | G . . D . . | G |");
  await placeLink(page, "Play").click();
  await expect(page.getByText("dotted quarters a minute", { exact: true })).toBeVisible();
  // G for a bar and a half: three beats of three eighths.
  await expect(page.getByRole("img", { name: "3 beats left", exact: true })).toBeVisible();
  await startPlaying(page);
  await expect(page.getByRole("img", { name: "Count-in, beat 2", exact: true })).toBeVisible();
  await expect(page.getByRole("img", { name: "2 beats left", exact: true })).toBeVisible();
  await expect(page.getByRole("img", { name: "1 beat left", exact: true })).toBeVisible();
});

test("a straight grip in open D is one finger across, and no F shape is offered", async ({
  page,
}) => {
  await writeSong(page, "Title: Low Meadow\nKey: D\nTuning: open D\n| D | G |");
  await placeLink(page, "Play").click();
  const neck = page.getByRole("img", { name: /^Neck\./ });
  await expect(neck).toHaveAccessibleName(/Now D, one finger across, fret 12\./);
  await button(page, "Route and band").click();
  await expect(page.getByRole("checkbox", { name: "Root on string 1" })).toBeChecked();
  await expect(page.getByText(/F shape|D shape|Barre/)).toHaveCount(0);
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

  await button(page, "Route and band").click();
  const drawer = page.getByRole("dialog", { name: "Route and band" });
  await drawer.getByRole("tab", { name: "Band" }).click();
  await drawer.getByRole("slider", { name: "Bass volume" }).focus();
  await page.keyboard.press("l");
  await page.keyboard.press("Escape");
  await expect(drawer).toHaveCount(0);
  await expect(button(page, "Route and band")).toBeFocused();
  await expect(page.getByRole("button", { name: /^Clear loop/ })).toBeVisible();
});

test("a tempo written with a fraction is neither changed by opening Play nor lost", async ({
  page,
}) => {
  await writeSong(page, CHART.replace("Tempo: 100", "Tempo: 120.5"));
  await placeLink(page, "Play").click();
  const group = page.getByRole("group", { name: "Tempo", exact: true });
  const own = group.getByRole("button", { name: "100 % of the chart's 120.5" });
  await expect(group.getByRole("status")).toHaveText("120.5");
  await expect(own).toBeDisabled();
  await group.getByRole("slider").focus();
  await page.keyboard.press("ArrowLeft");
  await expect(group.getByRole("status")).toHaveText("120");
  await group.getByRole("button", { name: /of the chart's 120.5/ }).click();
  await expect(group.getByRole("status")).toHaveText("120.5");
  await expect(own).toBeDisabled();
});

test("a control that was only clicked leaves its keys to the screen; one reached by Tab keeps them", async ({
  page,
}) => {
  await playSong(page);
  const tempo = page.getByRole("group", { name: "Tempo", exact: true });
  const slider = tempo.getByRole("slider");
  const twoBars = page.getByRole("radio", { name: "2 bars" });
  await startPlaying(page);
  await page.keyboard.press("Space");
  await page.keyboard.press("Home");

  await page.locator(".slider").first().click();
  await expect(slider).toBeFocused();
  const clickedTo = await tempo.getByRole("status").textContent();
  await page.keyboard.press("ArrowRight");
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  await expect(tempo.getByRole("status")).toHaveText(clickedTo ?? "");

  await twoBars.click();
  await page.keyboard.press("ArrowLeft");
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
  await expect(twoBars).toBeChecked();

  const key = page.getByRole("combobox", { name: /^Key to play in/ });
  await key.click();
  await page.getByRole("option", { name: "A", exact: true }).click();
  await expect(key).toHaveAccessibleName("Key to play in: A");
  await expect(page.getByRole("option")).toHaveCount(0);
  await expect(key).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("Space");
  await expect(button(page, "Pause")).toBeVisible();
  await page.keyboard.press("Space");
  await expect(button(page, "Play")).toBeVisible();
  await expect(page.getByRole("option")).toHaveCount(0);

  await twoBars.click();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Shift+Tab");
  await expect(twoBars).toBeFocused();
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByRole("radio", { name: "1 bar", exact: true })).toBeChecked();
});

for (const width of [1280, 390]) {
  test(`names on the hand path stay in their blocks, and lines on their beats, at ${width}`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 844 });
    await writeSong(
      page,
      "Title: Narrow Lock\nKey: Ab\nTime: 4/4\nTempo: 60\n\n| Bbm7b5 Ebm7b5 Abmaj7 Gbdim7 | Ab | Db |",
    );
    await placeLink(page, "Play").click();
    await expect(page.locator(".lanes .name").first()).toBeVisible();
    const beyond = await page
      .locator(".lanes g:has(> .form):not(:has(> .above))")
      .evaluateAll((blocks) =>
        blocks.flatMap((block) => {
          const form = block.querySelector<SVGGraphicsElement>(".form")?.getBBox();
          const name = block.querySelector<SVGGraphicsElement>(".name");
          if (!form || !name) return [];
          const said = name.getBBox();
          return said.x < form.x || said.x + said.width > form.x + form.width
            ? [name.textContent]
            : [];
        }),
      );
    expect(beyond).toEqual([]);

    await barOf(page, 2).click();
    await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
    await page.keyboard.press("l");
    const now = await page
      .locator(".lanes .mover > svg line")
      .first()
      .evaluate((line) => line.getBoundingClientRect().x);
    const edge = await page.locator("rect.loop").evaluate((loop) => loop.getBoundingClientRect().x);
    expect(Math.abs(edge - now)).toBeLessThan(1.5);
    await expect(page.locator(".lanes .outside")).toHaveCount(1);
    await expect(page.locator(".lanes [data-round='1']")).toBeAttached();
  });
}

test("a chord that the open fifth string is not in says so", async ({ page }) => {
  await playSong(page);
  await barOf(page, 6).click();
  await expect(page.getByText("Leave the 5th string out: G is not in F#m7b5")).toBeVisible();
  await barOf(page, 1).click();
  await expect(page.getByText(/Leave the 5th string out/)).toHaveCount(0);
});

test("opening Play and looking changes no settings, a tempo of 120.5 included", async ({
  page,
  served,
}) => {
  const settings = async (): Promise<readonly string[]> => {
    const files = await readdir(served.home, { recursive: true, withFileTypes: true });
    const own = files.filter((file) => file.isFile() && file.name !== "preferences.json");
    return Promise.all(own.map((file) => readFile(join(file.parentPath, file.name), "utf8")));
  };
  await writeSong(page, CHART.replace("Tempo: 100", "Tempo: 120.5"));
  const before = await settings();
  expect(before.join()).toContain("120.5");
  await placeLink(page, "Play").click();
  const tempo = page.getByRole("group", { name: "Tempo", exact: true });
  await expect(tempo.getByRole("status")).toHaveText("120.5");
  await barOf(page, 3).click();
  await placeLink(page, "Chart").click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  expect(await settings()).toEqual(before);
  await placeLink(page, "Play").click();
  await expect(tempo.getByRole("status")).toHaveText("120.5");
  await expect(tempo.getByRole("button", { name: "of the chart's 120.5" })).toBeDisabled();
});

for (const width of [1280, 1024, 390]) {
  test(`no chord's name on the hand path runs into the next at ${width}`, async ({ page }) => {
    await page.setViewportSize({ width, height: 800 });
    await writeSong(page, "Title: Four to a Bar\n| Bbm7b5 Ebm7b5 Abmaj7 Gbdim7 | Gbdim7 Bbm7b5 |");
    await placeLink(page, "Play").click();
    const names = page.locator(".lanes text.name");
    await expect(names.first()).toBeAttached();
    const boxes = await names.evaluateAll((all) =>
      all.map((one) => {
        const { left, right, top, bottom } = one.getBoundingClientRect();
        const form = one.parentElement?.querySelector(".form")?.getBoundingClientRect();
        const over = one.classList.contains("above");
        return { left, right, top, bottom, end: over ? null : form?.right };
      }),
    );
    expect(boxes.length).toBeGreaterThan(2);
    for (const [index, box] of boxes.entries()) {
      if (box.end) expect(box.right).toBeLessThanOrEqual(box.end);
      const next = boxes[index + 1];
      if (next) expect(box.right).toBeLessThanOrEqual(next.left);
    }
  });
}

test("a capo shows the fifth string's spike, and the title says where", async ({ page }) => {
  await writeSong(page, CHART.replace("Tempo: 100", "Tempo: 100\nCapo: 2"));
  await placeLink(page, "Play").click();
  await expect(page.getByText(/capo 2, 5th string at 7/)).toBeVisible();
  await expect(page.locator("[data-spike]")).toBeVisible();
});

test("a loop fades the lanes before it, and comes again after its end", async ({ page }) => {
  await playSong(page);
  await barOf(page, 5).click();
  await expect(page.locator(".lanes .outside")).toHaveCount(0);
  await page.keyboard.press("l");
  await expect(page.locator(".lanes .outside")).toHaveCount(1);
  const names = page.locator(".lanes .again .name");
  await expect(names.first()).toBeVisible();
  expect(new Set(await names.allTextContents())).toEqual(new Set(["EmF shape"]));
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

test("within a chord the lanes move by their transform alone, but for one drawing in each bar", async ({
  page,
}) => {
  await playSong(page);
  const scroller = page.locator(".scroller");
  await scroller.evaluate((moving) => {
    const seen = { moves: 0, drawings: 0 };
    Object.assign(window, { seenInLanes: seen });
    new MutationObserver((changes) => {
      const isMove = ({ target, attributeName }: MutationRecord): boolean =>
        target === moving && attributeName === "style";
      if (changes.every(isMove)) seen.moves += 1;
      else seen.drawings += 1;
    }).observe(moving, { subtree: true, childList: true, characterData: true, attributes: true });
  });
  await startPlaying(page);
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  const seen = await page.evaluate(() =>
    "seenInLanes" in window
      ? (window.seenInLanes as { readonly moves: number; readonly drawings: number })
      : null,
  );
  // A bar of count-in, the first bar, and a part of the second: each is drawn in its middle.
  expect(seen?.drawings).toBeLessThanOrEqual(3);
  expect(seen?.moves).toBeGreaterThan(10);
});

test("nothing but the shapes and the lanes moves as the chords change", async ({ page }) => {
  await playSong(page);
  const fixed = [
    page.getByRole("img", { name: /^Neck\./ }),
    page.locator(".sentence"),
    page.locator(".detail"),
    page.locator(".lanes"),
    button(page, "Route and band"),
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
  await button(page, "Route and band").click();
  const drawer = page.getByRole("dialog", { name: "Route and band" });
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
    for (const name of ["Play", "You are the banjo", "Route and band", "Keys and pedals"]) {
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
      await button(page, "Keys and pedals").click();
      await expect(page.getByRole("dialog", { name: "Keys and pedals" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await button(page, "Route and band").click();
      await expect(page.getByRole("dialog", { name: "Route and band" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await button(page, "Play").click();
      await expect(page.getByRole("dialog", { name: "Before the first note" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });
  });
}
