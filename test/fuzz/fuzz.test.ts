import { afterAll, describe, expect, test } from "vitest";
import { areas } from "./areas.ts";
import { closeService } from "./serviceArea.ts";

/** A night tries a million (`npm run fuzz`); here each area has its share of some thousand. */
const CASES: Readonly<Record<string, number>> = {
  chart: 400,
  settings: 250,
  patterns: 600,
  shared: 250,
  abc: 500,
  musicxml: 600,
  mxl: 800,
  service: 150,
};

/** The same on every run, so that what fails is the change; a night takes other seeds. */
const seed = Number(process.env["FUZZ_SEED"] ?? 20261125);

describe(`whatever comes in from outside, from seed ${seed},`, () => {
  afterAll(closeService);

  for (const { name, run } of areas) {
    test(`as ${name} is read or refused in words, and nothing throws`, async () => {
      const cases = CASES[name] ?? 0;
      console.info(`fuzzing ${name}: ${cases} cases from seed ${seed}`);
      expect(cases).toBeGreaterThan(0);
      expect(await run({ cases, seed })).toBe(null);
    });
  }
});
