// npm run licences: writes THIRD_PARTY.txt, the licences of everything that ships; with --check it
// only says whether the file is current. What ships is what our sources import, and all that those
// packages depend on: somewhat more than the builder keeps. Electron brings its own licences.
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { join } from "node:path";
import { root } from "../src-main/command/root.mjs";

const OUT = join(root, "THIRD_PARTY.txt");
const lock = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")).packages;

const BARE =
  /(?:\bfrom\s+|\bimport\s+|\bimport\(\s*|@import\s+(?:url\()?)["']((?:@[a-z0-9-]+\/)?[a-z0-9][a-z0-9.-]*)(?:\/[^"']*)?["']/g;

/** Packages that the sources import, types included; Electron and Node stay as they are. */
const imported = () => {
  const files = execFileSync(
    "git",
    ["ls-files", "-co", "--exclude-standard", "src-shared", "src-renderer", "src-main"],
    {
      cwd: root,
      encoding: "utf8",
    },
  );
  const names = files
    .split("\n")
    .filter((path) => /\.(?:ts|svelte|css)$/.test(path) && existsSync(join(root, path)))
    .flatMap((path) => [...readFileSync(join(root, path), "utf8").matchAll(BARE)])
    .map((found) => found[1]);
  const ours = (name) => name !== "electron" && !builtinModules.includes(name);
  return [...new Set(names)].filter(ours).toSorted();
};

/** Where the lockfile has a package as seen from another, as Node would find it. */
const placeOf = (name, from) => {
  for (let at = from; ; at = at.slice(0, at.lastIndexOf("/node_modules/"))) {
    const place = `${at === "" ? "" : `${at}/`}node_modules/${name}`;
    if (place in lock) {
      return place;
    }
    if (!at.includes("/node_modules/")) {
      const top = `node_modules/${name}`;
      return top in lock ? top : null;
    }
  }
};

/** The packages and all they depend on, by place in the lockfile. */
const shipped = () => {
  const places = new Set();
  const add = (name, from) => {
    const place = placeOf(name, from);
    if (place === null || places.has(place)) {
      return;
    }
    places.add(place);
    const { dependencies, peerDependencies, peerDependenciesMeta = {} } = lock[place];
    const peers = Object.keys(peerDependencies ?? {}).filter(
      (peer) => peerDependenciesMeta[peer]?.optional !== true,
    );
    for (const next of [...Object.keys(dependencies ?? {}), ...peers]) {
      add(next, place);
    }
  };
  for (const name of imported()) {
    add(name, "");
  }
  return [...places].toSorted();
};

const nameOf = (place) => place.slice(place.lastIndexOf("node_modules/") + "node_modules/".length);

const licenceText = (place) => {
  const folder = join(root, place);
  const file = readdirSync(folder).find((name) => /^(?:licen[cs]e|copying)(?:\.|-|$)/i.test(name));
  return file === undefined ? null : readFileSync(join(folder, file), "utf8").trim();
};

const RULE = "-".repeat(78);

const thirdParty = () => {
  const byText = new Map();
  for (const place of shipped()) {
    const { version, license } = lock[place];
    const text = licenceText(place) ?? `(The package has no licence file; it names ${license}.)`;
    const said = `${nameOf(place)} ${version} (${license ?? "as below"})`;
    byText.set(text, [...(byText.get(text) ?? []), said]);
  }
  const parts = [...byText].map(([text, names]) => `${names.join("\n")}\n\n${text}\n`);
  return [
    "Shortslide ships with the work of others, under these licences. Electron and Chromium bring",
    "theirs in files of their own. Written by npm run licences.\n",
    ...parts.map((part) => `${RULE}\n${part}`),
  ].join("\n");
};

const text = thirdParty();
if (!process.argv.includes("--check")) {
  writeFileSync(OUT, text);
} else if (!existsSync(OUT) || readFileSync(OUT, "utf8") !== text) {
  console.error("THIRD_PARTY.txt is not current. Run npm run licences.");
  process.exitCode = 1;
}
