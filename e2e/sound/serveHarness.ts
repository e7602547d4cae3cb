import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { createServer } from "vite";

/** The harness page while it is served. */
export type HarnessServer = { readonly url: string; close(): Promise<void> };

/** Serves the harness page, which has the policy that the app itself is served with. */
export const serveHarness = async (): Promise<HarnessServer> => {
  const cache = await mkdtemp(join(tmpdir(), "shortslide-sound-"));
  const server = await createServer({
    root: fileURLToPath(new URL("../..", import.meta.url)),
    configFile: false,
    plugins: [svelte()],
    cacheDir: cache,
    logLevel: "error",
    server: { port: 0, host: "127.0.0.1", hmr: false, watch: null },
    optimizeDeps: {
      entries: ["e2e/sound/harness.html"],
      include: ["tone", "mediabunny", "pitchfinder"],
    },
  });
  await server.listen();
  return {
    url: `${server.resolvedUrls?.local[0]}e2e/sound/harness.html`,
    close: async () => {
      await server.close();
      await rm(cache, { recursive: true, force: true });
    },
  };
};
