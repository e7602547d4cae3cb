// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { type HistoryPress, historyKey } from "../../../src-renderer/screens/historyKey.ts";

const press = (part: Partial<HistoryPress>): HistoryPress => ({
  key: "z",
  ctrlKey: true,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  defaultPrevented: false,
  target: document.body,
  ...part,
});

test.each([
  ["Ctrl-Z", {}, "undo"],
  ["the command key with Z", { ctrlKey: false, metaKey: true }, "undo"],
  ["Ctrl-Shift-Z", { shiftKey: true, key: "Z" }, "redo"],
  ["Ctrl-Y", { key: "y" }, "redo"],
  ["Z alone", { ctrlKey: false }, null],
  ["Ctrl-Alt-Z", { altKey: true }, null],
  ["Ctrl-S", { key: "s" }, null],
  ["a key that another has taken", { defaultPrevented: true }, null],
])("%s is understood", (_, part, asked) => {
  expect(historyKey(press(part))).toBe(asked);
});

test("a field undoes its own typing", () => {
  document.body.innerHTML = `<input /><div contenteditable="true"><b>G</b></div><button>Play</button>`;
  const asked = (selector: string) =>
    historyKey(press({ target: document.querySelector(selector) }));
  expect([asked("input"), asked("b"), asked("button")]).toEqual([null, null, "undo"]);
});
