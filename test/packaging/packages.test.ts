import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

type Locked = {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
  readonly optional?: boolean;
};

const json = (path: string) => JSON.parse(readFileSync(path, "utf8"));
const packagesOf = (folder: string): readonly (readonly [string, Locked])[] =>
  Object.entries<Locked>(json(`${folder}package-lock.json`).packages).filter(
    ([place]) => place !== "",
  );

const REGISTRY = "https://registry.npmjs.org/";
const EXACT = /^\d+\.\d+\.\d+(?:-[0-9A-Za-z.-]+)?$/;

describe.each([
  ["the program", ""],
  ["the packager", "packaging/"],
  ["the mutation tester", "test/mutation/"],
])("%s's packages", (_what, folder) => {
  test("are each named in one exact version", () => {
    const { dependencies = {}, devDependencies = {} } = json(`${folder}package.json`);
    const versions = Object.values<string>({ ...dependencies, ...devDependencies });
    expect(versions.length).toBeGreaterThan(0);
    expect(versions.filter((version) => !EXACT.test(version))).toEqual([]);
  });

  test("are locked with their sums, from the registry alone", () => {
    const loose = packagesOf(folder).filter(
      ([, { resolved, integrity }]) =>
        // npm leaves the address out for what comes from the registry.
        !(resolved ?? REGISTRY).startsWith(REGISTRY) || !integrity?.startsWith("sha512-"),
    );
    expect(loose.map(([place]) => place)).toEqual([]);
  });
});

describe("installing", () => {
  test("runs no script of any package", () => {
    expect(readFileSync(".npmrc", "utf8")).toMatch(/^ignore-scripts=true$/m);
    const wanting = packagesOf("").filter(([, { hasInstallScript }]) => hasInstallScript === true);
    expect(wanting.filter(([, { optional }]) => optional !== true)).toEqual([]);
  });

  test("needs few packages for what runs beside the screen", () => {
    expect(Object.keys(json("package.json").dependencies).length).toBeLessThanOrEqual(6);
  });
});

test("THIRD_PARTY.txt has the licences of all that ships, as it is installed", () => {
  const text = execFileSync(process.execPath, ["packaging/licences.mjs", "--check"], {
    encoding: "utf8",
  });
  expect(text).toBe("");
});
