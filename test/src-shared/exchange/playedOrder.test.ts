import abcjs from "abcjs";
import fc from "fast-check";
import { strToU8 } from "fflate";
import { expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { importFile } from "../../../src-shared/exchange/importFile.ts";

type Passage = {
  /** Bars that every pass plays. */
  readonly stem: number;
  readonly repeat: "none" | "plain" | "two endings" | "three times";
  /** Its start is told, where it may be left out. */
  readonly opens: boolean;
};

const anyPassage: fc.Arbitrary<Passage> = fc.record({
  stem: fc.integer({ min: 1, max: 2 }),
  repeat: fc.constantFrom("none", "plain", "two endings", "three times"),
  opens: fc.boolean(),
});

const steps = [0, 2, 4, 5, 7, 9, 11];
const letters = ["C", "D", "E", "F", "G", "A", "B"];
/** The suffix of a bar's chord is its octave's, so that seven bars further the chord is another. */
const suffixes = ["", "m", "7"];

/** Bars of one whole note, each with a pitch and a chord of its own. */
const abcOf = (passages: readonly Passage[]): string => {
  let count = 0;
  const bar = (): string => {
    const [letter, octave] = [letters[count % 7] ?? "", Math.floor(count / 7)];
    count += 1;
    return `"${letter}${suffixes[octave]}"${letter}${"'".repeat(octave)}4`;
  };
  const lines = passages.map(({ stem, repeat, opens }, at) => {
    const bars = Array.from({ length: stem }, bar).join("|");
    const start = repeat !== "none" && (opens || at > 0) ? "|:" : "";
    switch (repeat) {
      case "none":
        return `${bars}||`;
      case "plain":
        return `${start}${bars}:|`;
      case "two endings":
        return `${start}${bars}|1${bar()}:|2${bar()}||`;
      case "three times":
        return `${start}${bars}|1,2${bar()}:|3${bar()}||`;
      default:
        return repeat satisfies never;
    }
  });
  return `X:1\nT:x\nM:4/4\nL:1/4\nK:C\n${lines.join("\n")}\n`;
};

test("a tune with repeats and endings is played in the order in which abcjs plays it", () => {
  fc.assert(
    fc.property(fc.array(anyPassage, { minLength: 1, maxLength: 4 }), (passages) => {
      const abc = abcOf(passages);
      const audio = abcjs.parseOnly(abc)[0]?.setUpAudio({ chordsOff: true });
      const theirs = (audio?.tracks[0] ?? []).flatMap((event) =>
        event.cmd === "note" ? [event.pitch] : [],
      );
      const found = importFile(strToU8(abc));
      const chart = found.ok && found.tunes[0]?.ok ? found.tunes[0].chart : "";
      const { bars, stays } = unfold(readChart(chart).value);
      const ours = bars.map(({ start }) => {
        const name = stays.findLast((stay) => stay.start <= start)?.chord?.name ?? "";
        const step = steps[letters.indexOf(name.slice(0, 1))] ?? Number.NaN;
        return 60 + step + 12 * suffixes.indexOf(name.slice(1));
      });
      expect(ours, `${abc}\n${chart}`).toEqual(theirs);
    }),
    { numRuns: 200 },
  );
});
