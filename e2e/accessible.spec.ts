import { expect, type Page } from "@playwright/test";
import { violationsOf } from "./findings.ts";
import { editorOf, placeLink, songsOf, test, writeSong } from "./openApp.ts";

/** What axe-core finds to be serious or critical, one line each. */
const findings = async (page: Page): Promise<readonly string[]> =>
  (await violationsOf(page))
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html}: ${node.failureSummary}`));

for (const colorScheme of ["light", "dark"] as const) {
  test.describe(`in the ${colorScheme} theme`, () => {
    test.use({ colorScheme });

    test("the empty songbook has nothing serious against it", async ({ page }) => {
      await expect(page.getByRole("list", { name: "Demo songs" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });

    test("the songbook with songs, a message and the theme menu has nothing serious against it", async ({
      page,
    }) => {
      await writeSong(page, "Title: Bramble Cut\n\n| D | G |");
      await writeSong(page, "Title: Otter Ford\n\n| G | C |");
      await placeLink(page, "Songbook").click();
      await page.getByRole("button", { name: "Delete Otter Ford" }).click();
      await expect(page.getByText("“Otter Ford” is deleted.")).toBeVisible();
      await expect(songsOf(page).getByRole("listitem")).toHaveCount(1);
      expect(await findings(page)).toEqual([]);
      await page.getByRole("button", { name: /^Light or dark/ }).press("Enter");
      await expect(page.getByRole("menuitemradio", { name: "Dark" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });

    test("the chart with mistakes, help and a held-up save has nothing serious against it", async ({
      page,
      context,
    }) => {
      await writeSong(page, "Title: Bent Nail\nCapo: 2\n\n[A]\n|: G | Xm | C D :|\n| N.C. | % |");
      await page.getByText("How to write a chart").click();
      await context.setOffline(true);
      await editorOf(page).press("ControlOrMeta+End");
      await page.keyboard.type(" G .");
      await expect(page.getByRole("alert").filter({ hasText: "Not saved" })).toBeVisible();
      expect(await findings(page)).toEqual([]);
    });
  });
}
