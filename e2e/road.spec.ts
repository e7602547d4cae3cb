import { expect, type Locator, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = `Title: Osier Lane
Key: G
Time: 2/2
Tempo: 100

[Verse]
| G | C | D | G |
| Em | Am | D7 | G |
[Chorus]
| C | D | G | Em |
| Am | D7 | G | G |`;

const playSong = async (page: Page, chart = CHART): Promise<void> => {
  await writeSong(page, chart);
  await placeLink(page, "Play").click();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
  // From here on by keyboard alone, and the focus on nothing.
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
};
const startPlaying = async (page: Page): Promise<void> => {
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  await expect(button(page, "Pause")).toBeVisible();
};
const xOf = async (part: Locator): Promise<number> => (await part.boundingBox())?.x ?? Number.NaN;
const neckOf = (page: Page): Locator => page.locator(".neck svg[role=img]");
const openView = async (page: Page): Promise<Locator> => {
  await button(page, "View").press("Enter");
  const view = page.getByRole("dialog", { name: "View" });
  await expect(view).toBeVisible();
  return view;
};

test("the View menu turns the neck for a listener and for a left-handed player, by keyboard, and keeps it", async ({
  page,
  served,
}) => {
  await playSong(page);
  const nut = page.locator(".neck .nut");
  const peg = page.locator(".neck .peg");
  const middle = async (): Promise<number> => {
    const box = await neckOf(page).boundingBox();
    return (box?.x ?? 0) + (box?.width ?? 0) / 2;
  };
  expect(await xOf(nut)).toBeLessThan(await middle());
  const low = (await peg.boundingBox())?.y ?? Number.NaN;

  const view = await openView(page);
  await view.getByRole("radio", { name: "As you look down" }).focus();
  await page.keyboard.press("ArrowRight");
  await expect(view.getByRole("status")).toHaveText(
    "A right-handed player's neck, 5th string on top.",
  );
  expect(await xOf(nut)).toBeGreaterThan(await middle());
  expect((await peg.boundingBox())?.y).toBeLessThan(low);

  await view.getByRole("radio", { name: "Right" }).focus();
  await page.keyboard.press("ArrowLeft");
  await expect(view.getByRole("status")).toHaveText(
    "A left-handed player's neck, 5th string on top.",
  );
  await page.keyboard.press("Escape");
  await expect(button(page, "View")).toBeFocused();

  await page.goto("about:blank");
  await page.goto(served.url);
  await page
    .getByRole("button", { name: /Osier Lane/ })
    .first()
    .press("Enter");
  await placeLink(page, "Play").click();
  await expect(nut).toBeAttached();
  expect(await xOf(nut)).toBeLessThan(await middle());
  expect((await peg.boundingBox())?.y).toBeLessThan(low);
});

test("F finds every root on all strings, A names the notes, and both are kept", async ({
  page,
}) => {
  await playSong(page);
  const roots = page.locator(".neck [data-root]");
  await expect(roots).toHaveCount(0);
  await page.keyboard.press("f");
  await expect(roots.first()).toBeVisible();
  const view = await openView(page);
  await expect(view.getByRole("checkbox", { name: "Roots on every string" })).toBeChecked();
  await view.getByRole("checkbox", { name: "Roots on every string" }).press("Space");
  await page.keyboard.press("Escape");
  await expect(roots).toHaveCount(0);

  await page.keyboard.press("a");
  const notes = page.locator(".neck text.note");
  await expect(notes.first()).toBeVisible();
  await expect(page.locator(".neck .held text").first()).toHaveText(/^[A-G]/);
  await page.keyboard.press("a");
  await expect(notes).toHaveCount(0);
  await expect(page.locator(".neck .held text").first()).toHaveText(/^[1-4]$/);
});

test("X and Z show more bars and fewer, and the wheel with Ctrl does too", async ({ page }) => {
  await playSong(page);
  const wide = async (): Promise<number> =>
    (await page.locator(".lanes .form").first().boundingBox())?.width ?? Number.NaN;
  const usual = await wide();
  await page.keyboard.press("x");
  await expect.poll(wide).toBeLessThan(usual * 0.9);
  await page.keyboard.press("z");
  await expect.poll(wide).toBeCloseTo(usual, 0);
  await page.locator(".lanes").hover();
  await page.keyboard.down("Control");
  await page.mouse.wheel(0, -60);
  await page.keyboard.up("Control");
  await expect.poll(wide).toBeGreaterThan(usual * 1.1);
});

test("full stop looks ahead, N comes back, and while the music plays it comes back by itself", async ({
  page,
}) => {
  await playSong(page);
  const now = page.locator(".lanes .mover > svg").last();
  const back = button(page, "Back to now");
  const usual = await xOf(now);
  await page.keyboard.press(".");
  await expect(back).toBeVisible();
  await expect.poll(() => xOf(now)).toBeLessThan(usual - 50);
  await page.keyboard.press("n");
  await expect(back).toHaveCount(0);
  await expect.poll(() => xOf(now)).toBeCloseTo(usual, 0);

  await startPlaying(page);
  await page.keyboard.press(".");
  await expect(back).toBeVisible();
  await expect(back).toHaveCount(0, { timeout: 15_000 });
  await expect.poll(() => xOf(now)).toBeCloseTo(usual, 0);
});

test("a drag over the lanes looks ahead, and leaves the music where it is", async ({ page }) => {
  await playSong(page);
  const box = await page.locator(".lanes").boundingBox();
  if (!box) throw new Error("no lanes");
  await page.mouse.move(box.x + box.width * 0.8, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2, { steps: 5 });
  await page.mouse.up();
  await expect(button(page, "Back to now")).toBeVisible();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("n");
  await expect(button(page, "Back to now")).toHaveCount(0);
});

test("the hand goes to its next grip before the chord is due, and nothing jumps when it is", async ({
  page,
}) => {
  await playSong(page);
  await page.evaluate(() => {
    const seen: { x: number; grip: string }[] = [];
    Object.assign(window, { seenOnNeck: seen });
    const look = (): void => {
      const dots = [...document.querySelectorAll<SVGGElement>(".neck .held .finger .dot")];
      const first = dots[0]?.getBoundingClientRect();
      const name = document.querySelector(".neck svg")?.getAttribute("aria-label") ?? "";
      if (first) seen.push({ x: first.x, grip: name.slice(0, 30) });
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  await startPlaying(page);
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true", { timeout: 20_000 });
  const seen = await page.evaluate(
    () => (window as unknown as { seenOnNeck: { x: number; grip: string }[] }).seenOnNeck,
  );
  const changes = seen.flatMap(({ x, grip }, index) => {
    const before = seen[index - 1];
    return before && before.grip !== grip ? [Math.abs(x - before.x)] : [];
  });
  const xs = new Set(seen.map(({ x }) => Math.round(x)));
  expect(changes.length).toBeGreaterThan(0);
  // Within one fret's width of where it had come to: a frame may fall short of the very end.
  for (const jump of changes) expect(jump).toBeLessThan(20);
  expect(xs.size).toBeGreaterThan(4);
});

test("the arrow keys go along the strip, Enter goes to a bar, Shift stretches a loop", async ({
  page,
}) => {
  await playSong(page);
  await barOf(page, 1).focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await expect(barOf(page, 3)).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true");
  await expect(page.locator("[data-bar][aria-current]")).toHaveCount(1);
  await expect(page.locator("[data-bar][tabindex='0']")).toHaveCount(1);
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await expect(button(page, "Clear loop: Bars 3 to 5")).toBeVisible();
});

test.describe("with motion unwanted", () => {
  test.use({ contextOptions: { reducedMotion: "reduce" } });

  test("the lanes go on by beats and the hand does not slide", async ({ page }) => {
    await playSong(page);
    await page.evaluate(() => {
      const seen = new Set<string>();
      Object.assign(window, { seenPlaces: seen });
      const look = (): void => {
        const part = document.querySelector<HTMLElement>(".scroller");
        if (part) seen.add(part.style.transform);
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await startPlaying(page);
    await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true", { timeout: 20_000 });
    const places = await page.evaluate(() => [
      ...(window as unknown as { seenPlaces: Set<string> }).seenPlaces,
    ]);
    // A bar of count-in, two bars, two beats each, and the first of the next: seven at most.
    expect(places.length).toBeGreaterThan(2);
    expect(places.length).toBeLessThanOrEqual(8);
  });
});

test("strip, Play and the lanes are in the first screenful of a telephone", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await playSong(page);
  await page.locator("main").evaluate((main) => main.scrollTo(0, 0));
  await expect(barOf(page, 1)).toBeInViewport({ ratio: 1 });
  await expect(button(page, "Play")).toBeInViewport({ ratio: 1 });
  await expect(page.locator(".lanes")).toBeInViewport({ ratio: 0.95 });
});

test("at 200 % of a desk's screen everything can be reached, and nothing goes beyond its sides", async ({
  page,
}) => {
  await page.setViewportSize({ width: 640, height: 400 });
  await playSong(page);
  expect(await page.locator("main").evaluate((main) => main.scrollWidth)).toBe(640);
  for (const part of [button(page, "View"), neckOf(page), barOf(page, 1), button(page, "Play")]) {
    await part.scrollIntoViewIfNeeded();
    await expect(part).toBeInViewport({ ratio: 0.9 });
  }
});

test("what can be tapped over the pictures is 40 pixels or more", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await playSong(page);
  for (const part of [button(page, "View"), button(page, "Other places"), barOf(page, 2)]) {
    const box = await part.boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(40);
    expect(box?.width).toBeGreaterThanOrEqual(40);
  }
});

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("the View menu, the aids and a look ahead have nothing against them", async ({ page }) => {
      await playSong(page);
      await page.keyboard.press("f");
      await page.keyboard.press("a");
      await page.keyboard.press("l");
      await page.keyboard.press(".");
      await expect(button(page, "Back to now")).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await openView(page);
      expect(await findings(page)).toEqual([]);
    });
  });
}

test.describe("by touch", () => {
  test.use({ hasTouch: true });

  test("a finger held on a bar of the strip and drawn on loops those bars; a swipe scrolls it", async ({
    page,
    served,
  }) => {
    expect(served.home).not.toBe("");
    await page.setViewportSize({ width: 390, height: 844 });
    await playSong(page);
    const line = await page.context().newCDPSession(page);
    const middleOf = async (bar: number): Promise<{ x: number; y: number }> => {
      const box = await barOf(page, bar).boundingBox();
      if (!box) throw new Error(`bar ${bar} is not on the screen`);
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    };
    const touch = (
      type: "touchStart" | "touchMove" | "touchEnd",
      at?: { readonly x: number; readonly y: number },
    ): Promise<unknown> =>
      line.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ ...at }] : [] });
    const drawn = async (from: number, to: number): Promise<void> => {
      const [start, end] = [await middleOf(from), await middleOf(to)];
      for (let step = 1; step <= 8; step += 1) {
        await touch("touchMove", { x: start.x + ((end.x - start.x) * step) / 8, y: start.y });
      }
    };
    const scrolled = (): Promise<number> =>
      page.getByLabel("Bars of the song").evaluate((strip) => strip.scrollLeft);

    await touch("touchStart", await middleOf(2));
    await expect(barOf(page, 2)).toHaveClass(/looped/);
    await drawn(2, 4);
    await touch("touchEnd");
    await expect(button(page, "Clear loop: Bars 2 to 4")).toBeVisible();
    expect(await scrolled()).toBe(0);

    await touch("touchStart", await middleOf(6));
    await drawn(6, 2);
    await touch("touchEnd");
    await expect.poll(scrolled).toBeGreaterThan(50);
    await expect(button(page, "Clear loop: Bars 2 to 4")).toBeVisible();
  });
});
