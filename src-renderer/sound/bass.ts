import type { Hit } from "../../src-shared/score/score.ts";
import { seconds } from "../../src-shared/units.ts";
import type { Made } from "./sounder.ts";
import { strum } from "./strum.ts";
import { bassTimbre } from "./timbreTable.ts";

/** One line: each stroke ends the one before. */
export const bassStroke = (hit: Hit): Made => strum(hit, bassTimbre, seconds(0));
