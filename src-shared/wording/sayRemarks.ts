import type { BarText } from "../chart/readChart.ts";
import type { Diagnostic } from "../diagnostic.ts";
import type { Remark } from "../roll/fitRolls.ts";
import type { Slot } from "../route/slot.ts";
import { placeOfBar } from "./placeOfBar.ts";

type Words = Pick<Diagnostic, "says" | "try">;

const wordsFor = (remark: Remark, { chord, bar, played }: Slot): Words => {
  const name = played.manner.style.replace(/^own:/, "");
  const where = `${chord.name} in bar ${bar + 1}`;
  switch (remark) {
    case "too-short":
      return {
        says: `${where} lasts one eighth, too short for a roll: it gets one stroke, with the fingers that are free.`,
        try: "Leave it so, or give the chord more time.",
      };
    case "pattern-gone":
      return {
        says: `There is no pattern "${name}" to play, or it is still a draft: a forward roll is played instead.`,
        try: "Mend it among your patterns, or choose another.",
      };
    case "other-meter":
      return {
        says: `The pattern "${name}" is in another meter: a forward roll is played instead.`,
        try: "Choose a pattern in the song's meter.",
      };
    case "no-fit":
      return {
        says: `The pattern "${name}" does not fit ${where}: a forward roll is played instead.`,
        try: "Give the pattern another length, or choose another for this chord.",
      };
  }
};

/** Those that concern every chord of the song alike are said once. */
const kindOf = (remark: Remark, { written, chord, played }: Slot): string =>
  remark === "pattern-gone" || remark === "other-meter"
    ? `${remark} ${played.manner.style}`
    : `${remark} ${written} ${chord.name}`;

/** What there is to say about the right hand: a word for each place of the chart that needs one. */
export const sayRemarks = (
  slots: readonly Slot[],
  bars: readonly BarText[],
): readonly Diagnostic[] => {
  const said = new Map<string, Diagnostic>();
  for (const slot of slots) {
    for (const remark of slot.played.remarks) {
      const kind = kindOf(remark, slot);
      if (!said.has(kind)) {
        const at = placeOfBar(bars[slot.written]);
        said.set(kind, { severity: "hint", code: remark, at, ...wordsFor(remark, slot) });
      }
    }
  }
  return [...said.values()];
};
