import { mount } from "svelte";
import { BRIDGE_NAME } from "../src-shared/host.ts";
import type { Hand } from "../src-shared/route/movement.ts";
import { firstPreferences } from "../src-shared/settings.ts";
import App from "./app.svelte";
import { pickHost } from "./hosts/pickHost.ts";
import type { AppState } from "./state/context.ts";
import { Evening } from "./state/evening.svelte.ts";
import { Jam } from "./state/jam.svelte.ts";
import { MidiPedals } from "./state/midiPedals.svelte.ts";
import { MusicStand } from "./state/musicStand.svelte.ts";
import { Navigation } from "./state/navigation.svelte.ts";
import { Notices } from "./state/notices.svelte.ts";
import { wallClock } from "./state/openSong.svelte.ts";
import { PatternsState } from "./state/patterns.svelte.ts";
import { Player } from "./state/player.svelte.ts";
import { PracticeLog } from "./state/practiceLog.svelte.ts";
import { PreferencesState } from "./state/preferences.svelte.ts";
import { Songbook } from "./state/songbook.svelte.ts";

/** Why the app has not started, and what to do. */
export type NotStarted = { readonly says: string; readonly advice: string };

/** Starts the app on the page; null when it runs. */
export const start = async (target: HTMLElement): Promise<NotStarted | null> => {
  // 1. The machine behind the screen: the desktop's bridge, or the local server.
  const host = pickHost(window);

  // 2. What the player likes, and has made. What is damaged does not stop the start; a host out of
  // reach does.
  const notices = new Notices();
  const [liked, made] = await Promise.all([host.readPreferences(null), host.readPatterns(null)]);
  for (const answer of [liked, made]) {
    if (answer.ok) continue;
    const { code, says, try: advice } = answer.problem;
    if (code !== "damaged") return { says, advice };
    notices.complain(answer.problem);
  }
  const patterns = new PatternsState(host, made.ok ? made.value : []);
  const preferences = new PreferencesState(host, liked.ok ? liked.value : firstPreferences);
  const ownHand = (): Hand | null => preferences.value.hand.own;

  // 3. The state that the screens share. Sound is fetched on the first play, not before.
  const navigation = new Navigation(location.hash, {
    push: (hash) => {
      location.hash = hash;
    },
    replace: (hash) => history.replaceState(null, "", hash),
  });
  const songbook = new Songbook(host);
  const stand = new MusicStand(host, wallClock, () => patterns.playable, ownHand);
  const shared: AppState = {
    host,
    notices,
    navigation,
    evening: new Evening(songbook, stand, navigation),
    patterns,
    player: new Player(async () => (await import("./sound/engine.ts")).makeEngine()),
    preferences,
    log: new PracticeLog(host),
    songbook,
    stand,
    jam: new Jam(ownHand),
    pedals: new MidiPedals(
      "requestMIDIAccess" in navigator ? () => navigator.requestMIDIAccess() : null,
    ),
  };

  // 4. A browser asks before it drops what could not be saved; the desktop's window would not close.
  if (!(BRIDGE_NAME in window)) {
    window.addEventListener("beforeunload", (event) => {
      const unsaved = [
        shared.stand.song?.saving,
        shared.patterns.saving,
        shared.log.saving,
      ].includes("failed");
      if (unsaved) event.preventDefault();
    });
  }

  // 5. The screen.
  mount(App, { target, props: { shared } });
  return null;
};
