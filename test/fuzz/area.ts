import fc from "fast-check";

/** How many cases, from which seed; `path` runs one case of a seed again. */
export type FuzzRun = {
  readonly cases: number;
  readonly seed: number;
  readonly path?: string;
  /** Hears the number of each case before it is tried. */
  readonly onCase?: (index: number) => void;
};

/** One kind of input that comes from outside. */
export type Area = {
  readonly name: string;
  /** The failure with its seed and its smallest case, or null. */
  readonly run: (run: FuzzRun) => Promise<string | null>;
};

/** An area of inputs, each put to a check that throws where a property does not hold. */
export const makeArea = <Case>(
  name: string,
  cases: fc.Arbitrary<Case>,
  check: (one: Case) => void | Promise<void>,
): Area => ({
  name,
  run: async ({ cases: numRuns, seed, path, onCase }) => {
    let index = 0;
    const property = fc.asyncProperty(cases, async (one) => {
      onCase?.(index);
      index += 1;
      await check(one);
    });
    const details = await fc.check(property, {
      seed,
      ...(path === undefined ? { numRuns } : { numRuns: 1, path, endOnFailure: true }),
    });
    if (!details.failed) {
      return null;
    }
    const why = details.errorInstance;
    return `${name}: ${await fc.asyncDefaultReportMessage(details)}\n${why instanceof Error ? why.stack : why}`;
  },
});
