import type { BarText } from "../chart/readChart.ts";
import type { Diagnostic } from "../diagnostic.ts";
import type { Remark } from "../roll/fitRolls.ts";
import type { Slot } from "../route/slot.ts";
import { words } from "../wordTable.ts";
import { placeOfBar } from "./placeOfBar.ts";

type Said = Pick<Diagnostic, "says" | "try">;

const wordsFor = (remark: Remark, { chord, bar, played }: Slot): Said => {
  const name = played.manner.style.replace(/^own:/, "");
  const where = words.notes.chordAt(chord.name, bar + 1);
  switch (remark) {
    case "too-short":
      return {
        says: words.notes.tooShort.says(where),
        try: words.notes.tooShort.try,
      };
    case "pattern-gone":
      return {
        says: words.notes.patternGone.says(name),
        try: words.notes.patternGone.try,
      };
    case "other-meter":
      return {
        says: words.notes.otherMeter.says(name),
        try: words.notes.otherMeter.try,
      };
    case "no-fit":
      return {
        says: words.notes.noFit.says(name, where),
        try: words.notes.noFit.try,
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
