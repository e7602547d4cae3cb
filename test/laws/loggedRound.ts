import type { LogEntry } from "../../src-shared/practice/logLine.ts";
import type { Round } from "../../src-shared/practice/practice.ts";
import { bpm, milliseconds } from "../../src-shared/units.ts";

/** A move of the left hand as the log has it. */
export const change = {
  kind: "change",
  from: { chord: "G", frets: [5, 3, 4, null, null] },
  to: { chord: "C♯m", frets: [11, 9, 10, null, null] },
} as const;

const plain: Round = {
  item: change,
  stage: "tempo",
  tempo: bpm(92),
  unit: 2,
  mark: "clean",
  atMs: Date.UTC(2026, 4, 11, 18, 30),
  lasted: milliseconds(10_500),
  shift: { bits: 3.6, reformed: 1, window: milliseconds(326) },
};

/** A round of an invented song, with what a test wants of it. */
export const loggedRound = (
  id: string,
  round: Partial<Round> = {},
  song: LogEntry["song"] = { id: "ferry-gate", title: "Ferry Gäte “№ 7” 🪕" },
): LogEntry => ({ id, song, round: { ...plain, ...round } });
