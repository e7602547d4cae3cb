import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [svelte()],
  test: {
    include: ["test/**/*.test.ts"],
    expect: { requireAssertions: true },
    testTimeout: 60_000,
  },
});
