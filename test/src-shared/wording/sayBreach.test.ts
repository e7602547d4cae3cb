import fc from "fast-check";
import { expect, test } from "vitest";
import { mended } from "../../../src-shared/roll/mend.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { breachesOf } from "../../../src-shared/roll/rollRules.ts";
import { sayBreach, sayMend } from "../../../src-shared/wording/sayBreach.ts";
import { anyPattern } from "../../laws/anyPattern.ts";

const pattern: Pattern = {
  name: "on trial",
  meter: "4/4",
  strokes: (["T", "M", "I", "I"] as const).map((finger) => ({
    picks: [{ finger, on: finger === "T" ? 3 : 2 }],
    accent: false,
    damped: false,
  })),
};

test("a finger that strikes twice is named, with both eighths counted from 1", () => {
  const [breach] = breachesOf(pattern);
  expect(breach && sayBreach(breach, pattern)).toBe(
    "The index finger strikes twice running, on eighths 3 and 4.",
  );
});

test("every breach of every pattern has a sentence of its own, and its mending some words", () => {
  fc.assert(
    fc.property(anyPattern, (any) => {
      const breaches = breachesOf(any);
      const sentences = breaches.map((breach) => sayBreach(breach, any));
      expect(new Set(sentences).size).toBe(breaches.length);
      for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
      for (const breach of breaches) {
        const after = mended(any, breach);
        expect(after && sayMend(any, after)).toMatch(/eighth/);
      }
    }),
    { numRuns: 200 },
  );
});
