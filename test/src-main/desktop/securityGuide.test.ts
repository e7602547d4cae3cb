import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const guide = readFileSync("DEVELOPERS.md", "utf8")
  .split("## The window's safety")[1]
  ?.split("\n## ")[0];
const rows = [...(guide ?? "").matchAll(/^\| (\d+)\. (.*?) +\| (.*?) +\| (.*?) +\|$/gm)].map(
  ([, point, name, answer, tested]) => ({
    point,
    name,
    answer: answer ?? "",
    tested: tested ?? "",
  }),
);
/** Files of the repository by a path's pattern. */
const filesLike = (pattern: RegExp): readonly string[] =>
  execFileSync("git", ["ls-files", "-co", "--exclude-standard"], { encoding: "utf8" })
    .split("\n")
    .filter((path) => pattern.test(path) && existsSync(path));
const linkIn = (text: string): string => /\]\(([^)]+)\)/.exec(text)?.[1] ?? "";

describe("the table of Electron's security guide", () => {
  test("answers its twenty points in their order", () => {
    expect(rows.map(({ point }) => point)).toEqual(
      Array.from({ length: 20 }, (_, index) => `${index + 1}`),
    );
  });

  test.each(rows)("quotes for point $point what stands in the file, and names a test", (row) => {
    const [quote = ""] = [...row.answer.matchAll(/`([^`]+)`/g)].map((found) => found[1]);
    expect(quote).not.toBe("");
    expect(readFileSync(linkIn(row.answer), "utf8")).toContain(quote);
    expect(existsSync(linkIn(row.tested)), row.tested).toBe(true);
  });
});

describe("the sources of the desktop program", () => {
  const sources = filesLike(/^src-main\/desktop\/[^/]+\.ts$/).map((path) =>
    readFileSync(path, "utf8"),
  );
  const text = sources.join("\n");

  // Points 9, 10, 11 and 15 of the guide.
  test("switch on nothing experimental, and no webviews", () => {
    expect(sources.length).toBeGreaterThan(5);
    expect(text).toContain("experimentalFeatures: false");
    expect(text).not.toMatch(/enableBlinkFeatures|disableBlinkFeatures|experimentalFeatures: true/);
    expect(text).not.toMatch(/webviewTag: true|allowpopups/);
  });

  test("hand nothing to the system's own programs", () => {
    expect(text).not.toMatch(/\bshell\b|openExternal|openPath|child_process/);
  });

  // Points 2 and 20: the screen's own sources see Electron nowhere.
  test("are alone in knowing Electron", () => {
    const others = filesLike(/^src-(?:renderer|shared)\/.*\.(?:ts|svelte)$/);
    const knowing = others.filter((path) =>
      /from "electron"|require\("electron"\)|ipcRenderer/.test(readFileSync(path, "utf8")),
    );
    expect(others.length).toBeGreaterThan(100);
    expect(knowing).toEqual([]);
  });
});
