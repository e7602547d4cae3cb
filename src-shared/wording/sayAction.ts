import type { ActionGroup, ActionName } from "../control/actionTable.ts";
import type { KeyRefusal } from "../control/keyPress.ts";
import type { MidiKind, Trigger } from "../control/trigger.ts";
import { words } from "../wordTable.ts";

const actions: Readonly<Record<ActionName, string>> = {
  playPause: "Play or pause",
  stop: "Stop",
  toStart: "Back to the start",
  barBack: "One bar back",
  barOn: "One bar on",
  slower: "Slower",
  faster: "Faster",
  previousSong: words.songbook.evening.previousAction,
  nextSong: words.songbook.evening.nextAction,
  countIn: "Count-in of 0, 1 or 2 bars",
  banjo: "Banjo out or in",
  band: "The next practice mix",
  loopHere: "Loop this bar, or clear the loop",
  loopFrom: "Loop starts here",
  loopTo: "Loop ends here",
  loopOff: "Clear the loop",
  routes: "Other routes",
  previousRoute: "The route before",
  nextRoute: "The next route",
  others: "Other places of the chord",
  why: "Why the hand is here",
  hand: "What the right hand plays",
  largeType: "Large type",
  lookBack: "Look a bar back",
  lookOn: "Look a bar ahead",
  backToNow: "Back to now",
  moreBars: "More bars on the lanes",
  fewerBars: "Fewer bars on the lanes",
  roots: "Find the roots",
  noteNames: "Note names",
  announce: "Announce the next change, or not",
  jam: "Call the changes",
  keys: "Keys and pedals",
  call1: "Call the 1",
  call2: "Call the 2",
  call3: "Call the 3",
  call4: "Call the 4",
  call5: "Call the 5",
  call6: "Call the 6",
  call7: "Call the 7",
  flat: "The called chord a half step lower",
  noChord: "Call no chord",
  takeBack: "Take the last call back",
};

/**
 * What an action does, in words.
 * @example sayAction("barOn") // => "One bar on"
 */
export const sayAction = (action: ActionName): string => actions[action];

const groups: Readonly<Record<ActionGroup, string>> = {
  playing: "Playing",
  loop: "Loop",
  route: "Route",
  screen: "Screen",
  calling: "Calling the changes",
};

/**
 * What a group of actions is about.
 * @example sayGroup("loop") // => "Loop"
 */
export const sayGroup = (group: ActionGroup): string => groups[group];

const keys: ReadonlyMap<string, string> = new Map([
  [" ", "Space"],
  ["ArrowLeft", "←"],
  ["ArrowRight", "→"],
  ["ArrowUp", "↑"],
  ["ArrowDown", "↓"],
  ["PageUp", "Page up"],
  ["PageDown", "Page down"],
  [",", ", (comma)"],
  [".", ". (full stop)"],
  ["-", "−"],
  ["−", "− (minus sign)"],
]);

const midi: Readonly<Record<MidiKind, string>> = {
  note: "note",
  control: "control",
  program: "program",
};

/**
 * A key as it is labelled, or a switch of a MIDI controller by what it sends.
 * @example sayTrigger({ kind: "key", key: "l" }) // => "L"
 * @example sayTrigger({ kind: "control", channel: 1, number: 64 }) // => "MIDI control 64, channel 1"
 */
export const sayTrigger = (trigger: Trigger): string =>
  trigger.kind === "key"
    ? (keys.get(trigger.key) ??
      (trigger.key.length === 1 ? trigger.key.toUpperCase() : trigger.key))
    : `MIDI ${midi[trigger.kind]} ${trigger.number}, channel ${trigger.channel}`;

/**
 * Why a key cannot be given to an action, and what to do.
 * @example sayKeyRefusal("Tab", "leaves") // => "Tab leads out of here and stays as it is. Press another key."
 */
export const sayKeyRefusal = (key: string, refusal: KeyRefusal): string => {
  switch (refusal) {
    case "leaves":
      return `${key} leads out of here and stays as it is. Press another key.`;
    case "modifier":
      return `${key} only goes with other keys. Press another key.`;
    case "system":
      return `${key} belongs to the browser or the system. Press another key.`;
  }
};
