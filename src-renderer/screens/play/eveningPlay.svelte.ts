import { tick, untrack } from "svelte";
import { setListOf, withSetList, withSongChanged } from "../../../src-shared/book/editSetLists.ts";
import type { ShelfEdit } from "../../../src-shared/book/editShelf.ts";
import type { Problem } from "../../../src-shared/host.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { AppState } from "../../state/context.ts";
import type { OpenSong } from "../../state/openSong.svelte.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PlayControls } from "./playControls.svelte.ts";

/**
 * A song of a set list on Play: it goes round as often as the list says, then the next one comes up
 * and plays. To be made while a component is, and ends with it.
 */
export class EveningPlay {
  /** How many times through are over. */
  #done: number = $state(0);
  readonly #app: AppState;
  readonly #player: Player;

  constructor(app: AppState, song: OpenSong, player: Player, controls: PlayControls) {
    this.#app = app;
    this.#player = player;
    const { evening } = app;
    const times = $derived(evening.current?.set.times ?? 1);
    const onward = $derived(evening.has(song.id) && evening.list?.goesOn === true);
    const index = $derived(evening.current?.index ?? -1);

    $effect(() => {
      controls.goesRound = onward ? this.#done + 1 < times : null;
    });
    $effect(() => {
      player.onHeardOut = onward ? () => void this.go(1, true) : null;
      return () => {
        player.onHeardOut = null;
      };
    });
    // Another place in the list, also where it is the same song once more.
    $effect(() => {
      if (index >= 0) this.#done = 0;
    });
    this.#countTimes(song);
    $effect(() => {
      if (!evening.startsNow || !evening.has(song.id)) return;
      evening.startsNow = false;
      // After the player has been loaded, and stopped for another song.
      void tick().then(() => controls.playPause());
    });
  }

  /** A time is over where the last bar is followed by the first. */
  #countTimes(song: OpenSong): void {
    let bar = 0;
    $effect(() => {
      const { bar: now, state } = this.#player;
      const wrapped = state === "playing" && now === 0 && bar > 0;
      const whole = wrapped && bar === untrack(() => song.walk.timeline.bars.length) - 1;
      if (whole) this.#done = untrack(() => this.#done) + 1;
      if (state === "stopped") this.#done = 0;
      bar = now;
    });
  }

  /** What the strip shows. */
  get shown(): {
    readonly place: string;
    readonly time: string;
    readonly next: string;
    readonly onPrevious: (() => void) | null;
    readonly onNext: (() => void) | null;
    readonly onEnd: () => void;
  } {
    const { evening } = this.#app;
    const { list, current, next, previous } = evening;
    const { place, of } = evening.progress;
    const say = words.songbook.evening;
    const times = current?.set.times ?? 1;
    return {
      place: say.place(list?.name ?? "", place, of),
      time: list?.goesOn && times > 1 ? say.time(this.#done + 1, times) : "",
      next: next ? say.next(next.song.title, next.set.key ?? next.song.key) : say.last,
      onPrevious: previous && (() => void this.go(-1, false)),
      onNext: next && (() => void this.go(1, false)),
      onEnd: () => evening.end(),
    };
  }

  /** Brings up the next song, or the one before; `plays` at once. */
  async go(by: -1 | 1, plays: boolean): Promise<void> {
    if (!plays) this.#player.stop();
    const problem = await this.#app.evening.step(by, plays);
    if (problem) this.#app.notices.complain(problem);
  }

  /** Another key for this song in the set list; the song itself keeps its own. */
  async inKey(key: string | null): Promise<void> {
    const { evening, songbook, notices } = this.#app;
    const { list, current } = evening;
    if (!list || !current) return;
    const { index, set, song } = current;
    evening.inKey(key);
    const to =
      (wanted: string | null): ShelfEdit =>
      (shelf) => {
        const now = setListOf(shelf, list.id);
        return now ? withSetList(shelf, withSongChanged(now, index, { key: wanted })) : shelf;
      };
    const problem: Problem | null = await songbook.shelf.edit(to(key));
    if (problem) notices.complain(problem);
    else {
      songbook.history.record({
        says: words.songbook.steps.eveningKey(song.title),
        undo: () => songbook.shelf.edit(to(set.key)),
        redo: () => songbook.shelf.edit(to(key)),
      });
    }
  }
}
