import { beatNotes } from "../../src-shared/chart/pulse.ts";
import type { Meter } from "../../src-shared/chart/song.ts";
import type { Key } from "../../src-shared/harmony/key.ts";
import { words } from "../../src-shared/wordTable.ts";

/** The note value a tempo counts, in the plural. */
export const beatNote = (unit: Meter["unit"]): string => beatNotes({ unit });

/** A key in words: "G major". */
export const sayKey = ({ tonic, mode }: Key): string =>
  words.facts.key(tonic, words.facts.modes[mode]);

/** A capo in words, with the place to raise the fifth string to: "capo 2, 5th string at 7"; "" without. */
export const sayCapo = (capo: number): string => (capo > 0 ? words.facts.capo(capo, 5 + capo) : "");

/** A length of hand travel: millimetres below 10 cm, centimetres above. */
export const sayTravel = (mm: number): string =>
  Math.round(mm) < 100
    ? words.facts.millimetres(Math.round(mm))
    : words.facts.centimetres(Math.round(mm / 10));

const DAY_MS = 86_400_000;

/** When something was changed, as one would say it on the day `nowMs`. */
export const sayWhen = (atMs: number, nowMs: number): string => {
  const at = new Date(atMs);
  const midnight = new Date(nowMs).setHours(0, 0, 0, 0);
  if (atMs >= midnight) {
    return words.facts.today(
      at.toLocaleTimeString(words.facts.timesIn, {
        hour: "2-digit",
        minute: "2-digit",
        hourCycle: "h23",
      }),
    );
  }
  // Half a day to spare, for the days on which the clocks change.
  if (atMs >= new Date(midnight - DAY_MS / 2).setHours(0, 0, 0, 0)) return words.facts.yesterday;
  return at.toLocaleDateString(words.facts.datesIn, {
    day: "numeric",
    month: "short",
    year: "numeric",
  });
};
