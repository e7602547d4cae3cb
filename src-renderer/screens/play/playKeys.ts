/** What a key does about how the pictures are looked at. */
export type ViewAction =
  | "lookBack"
  | "lookOn"
  | "backToNow"
  | "fewerBars"
  | "moreBars"
  | "roots"
  | "noteNames";

/** What a key does on the Play screen. */
export type PlayAction =
  | "playPause"
  | "barBack"
  | "barOn"
  | "toStart"
  | "loopHere"
  | "loopFrom"
  | "loopTo"
  | "banjo"
  | "band"
  | "routes"
  | "hand"
  | "others"
  | "why"
  | "slower"
  | "faster"
  | ViewAction;

const actions: ReadonlyMap<string, PlayAction> = new Map([
  [" ", "playPause"],
  ["ArrowLeft", "barBack"],
  ["ArrowRight", "barOn"],
  ["Home", "toStart"],
  ["l", "loopHere"],
  ["L", "loopHere"],
  ["[", "loopFrom"],
  ["]", "loopTo"],
  ["m", "banjo"],
  ["M", "banjo"],
  ["b", "band"],
  ["B", "band"],
  ["r", "routes"],
  ["R", "routes"],
  ["h", "hand"],
  ["H", "hand"],
  ["o", "others"],
  ["O", "others"],
  ["w", "why"],
  ["W", "why"],
  ["-", "slower"],
  ["−", "slower"],
  ["+", "faster"],
  ["=", "faster"],
  [",", "lookBack"],
  [".", "lookOn"],
  ["n", "backToNow"],
  ["N", "backToNow"],
  ["z", "fewerBars"],
  ["Z", "fewerBars"],
  ["x", "moreBars"],
  ["X", "moreBars"],
  ["f", "roots"],
  ["F", "roots"],
  ["a", "noteNames"],
  ["A", "noteNames"],
]);

/** The parts of a key press that matter. */
export type KeyPress = {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
};

/** The action of a key press; null where it has none, as with Ctrl, Alt or the command key. */
export const playAction = (press: KeyPress): PlayAction | null =>
  press.ctrlKey || press.altKey || press.metaKey ? null : (actions.get(press.key) ?? null);

const TYPED_INTO = "input, textarea, select, [contenteditable]";
const POPUPS = "[role=listbox], [role=dialog], [role=alertdialog], [role=menu]";
const MOVED = "[role=slider], [role=radio], [role=combobox], [aria-haspopup=listbox]";
const OWN_KEYS = `${TYPED_INTO}, ${POPUPS}, ${MOVED}`;

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
 * arrows, and for Space a button. One that was only `clicked` does not: who has clicked Loop
 * and then presses Space wants to play.
 */
export const keepsKey = (focused: Element, key: string, clicked: Element | null): boolean =>
  (focused.closest(OWN_KEYS) !== null && !givesKeys(focused, clicked)) ||
  (key === " " && focused !== clicked && focused.matches("button, summary"));
