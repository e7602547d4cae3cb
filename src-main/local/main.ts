import { existsSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { realDisk } from "../services/disk.ts";
import { homeFolder } from "../services/homeFolder.ts";
import { makeHost } from "../services/makeHost.ts";
import { openBrowser } from "./openBrowser.ts";
import { startServer } from "./server.ts";

const screenFolder = join(import.meta.dirname, "..", "renderer");

const serve = async (mayOpen: boolean): Promise<void> => {
  const { platform, env } = process;
  const home = homeFolder({ platform, env, userFolder: homedir() });
  const server = await startServer(makeHost(home), screenFolder, realDisk.log);

  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => void server.close());
  }

  console.log(`Shortslide is at ${server.address}`);
  console.error(`Songs are kept in ${home}. Ctrl-C ends Shortslide.`);
  const reason = mayOpen ? await openBrowser(server.address, { platform, env }) : null;
  if (reason !== null) {
    console.error(`The browser was not opened (${reason}). Open the address above yourself.`);
  }
};

const { values } = parseArgs({
  options: { "no-open": { type: "boolean", default: false } },
  strict: false,
});

if (existsSync(join(screenFolder, "index.html"))) {
  serve(values["no-open"] !== true).catch((error: unknown) => {
    console.error(`Shortslide cannot start: ${error instanceof Error ? error.message : error}`);
    process.exitCode = 1;
  });
} else {
  console.error("The screen is not built yet. Run npm run build, then start Shortslide again.");
  process.exitCode = 1;
}
