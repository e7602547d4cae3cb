import type { ViteUserConfig } from "vitest/config";

const room = process.env["MUTATION_ROOM"] ?? "*";

/** The tests that a room's mutants are put to: its own. The laws would notice more, and take hours. */
const config: ViteUserConfig = {
  test: {
    include: [`test/src-shared/${room}/**/*.test.ts`],
    testTimeout: 120_000,
  },
};

export default config;
