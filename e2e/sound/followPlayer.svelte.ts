import { flushSync } from "svelte";
import { makeEngine } from "../../src-renderer/sound/engine.ts";
import { Player } from "../../src-renderer/state/player.svelte.ts";
import type { Held } from "../../src-renderer/state/whereabouts.ts";
import type { Score } from "../../src-shared/score/score.ts";

/** What a screen saw of a song. */
export type Followed = {
  /** State and place in words, each time they changed. */
  readonly lines: readonly string[];
  /** The lowest tick of all frames. */
  readonly least: number;
  /** Ticks that came after a higher one while it sounded. */
  readonly backward: readonly number[];
  /** How often the effect ran that sets the player up. */
  readonly loads: number;
  readonly problem: string | null;
};

/** Plays a score once, after a bar of clicks, and writes down what a screen would show. */
export const follow = (score: Score, placements: readonly Held[]): Promise<Followed> =>
  new Promise((resolve) => {
    const player = new Player(makeEngine);
    const lines: string[] = [];
    const ticks: number[] = [];
    const unsubscribe = player.onFrame((at) => {
      if (player.state === "playing" || player.state === "countingIn") {
        ticks.push(at);
      }
    });
    let loads = 0;
    const stop = $effect.root(() => {
      $effect(() => {
        loads += 1;
        player.load(score, placements);
        player.setTempo(100);
        player.setLoop(null);
        player.setCountIn(1);
      });
      $effect(() => {
        const { state, bar, beat, placement } = player;
        lines.push(`${state}, bar ${bar} beat ${beat}, placement ${placement}`);
        if ((state === "stopped" && lines.length > 1) || player.problem) {
          stop();
          unsubscribe();
          const backward = ticks.filter((at, index) => at < (ticks[index - 1] ?? at));
          resolve({ loads, lines, least: Math.min(...ticks), backward, problem: player.problem });
          player.dispose();
        }
      });
    });
    flushSync();
    void player.playPause();
  });
