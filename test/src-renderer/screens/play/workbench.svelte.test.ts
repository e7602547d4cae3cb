// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { gridAction } from "../../../../src-renderer/parts/patternKeys.ts";
import { Workbench } from "../../../../src-renderer/screens/play/workbench.svelte.ts";
import { OpenSong } from "../../../../src-renderer/state/openSong.svelte.ts";
import { PatternsState } from "../../../../src-renderer/state/patterns.svelte.ts";
import { MOST_PATTERNS } from "../../../../src-shared/host.ts";
import { rest } from "../../../../src-shared/roll/editPattern.ts";
import type { Pattern } from "../../../../src-shared/roll/pattern.ts";
import { HandClock } from "../../state/handClock.ts";
import { MemoryHost, storedSong } from "../../state/memoryHost.ts";

const empty = (name: string, eighths = 4): Pattern => ({
  name,
  meter: "2/4",
  strokes: Array.from({ length: eighths }, () => rest),
});
const stage = (patterns: readonly Pattern[] = [], strings: 3 | 4 = 3) => {
  const { host } = new MemoryHost();
  const clock = new HandClock();
  const state = new PatternsState(host, patterns, clock.later);
  const stored = storedSong("millrace", "Title: Millrace\nKey: G\n| G | C |\n");
  const song = new OpenSong(
    host,
    stored,
    { later: clock.later, nowMs: () => 0 },
    () => state.playable,
  );
  return { state, song, bench: new Workbench(state, song, () => strings) };
};
const press = (bench: Workbench, ...keys: readonly string[]): void => {
  for (const key of keys) {
    const action = gridAction({ key, ctrlKey: false, altKey: false, metaKey: false });
    if (action) bench.act(action);
  }
};
const spelled = ({ pattern }: Workbench): string =>
  (pattern?.strokes ?? [])
    .map(
      ({ picks, accent, damped }) =>
        picks.map(({ finger, on }) => `${finger}${on}`).join("+") +
          (accent ? ">" : "") +
          (damped ? "x" : "") || "-",
    )
    .join(" ");

test("keys alone put a whole pattern in, from the first eighth's string 3 on", () => {
  const { bench } = stage([empty("Tin gate")]);
  press(bench, "t", "a", "ArrowRight", "ArrowUp", "i", "ArrowRight", "ArrowDown", "Enter");
  press(bench, "ArrowRight", "ArrowUp", "ArrowUp", "Enter", "d");
  expect(spelled(bench)).toBe("T3> I2 T3 M1x");
  expect(bench.cursor).toEqual({ eighth: 3, row: 1 });
});

test("a click goes on to the next finger in reach; clearing and resting take picks away", () => {
  const { bench } = stage([empty("Tin gate")]);
  press(bench, "Enter");
  expect(spelled(bench)).toMatch(/^T3 /);
  press(bench, "Enter");
  expect(spelled(bench)).toMatch(/^I3 /);
  press(bench, "Enter");
  expect(spelled(bench)).toBe("- - - -");
  press(bench, "t", "ArrowUp", "i", "Delete");
  expect(spelled(bench)).toMatch(/^T3 /);
  press(bench, "i", "r");
  expect(spelled(bench)).toBe("- - - -");
});

test("a rest takes no accent and no damping", () => {
  const { bench } = stage([empty("Tin gate")]);
  press(bench, "a", "d");
  expect([spelled(bench), bench.canUndo]).toEqual(["- - - -", false]);
});

test("the fourth string has a line where the chord has four strings, or the pattern uses it", () => {
  expect(stage([empty("Tin gate")], 4).bench.rows).toContain(4);
  const { bench } = stage([empty("Tin gate")]);
  expect(bench.rows).not.toContain(4);
  bench.edit({ ...empty("Tin gate"), strokes: [{ ...rest, picks: [{ finger: "T", on: 4 }] }] });
  expect(bench.rows).toContain(4);
});

test("undo and redo go through every change: picks, new patterns, deletions and names", () => {
  const { bench, state } = stage([empty("Tin gate")]);
  const seen = [state.value];
  const done = (): void => void seen.push(state.value);
  press(bench, "t");
  done();
  bench.add(empty("Low weir"));
  done();
  bench.rename("High weir");
  done();
  bench.take(0);
  bench.remove();
  done();
  expect(bench.pattern?.name).toBe("High weir");
  for (const before of seen.toReversed().slice(1)) {
    bench.undo();
    expect(state.value).toEqual(before);
  }
  expect(bench.canUndo).toBe(false);
  for (const after of seen.slice(1)) {
    bench.redo();
    expect(state.value).toEqual(after);
  }
  expect(bench.canRedo).toBe(false);
});

test("the cursor stays within a pattern that has become shorter", () => {
  const { bench } = stage([empty("Tin gate", 8)]);
  press(bench, "End");
  bench.edit(empty("Tin gate", 3));
  expect(bench.cursor.eighth).toBe(2);
});

test("a name that is empty or taken is refused in words, and the old one stays", () => {
  const { bench } = stage([empty("Tin gate"), empty("Low weir")]);
  expect(bench.rename("  ")).toBe("A pattern needs a name.");
  expect(bench.rename("Low weir")).toBe("Another of your patterns has this name.");
  expect(bench.rename("x".repeat(61))).toBe("A name has at most 60 characters.");
  expect(bench.pattern?.name).toBe("Tin gate");
  expect(bench.rename(" Tin gate ")).toBeNull();
});

test("the song goes on with a pattern that gets another name, also through undo", () => {
  const { bench, song } = stage([empty("Tin gate")]);
  const { picking } = song.settings;
  song.change({ picking: { ...picking, song: { style: "own:Tin gate", density: "full" } } });
  bench.rename("Low weir");
  expect(song.settings.picking.song.style).toBe("own:Low weir");
  bench.undo();
  expect(song.settings.picking.song.style).toBe("own:Tin gate");
});

test("a copy gets a name of its own; where no more can be kept that is said", () => {
  const { bench, state } = stage([empty("Tin gate")]);
  expect(bench.copy()).toBeNull();
  expect(state.value.map(({ name }) => name)).toEqual(["Tin gate", "Tin gate 2"]);
  expect(bench.pattern?.name).toBe("Tin gate 2");
  const full = stage(Array.from({ length: MOST_PATTERNS }, (_, index) => empty(`Weir ${index}`)));
  expect(full.bench.copy()?.says).toMatch(/the most there can be/);
  expect(full.state.value).toHaveLength(MOST_PATTERNS);
});

test("a pattern that breaks a rule is not played by the song until it is mended", () => {
  const { bench, song, state } = stage([
    {
      ...empty("Tin gate", 2),
      strokes: [
        { ...rest, picks: [{ finger: "T", on: 3 }] },
        { ...rest, picks: [{ finger: "T", on: 2 }] },
      ],
    },
  ]);
  expect(song.patterns).toEqual([]);
  press(bench, "ArrowRight", "ArrowUp", "i");
  expect(song.patterns).toEqual(state.value);
});
