import type { ActionName } from "../../../src-shared/control/actionTable.ts";
import { actionFor, type Rebindings } from "../../../src-shared/control/bindings.ts";
import { type KeyPress, keyTriggers } from "../../../src-shared/control/keyPress.ts";

/**
 * The action of a key press; null where it has none, as with Ctrl, Alt or the command key. Of a key
 * with two meanings the figure comes first where figures call chords.
 */
export const playAction = (
  press: KeyPress,
  own: Rebindings,
  figuresFirst: boolean,
): ActionName | null => {
  const triggers = keyTriggers(press);
  const inOrder = figuresFirst ? triggers.toReversed() : triggers;
  for (const trigger of inOrder) {
    const action = actionFor(own, trigger);
    if (action !== null) return action;
  }
  return null;
};

const TYPED_INTO = "input, textarea, select, [contenteditable]";
/** Large type is a dialog that the music goes on under: the keys are still the screen's. */
const POPUPS = "[role=listbox], [role=dialog]:not([data-plays]), [role=alertdialog], [role=menu]";
const MOVED = "[role=slider], [role=radio], [role=combobox], [aria-haspopup=listbox]";
const OWN_KEYS = `${TYPED_INTO}, ${POPUPS}, ${MOVED}`;
/** A radio is moved by arrows and pressed by Space: what else is written means nothing to it. */
const ownKeys = (focused: Element, key: string): string =>
  /^\S$/.test(key) && focused.matches("[role=radio]") ? `${TYPED_INTO}, ${POPUPS}` : OWN_KEYS;
/** What a key does to the element that has the focus, where that is not the screen's to decide. */
const PRESSED: ReadonlyMap<string, string> = new Map([
  [" ", "button, summary"],
  ["Enter", "button, summary, a[href]:not([aria-current])"],
]);

/**
 * Whether an element is of something that lies over the screen. What is done there says nothing of how
 * the player works on the screen itself, where the focus then returns to.
 */
export const liesOver = (element: Element): boolean => element.closest(POPUPS) !== null;

/**
 * Whether the element that has the focus would take keys (a slider, a choice, a closed list), but
 * was only `clicked`: its keys are the screen's.
 */
export const givesKeys = (focused: Element, clicked: Element | null): boolean =>
  focused === clicked &&
  focused.matches(MOVED) &&
  focused.getAttribute("aria-expanded") !== "true" &&
  focused.closest(`${TYPED_INTO}, ${POPUPS}`) === null;

/**
 * Whether the element that has the focus needs this key itself: one that is typed into or moved by
 * arrows, and for Space or Enter a button. One that was only `clicked` does not: who has clicked
 * Loop and then presses Space wants to play.
 */
export const keepsKey = (focused: Element, key: string, clicked: Element | null): boolean => {
  const pressed = PRESSED.get(key);
  return (
    (focused.closest(ownKeys(focused, key)) !== null && !givesKeys(focused, clicked)) ||
    (pressed !== undefined && focused !== clicked && focused.matches(pressed))
  );
};
