import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./root.mjs";
import { runNpm } from "./run.mjs";

/** npm's own note of what it has installed. */
const INSTALLED = join(root, "node_modules", ".package-lock.json");

const packagesOf = (file) => JSON.parse(readFileSync(file, "utf8")).packages;

/** Whether every package of the lockfile is installed in its version; optional ones may be absent. */
export const dependenciesAreThere = () => {
  if (!existsSync(INSTALLED)) {
    return false;
  }
  const installed = packagesOf(INSTALLED);
  return Object.entries(packagesOf(join(root, "package-lock.json"))).every(
    ([path, { version, optional }]) =>
      path === "" || optional === true || installed[path]?.version === version,
  );
};

/**
 * Installs the packages where they are missing or of another version. Answers npm's exit code.
 *
 * @param {"inherit" | 2} output where npm's own words go; 2 is stderr
 */
export const ensureDependencies = async (output) => {
  if (dependenciesAreThere()) {
    return 0;
  }
  console.error("Installing packages (npm ci). This takes a minute the first time.");
  const { code } = await runNpm(["ci", "--include=dev", "--no-audit", "--no-fund"], {
    stdio: ["ignore", output, "inherit"],
  });
  if (code !== 0) {
    console.error("The packages could not be installed; npm says why above.");
  }
  return code;
};
