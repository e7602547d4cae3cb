import type { ViteUserConfig } from "vitest/config";

/**
 * The tests that a room's mutants are put to: its own, without a screen. The laws come in where
 * `MUTATION_LAWS` names their files.
 */
const room = process.env["MUTATION_ROOM"] ?? "*";
const laws = (process.env["MUTATION_LAWS"] ?? "").split(",").filter((name) => name !== "");

const config: ViteUserConfig = {
  test: {
    include: [
      `test/src-shared/${room}/**/*.test.ts`,
      ...laws.map((name) => `test/laws/${name}.test.ts`),
    ],
    testTimeout: 120_000,
  },
};

export default config;
