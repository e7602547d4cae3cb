import { Window } from "happy-dom";
import { describe, expect, test } from "vitest";
import { givesKeys, keepsKey, playAction } from "../../../../src-renderer/screens/play/playKeys.ts";
import type { KeyPress } from "../../../../src-shared/control/keyPress.ts";

const press = (key: string, code = "", held: Partial<KeyPress> = {}): KeyPress => ({
  key,
  code,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  ...held,
});

describe("a key on the Play screen", () => {
  test.each([
    [" ", "playPause"],
    ["PageDown", "playPause"],
    ["PageUp", "toStart"],
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
    ["t", "largeType"],
    ["?", "keys"],
  ])("%j does %s", (key, action) => {
    expect(playAction(press(key), [], false)).toBe(action);
  });

  test("does nothing with Ctrl, Alt or the command key", () => {
    for (const held of ["ctrlKey", "altKey", "metaKey"] as const) {
      expect(playAction(press("l", "KeyL", { [held]: true }), [], false)).toBeNull();
    }
  });

  test("does nothing when no action has it", () => {
    expect(playAction(press("y"), [], false)).toBeNull();
    expect(playAction(press("constructor"), [], false)).toBeNull();
  });

  test("does what the player gave it instead", () => {
    const own = [{ trigger: { kind: "key", key: "l" }, action: "stop" }] as const;
    expect(playAction(press("L"), own, false)).toBe("stop");
  });

  test("of two meanings has the figure's where figures call chords", () => {
    // On a German layout Shift with 0 writes =.
    expect(playAction(press("=", "Digit0"), [], false)).toBe("faster");
    expect(playAction(press("=", "Digit0"), [], true)).toBe("noChord");
    expect(playAction(press("%", "Digit5"), [], true)).toBe("call5");
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

  test("a choice keeps arrows and Space for itself, and leaves letters to the screen", () => {
    const radio = inside('<button role="radio" data-focus></button>');
    expect([" ", "ArrowDown", "Enter"].map((key) => keepsKey(radio, key, null))).toEqual([
      true,
      true,
      true,
    ]);
    expect(["v", "?", "1"].map((key) => keepsKey(radio, key, null))).toEqual([false, false, false]);
    const over = inside('<div role="dialog"><button role="radio" data-focus></button></div>');
    expect(keepsKey(over, "v", null)).toBe(true);
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

  test("keeps Enter on a button or a link, unless it was only clicked", () => {
    for (const html of ["<button data-focus>Loop</button>", '<a href="#/x" data-focus>Chart</a>']) {
      const control = inside(html);
      expect(keepsKey(control, "Enter", null)).toBe(true);
      expect(keepsKey(control, "Enter", control)).toBe(false);
    }
  });

  test("leaves Enter to the screen on a link to where one is already", () => {
    const here = inside('<a href="#/x" aria-current="page" data-focus>Play</a>');
    expect(keepsKey(here, "Enter", null)).toBe(false);
  });

  test("leaves keys to the screen in large type, which is a dialog too", () => {
    const view = inside('<div role="dialog" data-plays data-focus></div>');
    expect(keepsKey(view, "ArrowRight", null)).toBe(false);
    const leave = inside('<div role="dialog" data-plays><button data-focus>x</button></div>');
    expect([keepsKey(leave, "t", null), keepsKey(leave, " ", null)]).toEqual([false, true]);
  });

  test("leaves keys to the screen in plain text and on a button", () => {
    expect(keepsKey(inside("<p data-focus>x</p>"), " ", null)).toBe(false);
    expect(keepsKey(inside("<button data-focus>x</button>"), "ArrowRight", null)).toBe(false);
  });
});
