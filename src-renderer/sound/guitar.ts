import type { Hit } from "../../src-shared/score/score.ts";
import { seconds } from "../../src-shared/units.ts";
import type { Made } from "./sounder.ts";
import { strum } from "./strum.ts";
import { guitarTimbre } from "./timbreTable.ts";

/** A chord strummed with a swing of the arm; the hand damps it when its length is over. */
export const guitarStroke = (hit: Hit): Made => strum(hit, guitarTimbre, seconds(0.006));
