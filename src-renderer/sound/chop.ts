import type { Hit } from "../../src-shared/score/score.ts";
import { seconds } from "../../src-shared/units.ts";
import type { Made } from "./sounder.ts";
import { strum } from "./strum.ts";
import { chopTimbre } from "./timbreTable.ts";

/** A damped chord, from one string to the next of a quick downstroke. */
export const chopStroke = (hit: Hit): Made => strum(hit, chopTimbre, seconds(0.004));
