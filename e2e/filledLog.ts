import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { writeLogLine } from "../src-shared/practice/logLine.ts";
import { handTable } from "../src-shared/route/handTable.ts";
import { bpm, milliseconds } from "../src-shared/units.ts";
import { change, loggedRound } from "../test/laws/loggedRound.ts";
import { chance, simulatedMarks } from "../test/laws/simulatedMarks.ts";

const DAY_MS = 86_400_000;
const other = { ...change, to: { chord: "D", frets: [12, 10, 11, null, null] } } as const;

/**
 * Puts a log of earlier weeks into a home: a learner's marks on two changes, faster every few days,
 * and the whole song now and then.
 */
export const fillLog = async (home: string): Promise<void> => {
  const marks = simulatedMarks(handTable.learner, 90, 0.05, chance(5));
  const now = Date.now();
  const lines = marks.map(({ bits, window, clean }, index) => {
    const day = 30 - Math.floor(index / 3);
    const whole = index % 9 === 8;
    const song = { id: "bramble-cut", title: "Bramble Cut" };
    const entry = loggedRound(
      `earlier-${index}`,
      {
        item: whole ? { kind: "song" } : index % 2 === 0 ? change : other,
        stage: whole ? "song" : index % 5 === 0 ? "slide" : "tempo",
        tempo: bpm(64 + Math.floor(index / 4) + (index % 3)),
        mark: clean === 1 ? "clean" : "not-yet",
        atMs: now - day * DAY_MS - (90 - index) * 60_000,
        lasted: milliseconds(90_000 + 1000 * (index % 40)),
        shift: whole ? null : { bits, reformed: 0, window },
      },
      song,
    );
    return writeLogLine({ version: 1, kind: "round", ...entry });
  });
  await writeFile(join(home, "practice.jsonl"), `${lines.join("\n")}\n`);
};
