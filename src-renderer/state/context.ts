import { createContext } from "svelte";
import type { Host } from "../../src-shared/host.ts";
import type { CameFrom } from "./cameFrom.ts";
import type { Evening } from "./evening.svelte.ts";
import type { Jam } from "./jam.svelte.ts";
import type { MidiPedals } from "./midiPedals.svelte.ts";
import type { MusicStand } from "./musicStand.svelte.ts";
import type { Navigation } from "./navigation.svelte.ts";
import type { Notices } from "./notices.svelte.ts";
import type { PatternsState } from "./patterns.svelte.ts";
import type { Player } from "./player.svelte.ts";
import type { PracticeLog } from "./practiceLog.svelte.ts";
import type { PreferencesState } from "./preferences.svelte.ts";
import type { Songbook } from "./songbook.svelte.ts";
import type { Trouble } from "./trouble.svelte.ts";

/** All that the screens share; made once at boot. */
export type AppState = {
  readonly host: Host;
  readonly evening: Evening;
  readonly navigation: Navigation;
  readonly notices: Notices;
  readonly patterns: PatternsState;
  readonly player: Player;
  readonly preferences: PreferencesState;
  readonly log: PracticeLog;
  readonly songbook: Songbook;
  readonly stand: MusicStand;
  readonly jam: Jam;
  readonly pedals: MidiPedals;
  readonly trouble: Trouble;
  readonly cameFrom: CameFrom;
};

const context = createContext<AppState>();

/** The shared state; only while a component below the app is being made. */
export const getAppState: () => AppState = context[0];
/** Hands the shared state to every component below this one. */
export const setAppState: (state: AppState) => AppState = context[1];
