import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Pin } from "../../../src-shared/route/pins.ts";
import { barsAfter, pinsAfterEdit, playedChart } from "../../../src-shared/route/pinsAfterEdit.ts";

const chords = ["G", "C", "D", "Em", "Am", "F", "Bm", "A7", "E7", "Bb"] as const;
/** Bars of which no two are alike. */
const anyBars = fc.uniqueArray(
  fc.tuple(fc.constantFrom(...chords), fc.constantFrom(...chords)).map(([a, b]) => `${a} ${b}`),
  { minLength: 1, maxLength: 16 },
);
/** Bars of which many are alike. */
const anyPlainBars = fc.array(fc.constantFrom("G", "C", "D"), { minLength: 1, maxLength: 16 });

const chartOf = (bars: readonly string[]): string =>
  `Title: Lock Keeper\nKey: C\n\n${bars.map((bar) => `| ${bar} `).join("")}|\n`;
const pinOn = (bar: number, bars: readonly string[]): Pin => ({
  kind: "hold",
  bar,
  eighth: 0,
  time: null,
  chord: bars[bar]?.split(" ")[0] ?? "",
  frets: [5, 5, 5, null, null],
});
const edited = (
  pins: readonly Pin[],
  before: string,
  after: string,
  playKey: string | null = null,
) => pinsAfterEdit(pins, playedChart(before, playKey), playedChart(after, playKey));

/** What is done to a list of bars: some taken out or written over, some put in. */
type Edit = { readonly from: number; readonly out: number; readonly put: readonly string[] };
const anyEdit: fc.Arbitrary<Edit> = fc.record({
  from: fc.nat(16),
  out: fc.nat(4),
  put: fc.array(fc.constantFrom("Dm", "Cm", "Gm", "Fm"), { maxLength: 4 }),
});

describe("pins after an edit of the chart", () => {
  test("stay on their own bars when other bars are put in, taken out or written over", () => {
    fc.assert(
      fc.property(anyBars, anyEdit, (bars, { from, out, put }) => {
        const after = bars.toSpliced(from, out, ...put);
        const kept = bars.filter((bar) => after.includes(bar));
        const pins = kept.map((bar) => pinOn(bars.indexOf(bar), bars));
        const moved = edited(pins, chartOf(bars), chartOf(after));
        expect(moved.map((pin) => after[pin.bar])).toEqual(kept);
        expect(moved.map(({ bar: _, ...rest }) => rest)).toEqual(
          pins.map(({ bar: _, ...rest }) => rest),
        );
      }),
    );
  });

  test("stay in order and on bars of the same chord where many bars are alike", () => {
    fc.assert(
      fc.property(anyPlainBars, fc.nat(16), fc.constantFrom("Em", "Am"), (bars, at, put) => {
        const after: readonly string[] = [...bars.slice(0, at), put, ...bars.slice(at)];
        const moved = edited(
          bars.map((_, bar) => pinOn(bar, bars)),
          chartOf(bars),
          chartOf(after),
        );
        expect(moved.map((pin) => after[pin.bar])).toEqual(bars);
        expect(moved.map((pin) => pin.bar)).toEqual(
          moved.map((pin) => pin.bar).toSorted((a, b) => a - b),
        );
      }),
    );
  });

  test("are the same list where only the header, remarks or spaces change", () => {
    fc.assert(
      fc.property(anyPlainBars, (bars) => {
        const pins = bars.map((_, bar) => pinOn(bar, bars));
        const before = chartOf(bars);
        const after = before.replace("Lock Keeper", "Lock").replaceAll("| ", "|   ");
        expect(edited(pins, before, `${after}# a remark\n`)).toBe(pins);
      }),
    );
  });

  test("are dropped with their bars, and only then", () => {
    const bars = ["G", "C", "D", "Em"];
    const pins = bars.map((_, bar) => pinOn(bar, bars));
    const moved = edited(pins, chartOf(bars), chartOf(["G", "D", "Em"]));
    expect(moved.map(({ bar, chord }) => [bar, chord])).toEqual([
      [0, "G"],
      [1, "D"],
      [2, "Em"],
    ]);
  });

  test("find their chord again when a bar is typed in before it, letter by letter", () => {
    const bars = ["G", "C", "D"];
    let chart = chartOf(bars);
    let pins: readonly Pin[] = [pinOn(1, bars), pinOn(2, bars)];
    const at = chart.indexOf("C ");
    for (const [index, letter] of [..."Em | "].entries()) {
      const next = chart.slice(0, at + index) + letter + chart.slice(at + index);
      pins = edited(pins, chart, next);
      chart = next;
    }
    expect(pins.map(({ bar, chord }) => [bar, chord])).toEqual([
      [2, "C"],
      [3, "D"],
    ]);
  });

  test("go with their bars in another key too", () => {
    const before = chartOf(["C", "F", "G"]);
    const pin: Pin = { ...pinOn(0, []), bar: 1, chord: "Bb" };
    expect(edited([pin], before, chartOf(["Am", "C", "F G", "F", "G"]), "F")[0]?.bar).toBe(3);
  });
});

describe("bars after an edit", () => {
  test("of the same text are matched in order, and written-over ones by their place", () => {
    expect(barsAfter(["G", "G", "C"], ["G", "G", "G", "C"]).flat().at(-1)).toBe(3);
    expect(barsAfter(["G", "C", "D"], ["G", "Em", "D"])).toEqual([[0], [1], [2]]);
    expect(barsAfter(["G", "C"], ["G"])).toEqual([[0], []]);
  });
});
