import type { ActionName } from "../../../src-shared/control/actionTable.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";
import type { Rehearsal } from "./rehearsal.svelte.ts";

/** Whom an action is for. */
export type Stand = {
  readonly rehearsal: Rehearsal;
  readonly preferences: PreferencesState;
  /** Plays, pauses, or begins what stands ready. */
  readonly onPlay: () => void;
  readonly onKeys: () => void;
};

/** Does in a rehearsal what a key, a pedal or a switch asks for; what a whole song is needed for does nothing. */
export const practiceAct = async (action: ActionName, stand: Stand): Promise<void> => {
  const { rehearsal, preferences, onPlay, onKeys } = stand;
  switch (action) {
    case "playPause":
      return onPlay();
    case "stop":
      return rehearsal.leave();
    case "markClean":
      return rehearsal.mark("clean");
    case "markNotYet":
      return rehearsal.mark("not-yet");
    case "nextPart":
      return rehearsal.nextPart();
    case "banjo": {
      const { mix } = preferences.value;
      const banjo = { ...mix.banjo, muted: !mix.banjo.muted };
      return preferences.change({ mix: { ...mix, banjo } });
    }
    case "announce":
      return preferences.change({ announce: !preferences.value.announce });
    case "keys":
      return onKeys();
    default:
      return;
  }
};
