import { cp, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { build } from "vite";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { words } from "../../src-shared/wordTable.ts";

/** A language that a machine can speak: English between marks. */
const MARKED = `import { words as english } from "./english.ts";
const marked = (part) => {
  if (typeof part === "string") return "⟦" + part + "⟧";
  if (typeof part === "function") return (...given) => "⟦" + part(...given) + "⟧";
  return Object.fromEntries(Object.entries(part).map(([name, each]) => [name, marked(each)]));
};
export const words = marked(english);
`;

const ENTRY = resolve("test/house/everySentence.ts");
let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "shortslide-words-"));
  await cp("src-shared/wordTable.ts", join(folder, "english.ts"));
  await writeFile(join(folder, "marked.ts"), MARKED);
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await rm(folder, { recursive: true, force: true });
});

/** What is said by a program that is built, by its own settings, with the words of a file. */
const sentencesWith = async (file: string): Promise<readonly string[]> => {
  vi.stubEnv("SHORTSLIDE_WORDS", file);
  vi.resetModules();
  const { default: config } = await import("../../electron.vite.config.ts");
  const name = file === "" ? "plain" : "translated";
  await build({
    configFile: false,
    logLevel: "error",
    resolve: config.renderer?.resolve ?? {},
    plugins: [svelte({ configFile: false })],
    ssr: { noExternal: true },
    build: {
      ssr: ENTRY,
      minify: false,
      outDir: join(folder, name),
      rollupOptions: { output: { entryFileNames: "said.mjs" } },
    },
  });
  const { everySentence } = await import(
    /* @vite-ignore */ pathToFileURL(join(folder, name, "said.mjs")).href
  );
  return everySentence();
};

test("another table of words changes all that the program says", { timeout: 120_000 }, async () => {
  const english = await sentencesWith("");
  expect(english).toContain(words.keys.actions.barOn);
  expect(english).toContain(words.routes.noneFits);
  expect(english.filter((said) => said.includes("⟦"))).toEqual([]);
  const marked = await sentencesWith(join(folder, "marked.ts"));
  expect(marked).toHaveLength(english.length);
  // What is said in a sentence of another's is marked as well.
  expect(marked.map((said) => said.replaceAll(/[⟦⟧]/g, ""))).toEqual(english);
  expect(marked.filter((said) => !/^\s*⟦.*⟧\s*$/su.test(said))).toEqual([]);
});
