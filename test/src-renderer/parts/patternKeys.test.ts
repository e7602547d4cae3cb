import { expect, test } from "vitest";
import { gridAction } from "../../../src-renderer/parts/patternKeys.ts";

const plain = { ctrlKey: false, altKey: false, metaKey: false };

test.each([
  ["ArrowRight", { kind: "move", eighths: 1, rows: 0 }],
  ["ArrowUp", { kind: "move", eighths: 0, rows: -1 }],
  ["T", { kind: "finger", finger: "T" }],
  ["i", { kind: "finger", finger: "I" }],
  ["m", { kind: "finger", finger: "M" }],
  ["Delete", { kind: "finger", finger: null }],
  ["Backspace", { kind: "finger", finger: null }],
  ["0", { kind: "finger", finger: null }],
  ["Enter", { kind: "next" }],
  [" ", { kind: "next" }],
  ["A", { kind: "accent" }],
  ["d", { kind: "damped" }],
  ["r", { kind: "rest" }],
])("%s does what it says in the grid", (key, action) => {
  expect(gridAction({ ...plain, key })).toEqual(action);
});

test("a key that means nothing here, or comes with Ctrl, Alt or the command key, is left alone", () => {
  expect(gridAction({ ...plain, key: "q" })).toBeNull();
  expect(gridAction({ ...plain, key: "Tab" })).toBeNull();
  for (const held of ["ctrlKey", "altKey", "metaKey"]) {
    expect(gridAction({ ...plain, key: "a", [held]: true })).toBeNull();
  }
});
