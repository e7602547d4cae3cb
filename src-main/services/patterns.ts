import { join } from "node:path";
import { type Answer, patternsSchema } from "../../src-shared/host.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import type { Disk } from "./disk.ts";
import { readKept, writeKept } from "./jsonFile.ts";
import { type Remark, remarkTo } from "./remarks.ts";

/** The player's own right-hand patterns on disk. */
export type PatternsFile = {
  readonly read: () => Promise<Answer<readonly Pattern[]>>;
  readonly write: (patterns: readonly Pattern[]) => Promise<void>;
};

/**
 * Keeps the patterns in one file of the home folder. A damaged file is said once, since it is set
 * aside; from then on there are the last good ones, or none.
 */
export const makePatterns = (
  home: string,
  disk: Disk,
  remark: Remark = remarkTo(disk.log),
): PatternsFile => {
  const path = join(home, "patterns.json");
  return {
    read: async () => {
      const kept = await readKept(disk, path, patternsSchema);
      switch (kept.kind) {
        case "value":
          return given(kept.value);
        case "none":
          return given([]);
        case "damaged":
          if (kept.lastGood !== null) {
            const { patternsDamaged: says, keptAside } = words.keeping;
            remark({ code: "damaged", says, try: keptAside(kept.aside) });
            return given(kept.lastGood);
          }
          return failed(
            "damaged",
            words.disk.patternsDamaged,
            words.disk.patternsDamagedTry(kept.aside),
          );
      }
    },
    write: (patterns) => writeKept(disk, path, patterns),
  };
};
