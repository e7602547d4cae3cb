import assert from "node:assert/strict";
import { readChart } from "../../src-shared/chart/readChart.ts";
import { writeChart } from "../../src-shared/chart/writeChart.ts";
import type { Walk } from "../../src-shared/chartToScore.ts";
import type { Diagnostic } from "../../src-shared/diagnostic.ts";
import type { Importing } from "../../src-shared/exchange/importing.ts";
import type { Refusal } from "../../src-shared/harmony/refusal.ts";

/** The reader stops after 200 and says so; a walk may add some for each chord. */
const MOST_NOTES = 201;
const MOST_WORDS = 600;

const saysSomething = (words: string, what: string): void => {
  assert.match(words, /^\S/, `${what} has no words`);
  assert.ok(words.length <= MOST_WORDS, `${what} is too long: ${words.length} characters`);
};

/** Diagnostics stand inside the text, are not many, and say what is wrong and what to do. */
export const checkNotes = (text: string, notes: readonly Diagnostic[], chords = 0): void => {
  assert.ok(notes.length <= MOST_NOTES + 3 * chords, `${notes.length} notes`);
  const lines = text.split(/\r\n|\n|\r/);
  for (const { at, says, try: advice, code } of notes) {
    const line = lines[at.line - 1];
    assert.ok(line !== undefined, `${code} stands in line ${at.line} of ${lines.length}`);
    const isInside = at.column >= 1 && at.length >= 1 && at.column - 1 + at.length <= line.length;
    assert.ok(isInside, `${code} stands at ${at.column}+${at.length} of ${line.length}`);
    saysSomething(says, code);
    saysSomething(advice, code);
  }
};

/** A chart's reading points inside the text, and its written form reads back the same. */
export const checkChart = (text: string): void => {
  const { value, notes } = readChart(text);
  checkNotes(text, notes);
  const written = writeChart(value);
  const again = readChart(written);
  assert.deepEqual(again.value, value);
  assert.equal(writeChart(again.value), written);
};

const isOrdered = (ticks: readonly number[]): boolean =>
  ticks.every((at, index) => index === 0 || at >= (ticks[index - 1] ?? at));

/** A score's strokes are whole ticks in order, within the song, and played on strings that are there. */
export const checkScore = ({ score, route, slots }: Walk): void => {
  assert.ok(route === null || route.placements.length === slots.length, "a slot is not placed");
  assert.ok(isOrdered(score.notes.map(({ tick }) => tick)), "notes out of order");
  assert.ok(isOrdered(score.hits.map(({ tick }) => tick)), "hits out of order");
  for (const { tick, ticks, fret, midi, string } of score.notes) {
    assert.ok(Number.isInteger(tick) && tick >= 0 && tick < score.length, `a note at ${tick}`);
    assert.ok(ticks > 0, `a note of ${ticks} ticks`);
    assert.ok(string >= 1 && string <= 5 && fret >= 0, `a note on string ${string}, fret ${fret}`);
    assert.ok(Number.isFinite(midi), `a note of pitch ${midi}`);
  }
  for (const { tick, level } of score.hits) {
    assert.ok(tick >= 0 && tick < score.length, `a hit at ${tick} of ${score.length}`);
    assert.ok(level >= 0 && level <= 2, `a hit of level ${level}`);
  }
};

/** A refusal is in words. */
export const checkRefusal = ({ says, try: advice }: Omit<Refusal, "ok">): void => {
  saysSomething(says, "a refusal");
  saysSomething(advice, "a refusal's advice");
};

/** What a file gives is whole charts that read without an error, or refusals in words. */
export const checkImporting = (found: Importing): void => {
  if (!found.ok) {
    checkRefusal(found);
    return;
  }
  assert.ok(found.tunes.length > 0, "no tunes and no refusal");
  for (const tune of found.tunes) {
    if (!tune.ok) {
      checkRefusal(tune);
      continue;
    }
    const { value } = readChart(tune.chart);
    assert.ok(value.sections.length > 0, "a chart without bars");
    checkChart(tune.chart);
    for (const line of [...tune.read, ...tune.left]) {
      saysSomething(line, "what was read or left");
    }
  }
};
