import type { ActionName } from "../../../src-shared/control/actionTable.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";
import type { PlayControls } from "./playControls.svelte.ts";

/** Whom an action is for. */
export type Stage = {
  readonly controls: PlayControls;
  readonly player: Player;
  readonly preferences: PreferencesState;
  /** Goes to where changes are called without a chart. */
  readonly onJam: () => void;
  /** Goes to where what is hard in the song is practised. */
  readonly onRehearse: () => void;
  /** Takes the next of the routes that really differ (1), or the one before (-1). */
  readonly onRoute: (by: -1 | 1) => void;
  /** Goes to the next song of the set list (1), or the one before (-1). */
  readonly onSong: (by: -1 | 1) => void;
};

/** Does on Play what a key, a pedal or a switch asks for; calls are for a jam. */
export const playAct = async (action: ActionName, stage: Stage): Promise<void> => {
  const { controls, player, preferences, onJam, onRehearse, onRoute, onSong } = stage;
  const { bar } = player;
  const { loop } = controls;
  switch (action) {
    case "playPause":
      return controls.playPause();
    case "stop":
      return player.stop();
    case "barBack":
      return player.stepBar(-1);
    case "barOn":
      return player.stepBar(1);
    case "toStart":
      return controls.goToBar(0);
    case "loopHere":
      return controls.loopHere();
    case "loopFrom":
      return controls.setLoop({ firstBar: bar, lastBar: Math.max(bar, loop?.lastBar ?? bar) });
    case "loopTo":
      return controls.setLoop({ firstBar: Math.min(bar, loop?.firstBar ?? bar), lastBar: bar });
    case "loopOff":
      return controls.setLoop(null);
    case "previousSong":
      return onSong(-1);
    case "nextSong":
      return onSong(1);
    case "countIn":
      return controls.nextCountIn();
    case "banjo":
      return controls.band.toggleBanjo();
    case "band":
      return controls.band.nextMix();
    case "routes":
      controls.routesOpen = true;
      return;
    case "previousRoute":
      return onRoute(-1);
    case "nextRoute":
      return onRoute(1);
    case "others":
      return controls.toggleOthers();
    case "why":
      return controls.toggleWhy();
    case "hand":
      return controls.panels.openDrawer("hand");
    case "lookBack":
    case "lookOn":
    case "backToNow":
    case "moreBars":
    case "fewerBars":
    case "roots":
    case "noteNames":
      return controls.view.act(action);
    case "slower":
      return controls.tempo.step(-1);
    case "faster":
      return controls.tempo.step(1);
    case "largeType":
      controls.largeType = !controls.largeType;
      return;
    case "announce":
      return preferences.change({ announce: !preferences.value.announce });
    case "keys":
      controls.keysOpen = true;
      return;
    case "jam":
      return onJam();
    case "rehearse":
      return onRehearse();
    case "call1":
    case "call2":
    case "call3":
    case "call4":
    case "call5":
    case "call6":
    case "call7":
    case "flat":
    case "noChord":
    case "takeBack":
    case "markClean":
    case "markNotYet":
    case "nextPart":
      return;
  }
};
