import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { builtinModules, createRequire } from "node:module";
import { join } from "node:path";

/** The mark that Electron's documentation gives for the place of the fuses in its program. */
const SENTINEL = "dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX";
const WIRE_VERSION = 1;
/** As Electron ships: run as Node, NODE_OPTIONS, --inspect and file: privileges are on. */
const AS_SHIPPED = "10110001";

/** A folder that the packager takes for an unpacked Electron of Linux; answers the folder. */
export const makeStandIn = async (folder) => {
  await rm(folder, { recursive: true, force: true });
  await mkdir(join(folder, "resources"), { recursive: true });
  await mkdir(join(folder, "locales"));
  const wire = Buffer.from([WIRE_VERSION, AS_SHIPPED.length, ...Buffer.from(AS_SHIPPED)]);
  const program = Buffer.concat([
    Buffer.from("stand-in for Electron's program "),
    Buffer.from(SENTINEL),
    wire,
  ]);
  await writeFile(join(folder, "electron"), program, { mode: 0o755 });
  for (const name of ["version", "LICENSE", "LICENSES.chromium.html"]) {
    await writeFile(join(folder, name), `stand-in for ${name}\n`);
  }
  return folder;
};

/** What builder.json wants of each fuse, in the order of Electron's wire. */
const wanted = ({ electronFuses: fuses }) =>
  [
    fuses.runAsNode,
    fuses.enableCookieEncryption,
    fuses.enableNodeOptionsEnvironmentVariable,
    fuses.enableNodeCliInspectArguments,
    fuses.enableEmbeddedAsarIntegrityValidation,
    fuses.onlyLoadAppFromAsar,
    fuses.loadBrowserProcessSpecificV8Snapshot,
    fuses.grantFileProtocolExtraPrivileges,
  ]
    .map((on) => (on ? "1" : "0"))
    .join("");

const fusesIn = (program) => {
  const at = program.indexOf(SENTINEL) + SENTINEL.length;
  const length = program[at + 1] ?? 0;
  return program.subarray(at + 2, at + 2 + length).toString("latin1");
};

const MUST_BE_IN = [
  "/package.json",
  "/LICENSE",
  "/THIRD_PARTY.txt",
  "/out/main/desktop.cjs",
  "/out/preload/preload.cjs",
  "/out/renderer/index.html",
  "/node_modules/valibot/package.json",
  "/node_modules/write-file-atomic/package.json",
];
const MUST_NOT_BE_IN =
  /^\/(?:src-|test|e2e|packaging|\.git|node_modules\/(?:electron|svelte|vite)\/)/;

/** What the built program asks for beside Node and Electron: its own parts, and packages. */
const neededByProgram = async () => {
  const built = new URL("../out/main/", import.meta.url);
  const program = await readFile(new URL("desktop.cjs", built), "utf8");
  const direct = [...program.matchAll(/require\("([^"]+)"\)/g)].map(([, name]) => name);
  return direct.flatMap((name) => {
    if (name.startsWith("./")) {
      return [`/out/main/${name.slice(2)}`];
    }
    const isOthers =
      !name.startsWith("node:") && name !== "electron" && !builtinModules.includes(name);
    return isOthers ? [`/node_modules/${name}/package.json`] : [];
  });
};

/** Looks at a package made from the stand-in. Answers 0, or 1 with what is wrong printed. */
export const lookAtPackage = async (folder) => {
  const require = createRequire(import.meta.url);
  const { listPackage } = require(
    require.resolve("@electron/asar", { paths: [require.resolve("app-builder-lib")] }),
  );
  const config = JSON.parse(await readFile(new URL("builder.json", import.meta.url), "utf8"));
  const files = listPackage(join(folder, "resources", "app.asar"), {});
  const fuses = fusesIn(await readFile(join(folder, "shortslide")));
  const wrong = [
    ...(await neededByProgram())
      .filter((path) => !files.includes(path))
      .map((path) => `${path} is missing`),
    ...MUST_BE_IN.filter((path) => !files.includes(path)).map((path) => `${path} is missing`),
    ...files.filter((path) => MUST_NOT_BE_IN.test(path)).map((path) => `${path} is packed too`),
    ...(fuses === wanted(config) ? [] : [`the fuses are ${fuses}, not ${wanted(config)}`]),
  ];
  for (const line of wrong) {
    console.error(line);
  }
  console.log(`${files.length} entries in app.asar, fuses ${fuses}: ${wrong.length} wrong`);
  return wrong.length === 0 ? 0 : 1;
};
