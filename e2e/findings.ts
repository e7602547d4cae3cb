import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Page } from "@playwright/test";
import type { AxeResults } from "axe-core";

const axeSource = await readFile(
  createRequire(import.meta.url).resolve("axe-core/axe.min.js"),
  "utf8",
);

/** What axe-core has against the page as it stands, or the part of it that a selector names. */
export const violationsOf = async (
  page: Page,
  within = "html",
): Promise<AxeResults["violations"]> => {
  // Evaluated over the debugging line, which the page's policy does not forbid.
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate<AxeResults>(`axe.run(${JSON.stringify(within)})`);
  return violations;
};

/** The same, one line each: rule and element. */
export const findings = async (page: Page): Promise<readonly string[]> =>
  (await violationsOf(page)).flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}`));
