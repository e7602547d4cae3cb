import { mount } from "svelte";
import type { Hand } from "../src-shared/route/movement.ts";
import { firstPreferences } from "../src-shared/settings.ts";
import App from "./app.svelte";
import { pickHost } from "./hosts/pickHost.ts";
import { withRemarks } from "./hosts/withRemarks.ts";
import { CameFrom } from "./state/cameFrom.ts";
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
import { Trouble } from "./state/trouble.svelte.ts";

/** Why the app has not started, and what to do. */
export type NotStarted = { readonly says: string; readonly advice: string };

/** A chart of so many characters and its settings surely go through while a page is being left. */
const SENT_IN_LEAVING = 6_000;

/** Starts the app on the page; null when it runs. */
export const start = async (target: HTMLElement): Promise<NotStarted | null> => {
  // 1. The machine behind the screen: the desktop's bridge, or the local server. What it remarks is
  // shown, whoever asked.
  const notices = new Notices();
  const host = withRemarks(pickHost(window), (remark) => notices.complain(remark));

  // 2. What the player likes, and has made. What is damaged does not stop the start; a host out of
  // reach does.
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
    trouble: new Trouble(host, notices),
    cameFrom: new CameFrom(sessionStorage),
    pedals: new MidiPedals(
      "requestMIDIAccess" in navigator ? () => navigator.requestMIDIAccess() : null,
    ),
  };

  // 4. What goes wrong anywhere is shown, and written to the log.
  window.addEventListener(
    "error",
    ({ error, message }) => void shared.trouble.tell(error ?? message),
  );
  window.addEventListener("unhandledrejection", ({ reason }) => void shared.trouble.tell(reason));

  // 5. What is not saved goes out before the page does. One that was long, or could not be saved, is
  // asked about: by the browser, or by the desktop's window.
  window.addEventListener("beforeunload", (event) => {
    const { log, patterns: own, preferences, stand } = shared;
    const states = [stand.song?.saving, own.saving, log.saving].map((saving) => saving ?? "saved");
    const isLong = (stand.song?.text.length ?? 0) > SENT_IN_LEAVING;
    for (const state of [stand.song, own, preferences, log]) void state?.save();
    if (states.includes("failed") || (isLong && states.some((state) => state !== "saved")))
      event.preventDefault();
  });

  // 6. The screen.
  mount(App, { target, props: { shared } });
  return null;
};
