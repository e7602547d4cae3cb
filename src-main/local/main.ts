import { existsSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { realDisk } from "../services/disk.ts";
import { loggingTo, makeErrorLog } from "../services/errorLog.ts";
import { homeFolder } from "../services/homeFolder.ts";
import { makeHost } from "../services/makeHost.ts";
import { openBrowser } from "./openBrowser.ts";
import { startServer } from "./server.ts";

const screenFolder = join(import.meta.dirname, "..", "renderer");

const stackOf = (thrown: unknown): string =>
  thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);

const serve = async (mayOpen: boolean): Promise<void> => {
  const { platform, env } = process;
  const home = homeFolder({ platform, env, userFolder: homedir() });
  const log = loggingTo(makeErrorLog(home), realDisk.log);
  const server = await startServer(makeHost(home), screenFolder, log);

  // What reaches the top is written down; the screen keeps what is typed and tries again meanwhile.
  process.on("unhandledRejection", (thrown) => log(stackOf(thrown)));
  process.on("uncaughtException", (thrown) => {
    log(stackOf(thrown));
    process.exitCode = 1;
    void server.close();
  });

  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => void server.close());
  }

  console.log(`Shortslide is at ${server.address}`);
  console.error(`Songs are kept in ${home}. Ctrl-C ends Shortslide.`);
  const reason = mayOpen ? await openBrowser(server.launchAddress(), { platform, env }) : null;
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
