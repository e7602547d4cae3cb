import { expect, test } from "vitest";
import { playedSections } from "../../../src-renderer/parts/playedBars.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

const played = (text: string) => {
  const { timeline, route } = chartToScore(text, wholeNeckPlan, null);
  return playedSections(timeline, route?.placements ?? []);
};

/** A section's bars as text: a held chord in brackets. */
const asText = (text: string) =>
  played(text).map(({ label, bars }) => [
    label,
    bars.map(({ chords }) =>
      chords
        .map(({ stay, heldOver }) => {
          const name = stay.chord?.name ?? "N.C.";
          return heldOver ? `(${name})` : name;
        })
        .join(" "),
    ),
  ]);

test("repeats and endings are played out, bar by bar", () => {
  expect(asText("|: G | C |1 D :|2 Em |")).toEqual([[null, ["G", "C", "D", "G", "C", "Em"]]]);
});

test("a chord that lasts over the bar line is held in the next bar", () => {
  expect(asText("| G | . . C . | C | D |")).toEqual([[null, ["G", "(G) C", "(C)", "D"]]]);
});

test("sections come in the order of the form, under their labels", () => {
  expect(asText("Form: B A\n[A]\n| G |\n[B]\n| D | A |")).toEqual([
    ["B", ["D", "A"]],
    ["A", ["G"]],
  ]);
});

test("silence has its place", () => {
  expect(asText("| G N.C. |")).toEqual([[null, ["G N.C."]]]);
});

test("the chords of a bar last as long as the bar, and every placement stands in one of them", () => {
  const text = "Time: 3/4\n| G | . D . | C . Em |: G | N.C. :|";
  const { timeline, route } = chartToScore(text, wholeNeckPlan, null);
  const bars = playedSections(timeline, route?.placements ?? []).flatMap((section) => section.bars);
  expect(bars.map(({ chords }) => chords.reduce((sum, { ticks }) => sum + ticks, 0))).toEqual(
    timeline.bars.map(({ length }) => length),
  );
  const shown = bars.flatMap(({ chords }) => chords.flatMap(({ placements }) => placements));
  expect(shown).toEqual(route?.placements);
});
