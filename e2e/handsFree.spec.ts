import { expect, type Page } from "@playwright/test";
import { findings } from "./findings.ts";
import { barOf, button, placeLink, test, writeSong } from "./openApp.ts";

const CHART = "Title: Sluice and Wheel\nKey: G\nTime: 2/2\nTempo: 100\n\n| G | C | D | G |";

const playSong = async (page: Page): Promise<void> => {
  await writeSong(page, CHART);
  await placeLink(page, "Play").press("Enter");
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
};
const press = async (page: Page, ...keys: readonly string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key);
};
const dialogOf = (page: Page) => page.getByRole("dialog", { name: "Keys and pedals" });
const openKeys = async (page: Page): Promise<void> => {
  await press(page, "?");
  await expect(dialogOf(page)).toBeVisible();
};
/** Gives the next press to an action, by keyboard alone. */
const learn = async (page: Page, action: string): Promise<void> => {
  await page.getByRole("button", { name: `Add a key or pedal for ${action}` }).press("Enter");
  await expect(dialogOf(page).getByRole("status").first()).toContainText(`for “${action}”`);
};

test("pedals that send page keys play and go back to the start", async ({ page }) => {
  await playSong(page);
  await press(page, "PageDown");
  await button(page, "Understood, play").press("Enter");
  await expect(button(page, "Pause")).toBeVisible();
  await press(page, "PageDown");
  await expect(button(page, "Play")).toBeVisible();
  await press(page, "ArrowRight", "ArrowRight");
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true");
  await press(page, "PageUp");
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
});

test("count-in, loop and stop have keys, and none of them needs the mouse", async ({ page }) => {
  await playSong(page);
  await expect(page.getByRole("radio", { name: "1 bar", exact: true })).toBeChecked();
  await press(page, "c");
  await expect(page.getByRole("radio", { name: "2 bars" })).toBeChecked();
  await press(page, "c");
  await expect(page.getByRole("radio", { name: "0 bars" })).toBeChecked();
  await press(page, "ArrowRight", "[", "ArrowRight", "]");
  await expect(button(page, "Clear loop: Bars 2 to 3")).toBeVisible();
  await press(page, " ");
  await button(page, "Understood, play").press("Enter");
  await expect(button(page, "Pause")).toBeVisible();
  await press(page, "s");
  await expect(button(page, "Play")).toBeVisible();
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  await press(page, "k");
  await expect(button(page, "Loop this bar")).toBeVisible();
});

test("a key is learned by pressing it, a conflict is settled in words, and all can be taken back", async ({
  page,
}) => {
  await playSong(page);
  await openKeys(page);
  const says = dialogOf(page).getByRole("status").first();
  const loopRow = page
    .getByRole("listitem")
    .filter({ hasText: "Loop this bar, or clear the loop" });

  await learn(page, "One bar on");
  await press(page, "Tab");
  await expect(says).toContainText("Tab leads out of here");
  await press(page, "Enter");
  await expect(says).toHaveText("Enter now does “One bar on”.");

  await learn(page, "One bar back");
  await press(page, "l");
  await expect(says).toHaveText("L is taken: it does “Loop this bar, or clear the loop”.");
  await expect(button(page, "Give it to “One bar back”")).toBeFocused();
  await press(page, "Enter");
  await expect(says).toHaveText("L now does “One bar back”.");
  await expect(loopRow).toContainText("no key");

  await press(page, "Escape");
  await expect(dialogOf(page)).toHaveCount(0);
  await press(page, "Enter", "Enter");
  await expect(barOf(page, 3)).toHaveAttribute("aria-current", "true");
  await press(page, "l");
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");

  await openKeys(page);
  await button(page, "Undo").press("Enter");
  await expect(loopRow).not.toContainText("no key");
  await button(page, "Back to the usual keys").press("Enter");
  await expect(says).toContainText("Every key is as usual.");
  await press(page, "Escape");
  await press(page, "Enter");
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
});

test("Escape leaves a key that was being learned as it is, and the dialog open", async ({
  page,
}) => {
  await playSong(page);
  await openKeys(page);
  await learn(page, "Stop");
  await press(page, "Escape");
  await expect(dialogOf(page)).toBeVisible();
  await expect(button(page, "Back to the usual keys")).toBeDisabled();
  await page.getByRole("button", { name: "Take S off Stop" }).press("Enter");
  await expect(dialogOf(page).getByRole("status").first()).toHaveText("S does nothing now.");
});

test("what a key does is kept for the next time", async ({ page }) => {
  await playSong(page);
  await openKeys(page);
  await learn(page, "Faster");
  const written = page.waitForResponse((answer) => answer.url().includes("writePreferences"));
  await press(page, "y");
  expect((await written).ok()).toBe(true);
  await page.reload();
  await expect(barOf(page, 1)).toBeVisible();
  await press(page, "y");
  const tempo = page.getByRole("group", { name: "Tempo", exact: true }).getByRole("status");
  await expect(tempo).toHaveText("105");
});

test("the next route comes and goes by a key, and tells which it is", async ({ page }) => {
  await playSong(page);
  const neck = page.getByRole("img", { name: /^Neck\./ });
  const first = (await neck.getAttribute("aria-label")) ?? "";
  await press(page, ">");
  await expect(page.getByText(/^Route 2 of \d is on the neck\.$/)).toBeVisible();
  await press(page, ">");
  await expect(page.getByText(/^Route 3 of \d is on the neck\.$/)).toBeVisible();
  await expect(neck).toHaveAccessibleName(/pinned/);
  await press(page, "<");
  await expect(page.getByText(/^Route 2 of \d is on the neck\.$/)).toBeVisible();
  await press(page, "<");
  await expect(page.getByText(/^Route 1 of \d is on the neck\.$/)).toBeVisible();
  await expect(neck).toHaveAccessibleName(first);
});

test("keys are not the screen's while something is typed", async ({ page }) => {
  await playSong(page);
  await placeLink(page, "Songbook").press("Enter");
  const search = page.getByRole("searchbox", { name: "Search the songbook" });
  await search.focus();
  await page.keyboard.type("slj");
  await expect(search).toHaveValue("slj");
});

test.describe("a MIDI foot controller", () => {
  /** Web MIDI with one board on it, whose switches the test presses. */
  const withBoard = async (page: Page): Promise<void> => {
    await page.addInitScript(() => {
      const board = Object.assign(new EventTarget(), {
        id: "board",
        name: "Floor board",
        state: "connected",
      });
      const access = Object.assign(new EventTarget(), { inputs: new Map([["board", board]]) });
      Object.assign(window, { board });
      navigator.requestMIDIAccess = () => Promise.resolve(access as unknown as MIDIAccess);
    });
    await page.reload();
  };
  const send = (page: Page, ...bytes: readonly number[]): Promise<void> =>
    page.evaluate((data) => {
      const { board } = window as unknown as { board: EventTarget };
      const event = Object.assign(new Event("midimessage"), { data: Uint8Array.from(data) });
      board.dispatchEvent(event);
    }, bytes);

  test("is learned by pressing, plays and calls, and is kept", async ({ page }) => {
    await playSong(page);
    await withBoard(page);
    await expect(barOf(page, 1)).toBeVisible();
    await openKeys(page);
    const listen = page.getByRole("checkbox", { name: "Listen to MIDI controllers" });
    await listen.press("Space");
    await expect(dialogOf(page)).toContainText("Listening to Floor board.");
    const says = dialogOf(page).getByRole("status").first();
    await learn(page, "One bar on");
    await send(page, 0xb0, 80, 127);
    await expect(says).toHaveText("MIDI control 80, channel 1 now does “One bar on”.");
    await send(page, 0x91, 36, 90);
    await expect(says).toHaveText("MIDI note 36, channel 2: nothing yet.");
    const written = page.waitForResponse((answer) => answer.url().includes("writePreferences"));
    await learn(page, "Call the 4");
    await send(page, 0xc0, 3);
    await expect(says).toContainText("MIDI program 3, channel 1 now does “Call the 4”.");
    await written;
    await press(page, "Escape");
    await send(page, 0xb0, 80, 0);
    await send(page, 0xb0, 80, 127);
    await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");

    await page.reload();
    await expect(barOf(page, 1)).toBeVisible();
    await expect
      .poll(async () => {
        await send(page, 0xb0, 80, 127);
        return page.locator("[aria-current=true]").first().getAttribute("aria-label");
      })
      .toMatch(/^Bar [234]:/);
    await press(page, "j");
    await expect(page.getByRole("heading", { name: "Call the changes" })).toBeVisible();
    await send(page, 0xc0, 3);
    await expect(button(page, "Call 4 C played now")).toHaveAttribute("aria-pressed", "true");
  });

  test("that is refused is said so, with what to do", async ({ page }) => {
    await playSong(page);
    await page.addInitScript(() => {
      navigator.requestMIDIAccess = () =>
        Promise.reject(new DOMException("Permission denied", "SecurityError"));
    });
    await page.reload();
    await expect(barOf(page, 1)).toBeVisible();
    await openKeys(page);
    await page.getByRole("checkbox", { name: "Listen to MIDI controllers" }).press("Space");
    await expect(dialogOf(page)).toContainText("MIDI was refused (Permission denied).");
  });

  test("may be asked for by this page", async ({ page }) => {
    // Chromium's list of what the page's Permissions-Policy lets it ask for.
    const allowed = await page.evaluate(() => {
      const { featurePolicy } = document as unknown as {
        featurePolicy: { allowsFeature(name: string): boolean };
      };
      return ["midi", "camera"].map((name) => featurePolicy.allowsFeature(name));
    });
    expect(allowed).toEqual([true, false]);
  });
});

test("the screen is kept awake while the music plays, and let go when it stops", async ({
  page,
}) => {
  await writeSong(page, CHART);
  await page.addInitScript(() => {
    const locks = { held: 0 };
    const request = (): Promise<WakeLockSentinel> => {
      locks.held += 1;
      const release = (): Promise<void> => {
        locks.held -= 1;
        return Promise.resolve();
      };
      return Promise.resolve(Object.assign(new EventTarget(), { release }) as WakeLockSentinel);
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
    Object.assign(window, { locks });
  });
  await page.reload();
  await placeLink(page, "Play").press("Enter");
  await expect(barOf(page, 1)).toBeVisible();
  const held = () =>
    page.evaluate(() => (window as unknown as { locks: { held: number } }).locks.held);
  expect(await held()).toBe(0);
  await press(page, " ");
  await button(page, "Understood, play").press("Enter");
  await expect(button(page, "Pause")).toBeVisible();
  await expect.poll(held).toBe(1);
  await press(page, " ");
  await expect(button(page, "Play")).toBeVisible();
  await expect.poll(held).toBe(0);
});

test("the next change is announced when the player wants it, a bar ahead", async ({ page }) => {
  await writeSong(page, CHART.replace("| G | C |", "| G | G | C |"));
  await placeLink(page, "Play").press("Enter");
  const announced = page.locator("[data-announcement]");
  await expect(announced).toHaveAttribute("aria-live", "polite");
  await press(page, "ArrowRight");
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  await expect(announced).toHaveText("");
  await press(page, "i");
  await expect(announced).toHaveText(/^Next C: .+\.$/);
  await press(page, "ArrowLeft");
  await expect(announced).toHaveText("");
  await press(page, "i", "ArrowRight");
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true");
  await expect(announced).toHaveText("");
});

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("keys and pedals, a conflict too, have nothing against them", async ({ page }) => {
      await playSong(page);
      await openKeys(page);
      expect(await findings(page)).toEqual([]);
      await learn(page, "Stop");
      await press(page, "l");
      await expect(button(page, "Leave it as it is")).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });
  });
}
