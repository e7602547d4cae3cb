import { svelte } from "@sveltejs/vite-plugin-svelte";
import type { ViteUserConfig } from "vitest/config";

const config: ViteUserConfig = {
  plugins: [svelte()],
  test: {
    include: ["test/**/*.test.ts"],
    expect: { requireAssertions: true },
    testTimeout: 60_000,
  },
};

export default config;
