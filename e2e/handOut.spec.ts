import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page } from "@playwright/test";
import { readPdf, runAt } from "../test/src-shared/sheet/readPdf.ts";
import { violationsOf } from "./findings.ts";
import { button, placeLink, songsOf, test, writeSong } from "./openApp.ts";

const CHART = `Title: Willow Gate
Key: Bb
Capo: 2
Tempo: 90

[Verse]
| Bb | Eb | F7 | Bb |
[Chorus]
| Gm | Eb | F7 | Bb | Bb | Eb | F7 | Bb |
`;

const dialogOf = (page: Page): Locator => page.getByRole("dialog", { name: "Hand-out" });
const open = async (page: Page): Promise<Locator> => {
  await button(page, "Save as…").click();
  await page.getByRole("menuitem", { name: /^Hand-out…/ }).click();
  const dialog = dialogOf(page);
  await expect(dialog.getByRole("img", { name: /^Page 1 of / })).toBeVisible();
  return dialog;
};

test("a hand-out is previewed, its paper switched, and what the PDF has stands where the preview has it", async ({
  page,
}) => {
  await writeSong(page, CHART);
  const dialog = await open(page);
  expect(await violationsOf(page, ".hand-out")).toEqual([]);
  await dialog.getByRole("radio", { name: "A4" }).click();
  const shown = dialog.getByRole("img", { name: /^Page 1 of / });
  await expect(shown).toHaveAttribute("viewBox", /^0 0 595\.2\d+ 841\.8\d+$/);
  await dialog.getByRole("radio", { name: "Letter" }).click();
  await expect(shown).toHaveAttribute("viewBox", "0 0 612 792");
  await dialog.getByRole("textbox", { name: "Notes for the student" }).fill("Slide early.\nSing.");
  await expect(shown.getByText("Slide early.", { exact: true })).toBeVisible();

  const texts = await shown.locator("text").evaluateAll((all) =>
    all.map((each) => ({
      text: each.textContent ?? "",
      x: Number(each.getAttribute("x")),
      y: Number(each.getAttribute("y")),
      width: each instanceof SVGTextContentElement ? each.getComputedTextLength() : Number.NaN,
    })),
  );
  const coming = page.waitForEvent("download");
  await button(page, "Save PDF").click();
  const saved = await coming;
  expect(saved.suggestedFilename()).toBe("Willow Gate.pdf");
  const pdf = await readPdf(await readFile(await saved.path()));
  await expect(dialog.getByRole("status").getByText("is with your downloads")).toBeVisible();
  // 8.5 by 11 inches of 72 points (ANSI/ASME Y14.1).
  expect(pdf.pages.map(({ width, height }) => [width, height])).toEqual(
    pdf.pages.map(() => [612, 792]),
  );
  const inPdf = pdf.pages[0]?.texts ?? [];
  expect(texts.length).toBeGreaterThan(50);
  let alone = 0;
  for (const { text, x, y, width } of texts.filter((each) => each.text.trim() !== "")) {
    const run = runAt(inPdf, text, x, y);
    expect(run, `"${text}" at ${x}, ${y}`).toBeDefined();
    if (run?.text !== text) continue;
    alone += 1;
    expect(Math.abs(run.width - width), `width of "${text}"`).toBeLessThan(0.6);
  }
  expect(alone / texts.length).toBeGreaterThan(0.7);
});

test("notes stay with the song, parts are left off, and Escape gives the focus back", async ({
  page,
}) => {
  await writeSong(page, CHART);
  const dialog = await open(page);
  await dialog.getByRole("textbox", { name: "Notes for the student" }).fill("Breathe at bar 5.");
  await dialog.getByRole("checkbox", { name: "Hardest changes" }).uncheck();
  const pages = dialog.getByRole("region", { name: "Preview" });
  await expect(pages.locator("text", { hasText: "The hardest changes" })).toHaveCount(0);
  await dialog.getByRole("radio", { name: "Overview" }).click();
  await expect(pages.getByRole("status")).toHaveText("Page 1 of 1");
  await page.keyboard.press("Escape");
  await expect(dialog).toBeHidden();
  await expect(button(page, "Save as…")).toBeFocused();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await page.reload();
  await placeLink(page, "Chart").click();
  const again = await open(page);
  await expect(again.getByRole("textbox", { name: "Notes for the student" })).toHaveValue(
    "Breathe at bar 5.",
  );
});

test("the printer gets the pages of the preview and nothing else", async ({ page }) => {
  await writeSong(page, CHART);
  const dialog = await open(page);
  await dialog.getByRole("radio", { name: "A4" }).click();
  const count = dialog.getByRole("region", { name: "Preview" }).getByRole("status");
  const pages = Number(/of (\d+)/.exec((await count.textContent()) ?? "")?.[1]);
  // The browser's own print dialog cannot be reached: it is held back, and what it would get is read.
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute("data-printed", "true");
  });
  await button(page, "Print").click();
  await expect(page.locator("body")).toHaveAttribute("data-printed", "true");
  const pdf = await readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(pdf.pages.length).toBe(pages);
  // 210 by 297 mm (ISO 216).
  expect(pdf.pages[0]?.width).toBeCloseTo(595.28, 0);
  expect(pdf.pages[0]?.height).toBeCloseTo(841.89, 0);
  expect(pdf.pages[0]?.texts.map(({ text }) => text).join(" ")).toContain("Willow Gate");
  expect(pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text))).not.toContain("Songbook");
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await expect(page.locator(".printed-pages")).toHaveCount(0);
});

test("two songs chosen in the songbook are one PDF with a list of contents", async ({ page }) => {
  await writeSong(page, CHART);
  await writeSong(page, "Title: Alder Stile\nKey: D\n| D | G | A | D |\n");
  await placeLink(page, "Songbook").click();
  for (const title of ["Willow Gate", "Alder Stile"]) {
    await songsOf(page)
      .getByRole("checkbox", { name: new RegExp(title) })
      .check();
  }
  await page.getByRole("toolbar").getByRole("button", { name: "Hand-out…" }).click();
  const dialog = dialogOf(page);
  await expect(dialog.getByRole("img", { name: /^Page 1 of / })).toBeVisible();
  await expect(dialog.getByRole("textbox")).toHaveCount(0);
  const coming = page.waitForEvent("download");
  await button(page, "Save PDF").click();
  const saved = await coming;
  expect(saved.suggestedFilename()).toBe("Songs.pdf");
  const pdf = await readPdf(await readFile(await saved.path()));
  expect(pdf.outline.map(({ title }) => title).toSorted()).toEqual(["Alder Stile", "Willow Gate"]);
  expect(pdf.pages[0]?.links).toBe(2);
});
