import { Window } from "happy-dom";
import { describe, expect, test } from "vitest";
import { givesKeys, keepsKey, playAction } from "../../../../src-renderer/screens/play/playKeys.ts";

const plain = { ctrlKey: false, altKey: false, metaKey: false };

describe("a key on the Play screen", () => {
  test.each([
    [" ", "playPause"],
    ["ArrowLeft", "barBack"],
    ["ArrowRight", "barOn"],
    ["Home", "toStart"],
    ["l", "loopHere"],
    ["[", "loopFrom"],
    ["]", "loopTo"],
    ["M", "banjo"],
    ["r", "routes"],
    ["o", "others"],
    ["W", "why"],
    ["-", "slower"],
    ["+", "faster"],
    [",", "lookBack"],
    [".", "lookOn"],
    ["n", "backToNow"],
    ["z", "fewerBars"],
    ["X", "moreBars"],
    ["f", "roots"],
    ["A", "noteNames"],
  ])("%j does %s", (key, action) => {
    expect(playAction({ ...plain, key })).toBe(action);
  });

  test("does nothing with Ctrl, Alt or the command key", () => {
    for (const held of ["ctrlKey", "altKey", "metaKey"] as const) {
      expect(playAction({ ...plain, key: "l", [held]: true })).toBeNull();
    }
  });

  test("does nothing when no action has it", () => {
    expect(playAction({ ...plain, key: "q" })).toBeNull();
    expect(playAction({ ...plain, key: "constructor" })).toBeNull();
  });
});

describe("the element with the focus", () => {
  const { document } = new Window();
  const inside = (html: string): Element => {
    document.body.innerHTML = html;
    const found = document.body.querySelector("[data-focus]");
    if (!found) throw new Error("nothing to focus");
    return found as unknown as Element;
  };

  test.each([
    "<input data-focus>",
    "<textarea data-focus></textarea>",
    '<div contenteditable="true"><b data-focus>x</b></div>',
    '<span role="slider" data-focus></span>',
    '<div role="dialog"><button data-focus></button></div>',
  ])("keeps arrows for itself in %s", (html) => {
    expect(keepsKey(inside(html), "ArrowRight", null)).toBe(true);
  });

  test("keeps Space on a button, unless it was only clicked", () => {
    const button = inside("<button data-focus>Loop</button>");
    expect(keepsKey(button, " ", null)).toBe(true);
    expect(keepsKey(button, " ", button)).toBe(false);
  });

  test.each([
    '<span role="slider" data-focus></span>',
    '<button role="radio" data-focus></button>',
    '<button role="combobox" aria-expanded="false" data-focus></button>',
    '<button aria-haspopup="listbox" data-focus></button>',
  ])("gives its keys to the screen when it was only clicked: %s", (html) => {
    const control = inside(html);
    for (const key of [" ", "ArrowRight"]) {
      expect(keepsKey(control, key, null)).toBe(true);
      expect(keepsKey(control, key, control)).toBe(false);
    }
    expect([givesKeys(control, null), givesKeys(control, control)]).toEqual([false, true]);
  });

  test.each([
    "<input data-focus>",
    '<input role="combobox" data-focus>',
    '<button role="combobox" aria-expanded="true" data-focus></button>',
    '<div role="dialog"><span role="slider" data-focus></span></div>',
  ])("keeps its keys though it was clicked: %s", (html) => {
    const control = inside(html);
    expect(keepsKey(control, "ArrowRight", control)).toBe(true);
    expect(givesKeys(control, control)).toBe(false);
  });

  test("leaves keys to the screen in plain text and on a button", () => {
    expect(keepsKey(inside("<p data-focus>x</p>"), " ", null)).toBe(false);
    expect(keepsKey(inside("<button data-focus>x</button>"), "ArrowRight", null)).toBe(false);
  });
});
