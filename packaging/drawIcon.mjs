// node packaging/drawIcon.mjs: draws icons/icon.png from icons/icon.svg, in Chromium. The packager
// makes the .ico and .icns of it; Linux takes the picture itself.
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { chromium } from "playwright";
import { ensureChromium } from "../src-main/command/chromium.mjs";
import { root } from "../src-main/command/root.mjs";

const EDGE = 1024;
const folder = join(root, "packaging", "icons");

const executablePath = await ensureChromium();
if (executablePath === null) {
  process.exit(1);
}
const isRoot = process.getuid?.() === 0;
const browser = await chromium.launch({ executablePath, args: isRoot ? ["--no-sandbox"] : [] });
try {
  const page = await browser.newPage({ viewport: { width: EDGE, height: EDGE } });
  const svg = await readFile(join(folder, "icon.svg"), "utf8");
  await page.setContent(
    `<style>*{margin:0}svg{display:block;width:${EDGE}px;height:${EDGE}px}</style>${svg}`,
  );
  await writeFile(join(folder, "icon.png"), await page.screenshot({ omitBackground: true }));
} finally {
  await browser.close();
}
