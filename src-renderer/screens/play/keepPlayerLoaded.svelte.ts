import { untrack } from "svelte";
import { bpm } from "../../../src-shared/units.ts";
import type { CameFrom } from "../../state/cameFrom.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PreferencesState } from "../../state/preferences.svelte.ts";
import type { PlayControls } from "./playControls.svelte.ts";

/**
 * Tells the player whatever changes in the song and its controls, for as long as the component that
 * calls it is on the screen; then the player pauses.
 */
export const keepPlayerLoaded = (
  player: Player,
  song: OpenSong,
  controls: PlayControls,
  preferences: PreferencesState,
  cameFrom: CameFrom,
): void => {
  const barBefore = cameFrom.barIn(song.id);
  // While the player's patterns have the sound, the song is not loaded; then it is loaded anew.
  const whileOurs = (tell: () => void): void => {
    $effect(() => {
      if (!controls.panels.benchOpen) tell();
    });
  };
  whileOurs(() =>
    player.load(
      song.walk.score,
      song.walk.route?.placements ?? [],
      controls.band.heard,
      controls.band.silentBars,
    ),
  );
  whileOurs(() => player.setTempo(bpm(controls.tempo.now)));
  whileOurs(() => player.setLoop(controls.round));
  whileOurs(() => player.setMix(preferences.value.mix));
  // A page that is loaded again comes back to its bar; from then on the bar is noted as it changes.
  $effect(() => {
    const start = untrack(() => song.walk.score.bars[barBefore ?? 0]?.start);
    if (barBefore && start !== undefined && untrack(() => player.bar) === 0) player.seek(start);
  });
  $effect(() => cameFrom.note(song.id, player.bar));
  $effect(() => player.setCountIn(song.settings.countInBars));
  $effect(() => player.setCountInEachRound(controls.band.practice.countInEachRound ? 1 : 0));
  $effect(() => () => {
    const playing = untrack(() => player.state === "playing" || player.state === "countingIn");
    if (playing) void player.playPause();
  });
};
