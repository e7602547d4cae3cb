import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readFonts } from "../../../src-main/command/readFonts.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { bookOf } from "../../../src-shared/sheet/bookOf.ts";
import { openTypefaces } from "../../../src-shared/sheet/typefaces.ts";
import { writePdf } from "../../../src-shared/sheet/writePdf.ts";

test("try", async () => {
  const fonts = readFonts();
  const faces = openTypefaces(fonts);
  const jobs = JSON.parse(readFileSync("/tmp/ho/jobs.json", "utf8"));
  for (const job of jobs) {
    const songs = job.charts.map((text: string) => ({
      walk: chartToScore(text, newSongSettings.plan, null, newSongSettings.picking),
      notes: job.notes ?? "",
    }));
    const t0 = performance.now();
    const book = bookOf(
      faces,
      songs,
      { paper: job.paper ?? "a4", layout: job.layout ?? "full", without: [] },
      "Songs",
    );
    const t1 = performance.now();
    const pdf = await writePdf(book, fonts, new Date(0));
    console.log(
      job.name,
      book.pages.length,
      "pages",
      pdf.length,
      "bytes",
      Math.round(t1 - t0),
      Math.round(performance.now() - t1),
    );
    writeFileSync(`/tmp/ho/${job.name}.pdf`, pdf);
  }
  expect(1).toBe(1);
});
