import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const css = readFileSync(
  new URL("../../../src-renderer/theme/colours.css", import.meta.url),
  "utf8",
);

type Colours = ReadonlyMap<string, string>;

const blockAfter = (selector: string): Colours => {
  const start = css.indexOf(selector);
  if (start < 0) throw new Error(`colours.css has no ${selector}`);
  const block = css.slice(css.indexOf("{", start) + 1, css.indexOf("}", start));
  return new Map(
    [...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]+);/g)].map((found) => [
      found[1] ?? "",
      found[2] ?? "",
    ]),
  );
};

const light = blockAfter(":root {");
const darkByWish = blockAfter(':root:not([data-theme="light"]) {');
const dark = blockAfter(':root[data-theme="dark"] {');

/** Relative luminance: WCAG 2.1, https://www.w3.org/TR/WCAG21/#dfn-relative-luminance */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** Contrast ratio: WCAG 2.1, https://www.w3.org/TR/WCAG21/#dfn-contrast-ratio */
const contrast = (one: string, other: string): number => {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
};

const colour = (colours: Colours, name: string): string => {
  const found = colours.get(name);
  if (found?.length !== 7) throw new Error(`no opaque colour --${name}`);
  return found;
};

const grounds = ["paper", "paper-raised", "paper-sunk"];
const texts: readonly (readonly [string, readonly string[]])[] = [
  ["ink", [...grounds, "next-soft", "now-soft", "wood"]],
  ["ink-soft", [...grounds, "wood"]],
  ["now", grounds],
  ["next", [...grounds, "next-soft"]],
  ["error", grounds],
  ["now-ink", ["now"]],
  ["next-ink", ["next"]],
];
const graphics: readonly (readonly [string, readonly string[]])[] = [
  ["now", ["wood", "next-soft"]],
  ["next", ["wood"]],
  ["line", grounds],
  ["focus", [...grounds, "wood"]],
  ["string", ["wood"]],
  ["fret", ["wood"]],
  ["wood-dark", ["wood", "paper"]],
];

const pairs = (list: typeof texts): readonly (readonly [string, string])[] =>
  list.flatMap(([front, backs]) => backs.map((back) => [front, back] as const));

describe("the contrast formula", () => {
  test("gives 21 for black on white, as WCAG says", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
  });

  test("gives 4.54 for #767676 on white, a grey often quoted as just enough (from memory)", () => {
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  });
});

describe.each([
  ["light", light],
  ["dark", dark],
])("the %s theme", (_, colours) => {
  test.each(pairs(texts))("prints %s on %s with 4.5 to 1 or more", (front, back) => {
    expect(contrast(colour(colours, front), colour(colours, back))).toBeGreaterThanOrEqual(4.5);
  });

  test.each(pairs(graphics))("draws %s on %s with 3 to 1 or more", (front, back) => {
    expect(contrast(colour(colours, front), colour(colours, back))).toBeGreaterThanOrEqual(3);
  });
});

test("both themes name the same colours", () => {
  expect([...dark.keys()]).toEqual([...light.keys()]);
});

test("dark is the same by the system's wish and by the player's", () => {
  expect([...darkByWish]).toEqual([...dark]);
});
