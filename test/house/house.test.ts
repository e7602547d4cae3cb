import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { basename, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { readChart } from "../../src-shared/chart/readChart.ts";

const tracked = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], {
  encoding: "utf8",
})
  .split("\n")
  .filter((path) => /^src-(shared|main|renderer)\//.test(path));

type Source = { readonly path: string; readonly text: string; readonly lines: number };

const sources: readonly Source[] = tracked
  .filter((path) => /\.(ts|svelte|mjs|css)$/.test(path))
  .map((path) => {
    const text = readFileSync(path, "utf8");
    return { path, text, lines: text.split("\n").length - 1 };
  });

const inShared = (source: Source) => source.path.startsWith("src-shared/");
const pathsOf = (found: readonly Source[]) => found.map((source) => source.path);

const limitOf = (path: string): number => {
  if (/Table\.ts$/.test(path)) {
    return Number.POSITIVE_INFINITY;
  }
  if (path.endsWith(".svelte.ts")) {
    return 200;
  }
  return path.endsWith(".svelte") ? 150 : 350;
};

describe("the house", () => {
  test("has small files", () => {
    const sizes = sources
      .filter((source) => inShared(source) && !/Table\.ts$/.test(source.path))
      .map((source) => source.lines)
      .toSorted((a, b) => a - b);
    const at = (share: number) => sizes[Math.floor(share * (sizes.length - 1))] ?? 0;
    console.info(`src-shared lines: median ${at(0.5)}, p90 ${at(0.9)}, max ${at(1)}`);
    expect(at(0.5)).toBeLessThanOrEqual(100);
    const long = sources.filter((source) => source.lines > limitOf(source.path));
    expect(long.map((source) => `${source.path} ${source.lines}`)).toEqual([]);
  });

  test("names files by the trade, not by what they are to a programmer", () => {
    const vague = /^(utils?|helpers?|common|misc|manager|index|types|constants)\.(ts|svelte)$/i;
    expect(pathsOf(sources.filter((source) => vague.test(basename(source.path))))).toEqual([]);
  });

  test("casts to a quantity only in units.ts", () => {
    const casts = /\bas (Tick|Seconds|Milliseconds|Fret|Midi|Millimetres|Bpm)\b/;
    const found = sources.filter((source) => casts.test(source.text));
    expect(pathsOf(found)).toEqual(["src-shared/units.ts"]);
  });

  test("keeps wall clocks, chance and hidden state out of src-shared", () => {
    const machine = /\bMath\.random\b|\bDate\.now\b|\bnew Date\b|^let /m;
    expect(
      pathsOf(sources.filter((source) => inShared(source) && machine.test(source.text))),
    ).toEqual([]);
  });

  test("switches no check off and leaves no note to itself", () => {
    const off =
      /\bas any\b|@ts-ignore|@ts-expect-error|biome-ignore|svelte-ignore|TODO|FIXME|XXX|HACK/;
    expect(pathsOf(sources.filter((source) => off.test(source.text)))).toEqual([]);
  });

  test("swallows no error", () => {
    const swallowed =
      /catch\s*(\([^)]*\))?\s*\{\s*\}|\.catch\(\s*\(\)\s*=>\s*(\{\s*\}|undefined|null)\s*\)/;
    expect(pathsOf(sources.filter((source) => swallowed.test(source.text)))).toEqual([]);
  });

  test("uses runes, never stores", () => {
    expect(pathsOf(sources.filter((source) => source.text.includes("svelte/store")))).toEqual([]);
  });

  test("keeps literal colours in the theme", () => {
    const literal = /#[0-9a-fA-F]{3,8}\b(?![^\n]*url)|\brgba?\(|\bhsla?\(|\boklch\(/;
    const styled = sources.filter(
      (source) =>
        source.path.endsWith(".svelte") && literal.test(source.text.replace(/href="#[^"]*"/g, "")),
    );
    expect(pathsOf(styled)).toEqual([]);
  });

  test("names the source of each table, or says that there is none", () => {
    const said = /common practice|from memory|ABC notation|tonal|equal temperament|invented/i;
    const tables = sources.filter((source) => /Table\.ts$/.test(source.path));
    expect(tables.length).toBeGreaterThan(0);
    const silent = tables.filter(
      (source) => !said.test(source.text.split("\n").slice(0, 8).join("\n")),
    );
    expect(pathsOf(silent)).toEqual([]);
  });

  test("documents every export of src-shared", () => {
    const bare = sources.filter(inShared).flatMap((source) => {
      const lines = source.text.split("\n");
      return lines.flatMap((line, index) => {
        const name = /^export (?:declare )?(?:const|function|type|class|interface) (\w+)/.exec(
          line,
        )?.[1];
        const before = lines[index - 1]?.trim() ?? "";
        return name && !before.endsWith("*/") ? [`${source.path}: ${name}`] : [];
      });
    });
    expect(bare).toEqual([]);
  });
});

describe("the README", () => {
  const readme = readFileSync("README.md", "utf8");

  test("shows only charts that are read without a note", () => {
    const charts = [...readme.matchAll(/^( *)```chart\n([\s\S]*?)^ *```/gm)].map((match) =>
      (match[2] ?? "").replaceAll(new RegExp(`^${match[1]}`, "gm"), ""),
    );
    expect(charts.length).toBeGreaterThan(0);
    for (const chart of charts) {
      const { notes, value } = readChart(chart);
      expect(notes).toEqual([]);
      expect(value.sections.length).toBeGreaterThan(0);
    }
  });

  test("names only pictures, files and scripts that are there", () => {
    const links = [...readme.matchAll(/\]\(([^)#]+)\)/g)].map((match) => match[1] ?? "");
    expect(links.filter((link) => !link.startsWith("http") && !existsSync(link))).toEqual([]);
    const scripts = [...readme.matchAll(/npm run (?:--silent )?(\w+)/g)].map((match) => match[1]);
    const known: Record<string, unknown> = JSON.parse(readFileSync("package.json", "utf8")).scripts;
    expect(scripts.filter((script) => !(String(script) in known))).toEqual([]);
  });
});

describe("every example in a doc comment of src-shared", () => {
  const examples = sources.filter(inShared).flatMap((source) =>
    [...source.text.matchAll(/@example\s+([^\n]+?)\s*(?:\n|\*\/)/g)].map((match) => ({
      path: source.path,
      example: (match[1] ?? "").replace(/\s*\*\/\s*$/, ""),
    })),
  );

  test("is of the form: expression // => value", () => {
    expect(examples.filter(({ example }) => !example.includes("// =>"))).toEqual([]);
    expect(examples.length).toBeGreaterThan(10);
  });

  for (const { path, example } of examples) {
    const [expression = "", value = ""] = example.split("// =>").map((part) => part.trim());
    test(`holds in ${path}: ${expression}`, async () => {
      const exported: Record<string, unknown> = await import(/* @vite-ignore */ resolve(path));
      const names = Object.keys(exported);
      const run = new Function(...names, `return [${expression.replace(/;$/, "")}, ${value}];`);
      const [actual, expected] = run(...names.map((name) => exported[name]));
      expect(actual).toEqual(expected);
    });
  }
});
