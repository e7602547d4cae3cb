import assert from "node:assert/strict";
import fc from "fast-check";
import { chartToScore } from "../../src-shared/chartToScore.ts";
import { patternFileOf, readPatternFile, takenIn } from "../../src-shared/exchange/patternFile.ts";
import { mended } from "../../src-shared/roll/mend.ts";
import { patternMeters } from "../../src-shared/roll/pattern.ts";
import { plainPicking, styleNames } from "../../src-shared/roll/picking.ts";
import { breachesOf } from "../../src-shared/roll/rollRules.ts";
import { patternsOf } from "../../src-shared/roll/rollTable.ts";
import { wholeNeckPlan } from "../../src-shared/settings.ts";
import { anyPattern } from "../laws/anyPattern.ts";
import { type Area, makeArea } from "./area.ts";
import { checkRefusal, checkScore } from "./checks.ts";
import { jsonNear } from "./nearJson.ts";
import { textNear } from "./nearText.ts";

const rolls = styleNames.flatMap((style) =>
  patternMeters.flatMap((meter) => patternsOf(style, meter)),
);

const goodFile = fc
  .array(fc.oneof(anyPattern, fc.constantFrom(...rolls)), { minLength: 1, maxLength: 4 })
  .map((patterns) => patternFileOf(patterns));

const anyFile = fc.oneof(
  {
    weight: 3,
    arbitrary: jsonNear(goodFile.map((text): unknown => JSON.parse(text))).map((value) =>
      JSON.stringify(value),
    ),
  },
  {
    weight: 1,
    arbitrary: textNear({
      seeds: [patternFileOf(rolls.slice(0, 2)), "{}", "[]"],
      scraps: [
        ...'{}[],:"\\0123456789-eE.',
        '"fifth"',
        '"T"',
        "null",
        '"__proto__":',
        "\\ud800",
        "1e400",
      ],
      piece: /"[^"]*"|[{}[\],:]|\s+/g,
    }),
  },
);

const CHART = "Key: G\n| G | C D | G . . D | Em | G |\n";

/** A file of right-hand patterns: read, written again, mended, and played. */
export const patternArea: Area = makeArea("patterns", anyFile, (text) => {
  const read = readPatternFile(text);
  if (!read.ok) {
    checkRefusal(read.problem);
    return;
  }
  const again = readPatternFile(patternFileOf(read.patterns));
  assert.deepEqual(again, read);
  const { patterns } = takenIn([], read.patterns);
  assert.equal(new Set(patterns.map(({ name }) => name)).size, patterns.length);
  for (const pattern of patterns) {
    for (const breach of breachesOf(pattern)) {
      mended(pattern, breach);
    }
    const picking = {
      ...plainPicking,
      song: { style: `own:${pattern.name}`, density: "full" },
    } as const;
    checkScore(
      chartToScore(`Time: ${pattern.meter}\n${CHART}`, wholeNeckPlan, null, picking, patterns),
    );
  }
});
