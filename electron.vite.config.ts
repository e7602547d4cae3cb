import { resolve } from "node:path";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import type { UserConfig } from "electron-vite";

/** The table of words of another language, in whose place the English one would stand. */
const translation = process.env["SHORTSLIDE_WORDS"];
const language = {
  alias: translation ? [{ find: /^.*\/wordTable\.ts$/, replacement: resolve(translation) }] : [],
};

const config: UserConfig = {
  main: {
    resolve: language,
    build: {
      outDir: "out/main",
      emptyOutDir: true,
      externalizeDeps: true,
      rollupOptions: {
        input: {
          desktop: "src-main/desktop/main.ts",
          local: "src-main/local/main.ts",
          command: "src-main/command/main.ts",
        },
        output: {
          format: "cjs",
          entryFileNames: "[name].cjs",
          chunkFileNames: "[name]-[hash].cjs",
        },
      },
    },
  },
  preload: {
    build: {
      outDir: "out/preload",
      emptyOutDir: true,
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: "src-main/desktop/preload.ts" },
        output: { format: "cjs", entryFileNames: "[name].cjs" },
      },
    },
  },
  renderer: {
    root: "src-renderer",
    resolve: language,
    plugins: [svelte({ configFile: "../svelte.config.js" })],
    build: {
      outDir: "out/renderer",
      minify: true,
      emptyOutDir: true,
      rollupOptions: { input: "src-renderer/index.html" },
    },
  },
};

export default config;
