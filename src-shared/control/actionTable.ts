// Which key does what before the player changes it. Common practice, no published source: Space
// plays, arrows step; a page-turner pedal sends Page Down on the right foot and Page Up on the left.

/** What can be done about how the neck and the lanes are looked at. */
export type ViewAction =
  | "lookBack"
  | "lookOn"
  | "backToNow"
  | "fewerBars"
  | "moreBars"
  | "roots"
  | "noteNames";

/** What can be done without the mouse, while playing a song or calling the changes. */
export type ActionName =
  | "playPause"
  | "stop"
  | "toStart"
  | "barBack"
  | "barOn"
  | "slower"
  | "faster"
  | "previousSong"
  | "nextSong"
  | "countIn"
  | "banjo"
  | "band"
  | "loopHere"
  | "loopFrom"
  | "loopTo"
  | "loopOff"
  | "routes"
  | "previousRoute"
  | "nextRoute"
  | "others"
  | "why"
  | "hand"
  | "largeType"
  | "announce"
  | ViewAction
  | "jam"
  | "keys"
  | "call1"
  | "call2"
  | "call3"
  | "call4"
  | "call5"
  | "call6"
  | "call7"
  | "flat"
  | "noChord"
  | "takeBack"
  | "markClean"
  | "markNotYet"
  | "nextPart"
  | "rehearse";

/** What an action is about; the groups stand in this order. */
export type ActionGroup = "playing" | "loop" | "route" | "screen" | "calling" | "rehearsing";

/** An action with the keys that usually do it, named as a key press names them. */
export type ActionRow = {
  readonly name: ActionName;
  readonly group: ActionGroup;
  readonly keys: readonly string[];
};

const row = (name: ActionName, group: ActionGroup, ...keys: readonly string[]): ActionRow => ({
  name,
  group,
  keys,
});

/** Every action, in the order in which they are shown; no key stands twice. */
export const actionTable: readonly ActionRow[] = [
  row("playPause", "playing", " ", "PageDown"),
  row("stop", "playing", "s"),
  row("toStart", "playing", "Home", "PageUp"),
  row("barBack", "playing", "ArrowLeft"),
  row("barOn", "playing", "ArrowRight"),
  row("slower", "playing", "-", "−"),
  row("faster", "playing", "+", "="),
  row("previousSong", "playing", "q"),
  row("nextSong", "playing", "e"),
  row("countIn", "playing", "c"),
  row("banjo", "playing", "m"),
  row("band", "playing", "p"),
  row("loopHere", "loop", "l"),
  row("loopFrom", "loop", "["),
  row("loopTo", "loop", "]"),
  row("loopOff", "loop", "k"),
  row("routes", "route", "r"),
  row("previousRoute", "route", "<"),
  row("nextRoute", "route", ">"),
  row("others", "route", "o"),
  row("why", "route", "w"),
  row("hand", "route", "h"),
  row("largeType", "screen", "t"),
  row("lookBack", "screen", ","),
  row("lookOn", "screen", "."),
  row("backToNow", "screen", "n"),
  row("moreBars", "screen", "x"),
  row("fewerBars", "screen", "z"),
  row("roots", "screen", "f"),
  row("noteNames", "screen", "a"),
  row("announce", "screen", "i"),
  row("jam", "screen", "j"),
  row("keys", "screen", "?"),
  row("call1", "calling", "1"),
  row("call2", "calling", "2"),
  row("call3", "calling", "3"),
  row("call4", "calling", "4"),
  row("call5", "calling", "5"),
  row("call6", "calling", "6"),
  row("call7", "calling", "7"),
  row("flat", "calling", "b"),
  row("noChord", "calling", "0"),
  row("takeBack", "calling", "Backspace"),
  row("markClean", "rehearsing", "v", "ArrowUp"),
  row("markNotYet", "rehearsing", "u", "ArrowDown"),
  row("nextPart", "rehearsing", "g"),
  row("rehearse", "rehearsing", "d"),
];

/** Every action's name, in the table's order. */
export const actionNames: readonly ActionName[] = actionTable.map(({ name }) => name);
