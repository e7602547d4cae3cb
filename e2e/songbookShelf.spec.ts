import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { newSongSettings } from "../src-shared/settings.ts";
import { findings } from "./findings.ts";
import { button, placeLink, songsOf, test } from "./openApp.ts";
import type { Served } from "./serve.ts";

/** Puts charts into the songbook's folder, and opens the songbook on them. */
const fill = async (page: Page, served: Served, titles: readonly string[]): Promise<void> => {
  const folder = join(served.home, "songbook");
  await mkdir(folder, { recursive: true });
  await Promise.all(
    titles.map((title, index) => {
      const name = title.toLowerCase().replaceAll(" ", "-");
      const text = `Title: ${title}\nKey: ${["G", "D", "A"][index % 3]}\nTempo: ${100 + index}\n\n| 1 | 4 | 5 | 1 |\n`;
      const settings = { ...newSongSettings, countInBars: 0 };
      return Promise.all([
        writeFile(join(folder, `${name}.txt`), text),
        writeFile(join(folder, `${name}.json`), JSON.stringify(settings)),
      ]);
    }),
  );
  await page.reload();
  await expect(songsOf(page).getByRole("listitem").first()).toBeVisible();
};
const THREE = ["Alder Gate", "Bramble Cut", "Cinder Lane"];
const row = (page: Page, title: string) =>
  songsOf(page).getByRole("button", { name: new RegExp(`^${title}`) });
const box = (page: Page, title: string) =>
  songsOf(page).getByRole("checkbox", { name: `Choose ${title}` });
const titles = (page: Page) => songsOf(page).locator("[data-open] .title").allTextContents();
const nav = (page: Page) => page.getByRole("navigation", { name: "What to look at" });
const undo = (page: Page) => page.keyboard.press("ControlOrMeta+z");
const redo = (page: Page) => page.keyboard.press("ControlOrMeta+Shift+z");

test("songs are chosen by keys alone, and deleted, brought back and deleted again together", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await row(page, "Alder Gate").focus();
  await page.keyboard.press("Shift+ArrowDown");
  await expect(row(page, "Bramble Cut")).toBeFocused();
  await expect(page.getByText("2 chosen")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByText("2 chosen")).toHaveCount(0);
  await page.keyboard.press("ControlOrMeta+a");
  await expect(page.getByText("3 chosen")).toBeVisible();
  await page.keyboard.press("Delete");
  await expect(page.getByText("3 songs are deleted.")).toBeVisible();
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(0);
  await undo(page);
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(3);
  await expect(page.getByText("Undone: delete 3 songs.")).toBeVisible();
  await redo(page);
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(0);
  await button(page, "Undo").press("Enter");
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(3);
});

test("a range is chosen with the mouse and Shift, one more with Control", async ({
  page,
  served,
}) => {
  await fill(page, served, [...THREE, "Dusty Ford"]);
  await box(page, "Alder Gate").click();
  await box(page, "Cinder Lane").click({ modifiers: ["Shift"] });
  await expect(page.getByText("3 chosen")).toBeVisible();
  await row(page, "Dusty Ford").click({ modifiers: ["ControlOrMeta"] });
  await expect(page.getByText("4 chosen")).toBeVisible();
  await box(page, "Bramble Cut").click();
  await expect(page.getByText("3 chosen")).toBeVisible();
  await expect(box(page, "Bramble Cut")).not.toBeChecked();
  await button(page, "Duplicate").press("Enter");
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(7);
  await undo(page);
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(4);
});

test("songs get a tag, are found by it, and the tag is renamed and undone", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await box(page, "Alder Gate").press("Space");
  await box(page, "Cinder Lane").press("Space");
  await button(page, "Tags…").press("Enter");
  const dialog = page.getByRole("dialog", { name: "Tags of 2 songs" });
  await dialog.getByRole("textbox", { name: "New tag" }).fill("slow");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("checkbox", { name: "slow" })).toBeChecked();
  await button(page, "Done").press("Enter");
  await expect(dialog).toBeHidden();
  await page.keyboard.press("Escape");
  await page.getByRole("searchbox").fill("slow");
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(2);
  await page.getByRole("searchbox").fill("");
  await nav(page).getByRole("button", { name: /^slow/ }).press("Enter");
  await expect(songsOf(page).getByRole("listitem")).toHaveCount(2);
  await button(page, "Rename tag").press("Enter");
  await page.getByRole("textbox", { name: "Name of the tag" }).fill("lullaby");
  await page.keyboard.press("Enter");
  await expect(nav(page).getByRole("button", { name: /^lullaby/ })).toBeVisible();
  await page.reload();
  await expect(row(page, "Alder Gate")).toContainText("lullaby");
});

test("songs are sorted by tempo, and stay so after a reload; the last opened is recent", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await page.getByRole("combobox", { name: "Sort by" }).selectOption("Last opened");
  await row(page, "Cinder Lane").press("Enter");
  await expect(placeLink(page, "Play")).toHaveAttribute("aria-current", "page");
  await placeLink(page, "Songbook").press("Enter");
  await expect.poll(() => titles(page)).toEqual(["Cinder Lane", "Alder Gate", "Bramble Cut"]);
  await page.reload();
  await expect.poll(() => titles(page)).toEqual(["Cinder Lane", "Alder Gate", "Bramble Cut"]);
  await nav(page).getByRole("button", { name: "Recent" }).press("Enter");
  await expect.poll(() => titles(page)).toEqual(["Cinder Lane"]);
});

const makeSet = async (page: Page): Promise<void> => {
  await row(page, "Alder Gate").focus();
  await page.keyboard.press("ControlOrMeta+a");
  await button(page, "Set list…").press("Enter");
  await page.getByRole("textbox", { name: "New set list" }).fill("Friday");
  await page.keyboard.press("Enter");
  await nav(page)
    .getByRole("button", { name: /^Friday/ })
    .press("Enter");
  await expect(page.getByRole("heading", { name: "Friday" })).toBeVisible();
};
const inSet = (page: Page) =>
  page.getByRole("list", { name: "Songs of Friday" }).getByRole("button", { name: /^Play from/ });
const setTitles = (page: Page) => inSet(page).allTextContents();

test("a set list is made, put in order by keys and by dragging, and every step undone", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await makeSet(page);
  expect(await setTitles(page)).toEqual(THREE);
  const grip = page.getByRole("button", { name: /^Move Alder Gate/ });
  await grip.press("ArrowDown");
  await expect.poll(() => setTitles(page)).toEqual(["Bramble Cut", "Alder Gate", "Cinder Lane"]);
  await expect(grip).toBeFocused();
  await grip.press("End");
  await expect.poll(() => setTitles(page)).toEqual(["Bramble Cut", "Cinder Lane", "Alder Gate"]);
  const from = await grip.boundingBox();
  const to = await page.getByRole("button", { name: /^Move Bramble Cut/ }).boundingBox();
  if (!from || !to) throw new Error("the handles are not on the screen");
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(to.x + 10, to.y + 10, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => setTitles(page)).toEqual(["Alder Gate", "Bramble Cut", "Cinder Lane"]);
  await undo(page);
  await expect.poll(() => setTitles(page)).toEqual(["Bramble Cut", "Cinder Lane", "Alder Gate"]);
  await undo(page);
  await undo(page);
  await expect.poll(() => setTitles(page)).toEqual(THREE);
  await undo(page);
  await expect(nav(page).getByRole("button", { name: /^Friday/ })).toHaveCount(0);
  await redo(page);
  await expect(nav(page).getByRole("button", { name: /^Friday/ })).toBeVisible();
  await page.reload();
  await nav(page)
    .getByRole("button", { name: /^Friday/ })
    .press("Enter");
  await expect.poll(() => setTitles(page)).toEqual(THREE);
});

test("a set list is played through: in its keys, the next song by a key, and the song keeps its own", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await makeSet(page);
  await page
    .getByRole("combobox", { name: "Key of Bramble Cut for the evening" })
    .selectOption("C");
  await expect(page.getByText(/another key for “Bramble Cut”/)).toBeVisible();
  await button(page, "Play from the start").press("Enter");
  const strip = page.getByRole("region", { name: "Set list" });
  await expect(strip).toContainText("Friday, 1 of 3");
  await expect(strip).toContainText("Next: Bramble Cut, in C");
  await page.keyboard.press("e");
  await expect(page.getByRole("heading", { level: 1, name: "Bramble Cut" })).toBeVisible();
  await expect(page.getByText("C major, 4/4")).toBeVisible();
  await page.keyboard.press("e");
  await expect(strip).toContainText("The last song");
  await page.keyboard.press("q");
  await expect(page.getByRole("heading", { level: 1, name: "Bramble Cut" })).toBeVisible();
  await strip.getByRole("button", { name: "End the set" }).press("Enter");
  await expect(page.getByText("D major, 4/4")).toBeVisible();
  const kept = await readFile(join(served.home, "songbook", "bramble-cut.json"), "utf8");
  expect(JSON.parse(kept).plan.playKey).toBe(null);
});

test("in a set list that goes on by itself the next song comes up and plays", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await makeSet(page);
  await button(page, "Play from the start").press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Alder Gate" })).toBeVisible();
  await page.keyboard.press("Space");
  await button(page, "Understood, play").press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Bramble Cut" })).toBeVisible({
    timeout: 45_000,
  });
  await expect(button(page, "Pause")).toBeVisible({ timeout: 20_000 });
});

test("removed songs are brought back, or deleted for good after a question", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await page.getByRole("button", { name: "Delete Alder Gate" }).press("Enter");
  await page.getByRole("button", { name: "Delete Bramble Cut" }).press("Enter");
  await page.reload();
  await nav(page).getByRole("button", { name: "Removed" }).press("Enter");
  const removed = page.getByRole("list", { name: "Removed songs" }).getByRole("listitem");
  await expect(removed).toHaveCount(2);
  await page.getByRole("button", { name: "Bring back Alder Gate" }).press("Enter");
  await expect(removed).toHaveCount(1);
  await page.getByRole("button", { name: "Delete Bramble Cut for good" }).press("Enter");
  const question = page.getByRole("alertdialog", { name: "Delete this song for good?" });
  await question.getByRole("button", { name: "Delete for good" }).press("Enter");
  await expect(page.getByText("Nothing is removed.")).toBeVisible();
  expect(await readdir(join(served.home, "songbook", ".removed"))).toEqual([]);
  await nav(page)
    .getByRole("button", { name: /^All songs/ })
    .press("Enter");
  await expect.poll(() => titles(page)).toEqual(["Alder Gate", "Cinder Lane"]);
});

test("songs are shared as one file, which another songbook brings in with all that belongs to them", async ({
  page,
  served,
}) => {
  await fill(page, served, THREE);
  await box(page, "Alder Gate").press("Space");
  await box(page, "Bramble Cut").press("Space");
  const saved = page.waitForEvent("download");
  await button(page, "Share").press("Enter");
  const download = await saved;
  expect(download.suggestedFilename()).toBe("Songs.shortslide");
  const path = await download.path();
  await page.keyboard.press("Escape");
  await songsOf(page).getByRole("button").first().focus();
  await row(page, "Alder Gate").focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("Delete");
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
  const text = await readFile(path, "utf8");
  await page.evaluate((content) => {
    const carried = new DataTransfer();
    carried.items.add(new File([content], "Songs.shortslide"));
    window.dispatchEvent(new DragEvent("dragover", { dataTransfer: carried, cancelable: true }));
  }, text);
  await expect(page.getByText("Drop to bring in")).toBeVisible();
  await page.evaluate((content) => {
    const carried = new DataTransfer();
    carried.items.add(new File([content], "Songs.shortslide"));
    window.dispatchEvent(new DragEvent("drop", { dataTransfer: carried, cancelable: true }));
  }, text);
  await expect(page.getByText("Drop to bring in")).toHaveCount(0);
  const dialog = page.getByRole("dialog", { name: "Bring songs in" });
  await expect(
    dialog.getByText("The chart, and all settings that go with it").first(),
  ).toBeVisible();
  await dialog.getByRole("button", { name: "Keep 2 songs" }).press("Enter");
  await expect.poll(() => titles(page)).toEqual(["Alder Gate", "Bramble Cut"]);
  const kept = JSON.parse(
    await readFile(join(served.home, "songbook", "bramble-cut.json"), "utf8"),
  );
  expect(kept.countInBars).toBe(0);
});

test("the file of a new song follows its title when the song is let go", async ({
  page,
  served,
}) => {
  await button(page, "New song").press("Enter");
  await expect(page.getByRole("textbox", { name: "Chart", exact: true })).toBeFocused();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.insertText("Title: Otter Weir\nKey: G\n\n| G | C |\n");
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  expect(await readdir(join(served.home, "songbook"))).toContain("new-song.txt");
  await placeLink(page, "Songbook").press("Enter");
  await expect(row(page, "Otter Weir")).toBeVisible();
  await expect.poll(() => readdir(join(served.home, "songbook"))).toContain("otter-weir.txt");
  expect(await readdir(join(served.home, "songbook"))).not.toContain("new-song.txt");
  await page.goBack();
  await expect(page.getByRole("textbox", { name: "Chart", exact: true })).toContainText(
    "Otter Weir",
  );
  await expect(page).toHaveURL(/otter-weir/);
});

test("settings changed in two tabs are noticed, and both are kept", async ({ page, served }) => {
  await fill(page, served, THREE);
  await row(page, "Alder Gate").press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Alder Gate" })).toBeVisible();
  const path = join(served.home, "songbook", "alder-gate.json");
  const theirs = { ...JSON.parse(await readFile(path, "utf8")), playTempo: 71 };
  await writeFile(path, JSON.stringify(theirs));
  await page.keyboard.press("+");
  await expect(page.getByText("This song's settings were changed elsewhere.")).toBeVisible();
  await button(page, "Keep mine as a new song").press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Alder Gate (mine)" })).toBeVisible();
  expect(JSON.parse(await readFile(path, "utf8")).playTempo).toBe(71);
});

test("reading a large file can be cancelled, and nothing of it is kept", async ({ page }) => {
  await button(page, "Bring songs in").press("Enter");
  const dialog = page.getByRole("dialog", { name: "Bring songs in" });
  const tune = 'X:1\nT:Long Furrow\nM:4/4\nL:1/8\nK:G\n|: "G"G2B2 d2B2 | "C"c2e2 g2e2 :|\n\n';
  const large = tune.repeat(60_000);
  await dialog.getByLabel("Files with songs").setInputFiles({
    name: "large.abc",
    mimeType: "text/plain",
    buffer: Buffer.from(large),
  });
  await expect(dialog.getByRole("progressbar", { name: "Reading" })).toBeVisible();
  const cancel = dialog.getByRole("button", { name: "Cancel" });
  await expect(cancel).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("button", { name: "Choose files" })).toBeVisible();
  await expect(dialog.getByRole("progressbar")).toHaveCount(0);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
});

test("of a thousand songs only some rows are drawn, and the keys still get to the last", async ({
  page,
  served,
}) => {
  const many = Array.from({ length: 1000 }, (_, index) => `Stile ${index + 1}`);
  await fill(page, served, many);
  await expect(page.getByText("1000 songs")).toBeVisible();
  const rows = songsOf(page).getByRole("listitem");
  expect(await rows.count()).toBeLessThan(200);
  await page.getByRole("searchbox").fill("stile 1000");
  await expect(rows).toHaveCount(1);
  await page.getByRole("searchbox").fill("");
  await expect.poll(() => rows.count()).toBeGreaterThan(50);
  const before = await rows.count();
  await row(page, "Stile 1\\b").first().focus();
  for (let step = 0; step < before + 10; step += 1) await page.keyboard.press("ArrowDown");
  await expect(row(page, `Stile ${before + 11}\\b`)).toBeFocused();
});

for (const theme of ["light", "dark"] as const) {
  test(`list, set list, removed songs and dialogs stand up to axe in ${theme}`, async ({
    page,
    served,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await fill(page, served, THREE);
    await box(page, "Alder Gate").press("Space");
    await button(page, "Tags…").press("Enter");
    await page.getByRole("textbox", { name: "New tag" }).fill("slow");
    await page.keyboard.press("Enter");
    expect(await findings(page)).toEqual([]);
    await button(page, "Done").press("Enter");
    await expect(row(page, "Alder Gate")).toContainText("slow");
    expect(await findings(page)).toEqual([]);
    await makeSet(page);
    expect(await findings(page)).toEqual([]);
    await button(page, "Play from the start").press("Enter");
    await expect(page.getByRole("region", { name: "Set list" })).toBeVisible();
    expect(await findings(page)).toEqual([]);
    await placeLink(page, "Songbook").press("Enter");
    await nav(page).getByRole("button", { name: "All songs" }).press("Enter");
    await page.getByRole("button", { name: "Delete Cinder Lane" }).press("Enter");
    // The focus goes to another song once it is gone.
    await expect(page.getByText("“Cinder Lane” is deleted.")).toBeVisible();
    await expect(page.locator("[data-open]:focus")).toBeVisible();
    await nav(page).getByRole("button", { name: "Removed" }).press("Enter");
    await expect(page.getByRole("button", { name: "Bring back Cinder Lane" })).toBeVisible();
    expect(await findings(page)).toEqual([]);
  });
}
