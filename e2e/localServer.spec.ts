import { once } from "node:events";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { type ConsoleMessage, expect, type Page, test } from "@playwright/test";
import { type Served, startServer } from "./serve.ts";

/** Asks for the songbook as the page's own code does, with what the tab has kept. */
const askForSongs = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    const token = sessionStorage.getItem("shortslide.token") ?? "";
    const response = await fetch("/call/listSongs", {
      method: "POST",
      headers: { "Content-Type": "application/json", Authorization: `Bearer ${token}` },
      body: JSON.stringify({ argument: null }),
    });
    return response.json();
  });

test.describe("the screen in a browser", () => {
  let served: Served;
  test.beforeEach(async () => {
    served = await startServer();
  });
  test.afterEach(async () => {
    expect(await served.stop()).toBe(0);
  });

  test("takes the secret out of its address, and may still call after a reload", async ({
    page,
  }) => {
    await page.goto(served.url);
    await expect(page).toHaveTitle(/Shortslide/);
    expect(page.url()).not.toContain("token");
    expect(await askForSongs(page)).toMatchObject({ ok: true });
    await page.reload();
    await expect(page).toHaveTitle(/Shortslide/);
    expect(await askForSongs(page)).toMatchObject({ ok: true });
  });

  test("shows itself without breaking its own content policy", async ({ page }) => {
    const complaints: string[] = [];
    page.on("console", (message: ConsoleMessage) => {
      if (message.type() === "error") {
        complaints.push(message.text());
      }
    });
    page.on("pageerror", (error) => complaints.push(error.message));
    await page.goto(served.url);
    await expect(page.getByRole("main")).toBeVisible();
    expect(complaints).toEqual([]);
  });

  test("cannot use the songbook in a tab that was opened without the secret", async ({ page }) => {
    await page.goto(new URL("/", served.url).href);
    expect(await askForSongs(page)).toMatchObject({ ok: false, problem: { code: "refused" } });
  });

  test("keeps the songbook from a page of another origin, even one that knows the secret", async ({
    page,
  }) => {
    const elsewhere = createServer((_request, response) =>
      response.setHeader("Content-Type", "text/html").end("<title>elsewhere</title>"),
    );
    elsewhere.listen(0, "127.0.0.1");
    await once(elsewhere, "listening");
    const { port } = elsewhere.address() as AddressInfo;
    await page.goto(`http://127.0.0.1:${port}/`);
    const outcome = await page.evaluate(async (url) => {
      const { origin, hash } = new URL(url);
      const call = (headers: Record<string, string>, mode: RequestMode): Promise<string> =>
        fetch(`${origin}/call/listSongs`, { method: "POST", mode, headers, body: "{}" }).then(
          async (response) => `${response.type}: ${await response.text()}`,
          (error: unknown) => String(error),
        );
      return [
        await call(
          { "Content-Type": "application/json", Authorization: hash.replace("#token=", "Bearer ") },
          "cors",
        ),
        await call({}, "no-cors"),
      ];
    }, served.url);
    expect(outcome[0]).toContain("TypeError");
    expect(outcome[1]).toContain("TypeError");
    elsewhere.close();
  });
});
