import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page } from "@playwright/test";
import { parseMidi } from "midi-file";
import { importFile } from "../src-shared/exchange/importFile.ts";
import { findings, violationsOf } from "./findings.ts";
import { barOf, button, placeLink, songsOf, test, writeSong } from "./openApp.ts";

const TWO_TUNES = `X:1
T:Sallow Lane
M:4/4
L:1/4
Q:1/4=112
K:G
|: "G"G B d B | "C"c e g e | "D7"d f a f | "G"g d B G :|

X:2
T:Quarry Step
M:3/4
L:1/4
K:D
"D"d f a | "A7"c e a | "G"B d g | "D"d f a |
`;

const dialogOf = (page: Page): Locator => page.getByRole("dialog", { name: "Bring songs in" });
const open = async (page: Page): Promise<Locator> => {
  await button(page, "Bring songs in").click();
  const dialog = dialogOf(page);
  await expect(dialog.getByRole("button", { name: "Choose files" })).toBeFocused();
  return dialog;
};
const paste = async (page: Page, text: string): Promise<Locator> => {
  const dialog = await open(page);
  await dialog.getByRole("textbox", { name: /^Or paste text/ }).fill(text);
  await dialog.getByRole("button", { name: "Read the text" }).click();
  return dialog;
};
const choose = (dialog: Locator, files: Parameters<Locator["setInputFiles"]>[0]): Promise<void> =>
  dialog.getByLabel("Files with songs").setInputFiles(files);
const named = (name: string, text: string) => ({
  name,
  mimeType: "text/plain",
  buffer: Buffer.from(text),
});
const titlesIn = (page: Page): Locator => songsOf(page).getByRole("listitem");

test("of two tunes pasted as ABC one is chosen, kept and played, and undo takes it out", async ({
  page,
}) => {
  const dialog = await paste(page, TWO_TUNES);
  await expect(dialog.getByRole("status")).toHaveText("2 songs found.");
  await expect(dialog.getByText("G major, 4/4, 8 bars")).toBeVisible();
  await expect(dialog.getByText("D major, 3/4, 4 bars")).toBeVisible();
  await expect(dialog.getByText("4 chord symbols").first()).toBeVisible();
  await expect(dialog.getByText("16 notes: a chart has chords alone.")).toBeVisible();
  await dialog.getByRole("button", { name: "None" }).click();
  await expect(dialog.getByRole("button", { name: "Keep 0 songs" })).toBeDisabled();
  await dialog.getByRole("checkbox", { name: /^Sallow Lane/ }).check();
  await dialog.getByRole("button", { name: "Keep 1 song" }).click();
  await expect(dialog).toBeHidden();
  await expect(titlesIn(page)).toHaveCount(1);
  const row = songsOf(page).getByRole("button", { name: /^Sallow Lane/ });
  await expect(row).toBeFocused();
  await row.press("Enter");
  await expect(barOf(page, 8)).toBeVisible();
  await expect(barOf(page, 1)).toHaveAttribute("aria-current", "true");
  await page.keyboard.press("Space");
  await button(page, "Understood, play").click();
  await expect(button(page, "Pause")).toBeVisible();
  // After the count-in; a machine under load starts its sound late.
  await expect(barOf(page, 2)).toHaveAttribute("aria-current", "true", { timeout: 20_000 });
  await button(page, "Pause").click();

  await placeLink(page, "Songbook").click();
  await expect(page.getByText("1 song kept.")).toBeVisible();
  await button(page, "Undo").click();
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
  await page.keyboard.press("ControlOrMeta+Shift+z");
  await expect(titlesIn(page)).toHaveCount(1);
});

test("files that are broken or of another kind are refused in words beside the songs of others", async ({
  page,
}) => {
  const dialog = await open(page);
  await choose(dialog, [
    named("broken.musicxml", "<score-partwise><part><measure>"),
    named("empty.abc", ""),
    named("changes.txt", "Title: Bent Reed\nKey: A\n\n| A | D | E | A |"),
    { name: "packed.mxl", mimeType: "", buffer: Buffer.from([0x50, 0x4b, 3, 4, 20, 0, 1]) },
  ]);
  await expect(dialog.getByRole("status")).toHaveText(
    "1 song found. 3 others cannot be had, and say why.",
  );
  const rows = dialog.getByRole("list", { name: "Songs found" }).getByRole("listitem");
  for (const name of ["broken.musicxml", "empty.abc", "packed.mxl"]) {
    const words = await rows.filter({ hasText: name }).textContent();
    expect((words ?? "").replace(name, "").trim()).toMatch(/^\S.+\. \S.+\.$/);
  }
  await expect(dialog.getByRole("checkbox")).toHaveCount(1);
  expect(await findings(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await expect(dialog).toBeHidden();
  await expect(page.getByRole("heading", { name: "Your songbook is empty" })).toBeVisible();
});

test("a long list is narrowed while it is typed, and a title one has already is not kept unasked", async ({
  page,
}) => {
  await writeSong(page, "Title: Tune 7\n\n| G | C |");
  await placeLink(page, "Songbook").click();
  const tunes = Array.from(
    { length: 30 },
    (_, index) => `X:${index + 1}\nT:Tune ${index + 1}\nM:4/4\nL:1/4\nK:G\n"G"G2 B2 | "D"d4 |\n`,
  );
  const dialog = await open(page);
  await choose(dialog, named("thirty.abc", tunes.join("\n")));
  await expect(dialog.getByRole("button", { name: "Keep 29 songs" })).toBeEnabled();
  await expect(
    dialog.getByText("A song of this title is in your songbook; both are kept."),
  ).toBeVisible();
  await expect(dialog.getByRole("checkbox", { name: /^Tune 7 / })).not.toBeChecked();
  await dialog.getByRole("button", { name: "None" }).click();
  await dialog.getByRole("searchbox", { name: "Filter the songs found" }).fill("tune 2");
  await expect(dialog.getByRole("checkbox")).toHaveCount(12);
  await dialog.getByRole("button", { name: "All" }).click();
  await dialog.getByRole("button", { name: "Keep 12 songs" }).click();
  await expect(titlesIn(page)).toHaveCount(13);
  await expect(page.getByText("12 songs kept.")).toBeVisible();
});

test("a file let fall on the songbook is read", async ({ page }) => {
  const carried = await page.evaluateHandle((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], "let-fall.abc"));
    return data;
  }, TWO_TUNES);
  await page.getByRole("main").dispatchEvent("drop", { dataTransfer: carried });
  await expect(dialogOf(page).getByRole("status")).toHaveText("2 songs found.");
});

test("with the line down nothing is kept, and what was chosen is still there", async ({
  page,
  context,
}) => {
  const dialog = await paste(page, TWO_TUNES);
  await expect(dialog.getByRole("button", { name: "Keep 2 songs" })).toBeEnabled();
  await context.setOffline(true);
  await dialog.getByRole("button", { name: "Keep 2 songs" }).click();
  await expect(dialog.getByRole("alert")).toBeVisible();
  await context.setOffline(false);
  await dialog.getByRole("button", { name: "Keep 2 songs" }).click();
  await expect(titlesIn(page)).toHaveCount(2);
});

test("songs are brought in with the keyboard alone", async ({ page }) => {
  await button(page, "Bring songs in").focus();
  await page.keyboard.press("Enter");
  const dialog = dialogOf(page);
  await expect(dialog.getByRole("button", { name: "Choose files" })).toBeFocused();
  await page.keyboard.press("Tab");
  await page.keyboard.insertText(TWO_TUNES);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("status")).toBeFocused();
  for (let press = 0; press < 3; press += 1) await page.keyboard.press("Tab");
  await expect(dialog.getByRole("checkbox", { name: /^Sallow Lane/ })).toBeFocused();
  await page.keyboard.press("Space");
  const keep = dialog.getByRole("button", { name: "Keep 1 song" });
  for (let press = 0; press < 5; press += 1) await page.keyboard.press("Tab");
  await expect(keep).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(songsOf(page).getByRole("button", { name: /^Quarry Step/ })).toBeFocused();
});

test("Play and Chart save the song as MusicXML, MIDI, tablature and chart text", async ({
  page,
}) => {
  const chart = "Title: Weir / Willow\nKey: G\nTempo: 96\n\n[A]\n|: G | C | D7 | G :|\n";
  await writeSong(page, chart);
  const save = async (item: RegExp | string) => {
    await button(page, "Save as…").click();
    const coming = page.waitForEvent("download");
    await page.getByRole("menuitem", { name: item }).click();
    const file = await coming;
    return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
  };
  const asChart = await save(/^Chart text/);
  expect(asChart).toEqual({ name: "Weir Willow.txt", bytes: Buffer.from(chart) });

  await placeLink(page, "Play").click();
  await button(page, "Route and band").click();
  await page.getByRole("tab", { name: "Band" }).click();
  const xml = await save(/^MusicXML Tablature/);
  expect(xml.name).toBe("Weir Willow.musicxml");
  const read = importFile(xml.bytes);
  expect(read).toMatchObject({ ok: true, tunes: [{ ok: true, title: "Weir / Willow" }] });
  const [tune] = read.ok ? read.tunes : [];
  expect(tune?.ok && tune.chart).toContain("| G | C | D7 | G |");

  const withNotation = await save(/^MusicXML with notation/);
  expect(withNotation.bytes.toString("utf8")).toContain("<staves>2</staves>");
  const midi = await save(/^MIDI/);
  expect(midi.name).toBe("Weir Willow.mid");
  expect(parseMidi(midi.bytes).header.format).toBe(1);
  const tablature = await save(/^Text tablature/);
  expect(tablature.bytes.toString("utf8")).toContain("Weir / Willow");
  await expect(page.getByText("“Weir Willow.txt” is with your downloads.")).toBeVisible();
});

test("a song is duplicated with a title of its own, and undo takes it out again", async ({
  page,
}) => {
  await writeSong(page, "Title: Otter Ford\nKey: G\nTempo: 133\n\n| G | Am |");
  await placeLink(page, "Songbook").click();
  await button(page, "Duplicate Otter Ford").click();
  await expect(songsOf(page).getByRole("button", { name: /^Otter Ford, copy/ })).toBeFocused();
  await expect(titlesIn(page)).toHaveCount(2);
  await button(page, "Undo").click();
  await expect(titlesIn(page)).toHaveCount(1);
  await expect(titlesIn(page)).not.toContainText("copy");
});

test("a song is found by its tempo and by a chord in it", async ({ page }) => {
  await writeSong(page, "Title: Otter Ford\nKey: G\nTempo: 133\n\n| G | Bm |");
  await writeSong(page, "Title: Bramble Cut\nKey: C\nTempo: 90\n\n| C | F |");
  await placeLink(page, "Songbook").click();
  const search = page.getByRole("searchbox", { name: "Search the songbook" });
  for (const words of ["133", "bm"]) {
    await search.fill(words);
    await expect(titlesIn(page)).toHaveCount(1);
    await expect(titlesIn(page)).toContainText("Otter Ford");
  }
});

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("bringing in and saving have nothing against them", async ({ page }) => {
      const dialog = await open(page);
      expect(await findings(page)).toEqual([]);
      await dialog.getByRole("button", { name: "Read the text" }).click();
      await expect(dialog.getByRole("alert")).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await dialog.getByRole("textbox").fill(`${TWO_TUNES}\nX:3\nT:Bare Hedge\nK:G\nG4|`);
      await dialog.getByRole("button", { name: "Read the text" }).click();
      await expect(dialog.getByRole("button", { name: "Keep 2 songs" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
      await dialog.getByRole("button", { name: "Keep 2 songs" }).click();
      await button(page, "Edit the chart of Quarry Step").click();
      await button(page, "Save as…").click();
      await expect(page.getByRole("menuitem", { name: /^MIDI/ })).toBeVisible();
      // A menu stands outside the landmarks, as every menu here does; all else counts.
      const others = (await violationsOf(page)).filter(({ id }) => id !== "region");
      expect(others).toEqual([]);
    });
  });
}
