import { Window } from "happy-dom";
import { describe, expect, test } from "vitest";
import { keepsKey, playAction } from "../../../../src-renderer/screens/play/playKeys.ts";

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

  test("leaves keys to the screen in plain text and on a button", () => {
    expect(keepsKey(inside("<p data-focus>x</p>"), " ", null)).toBe(false);
    expect(keepsKey(inside("<button data-focus>x</button>"), "ArrowRight", null)).toBe(false);
  });
});
