import { readChart } from "../../src-shared/chart/readChart.ts";
import type { Answer } from "../../src-shared/host.ts";
import { given } from "./answer.ts";
import { bareNameFrom } from "./fileName.ts";
import type { Songbook } from "./songbook.ts";

/** A name as Shortslide makes them: what a player called by hand is left alone. */
const OURS = /^[a-z0-9]+(?:-[a-z0-9]+)*$/u;

/** What a chart without a title is called when it is read. */
const NO_TITLE = "untitled";

/** Whether a name is what a title gives, or that with a number after it. */
const follows = (id: string, wish: string): boolean =>
  id === wish || (id.startsWith(`${wish}-`) && /^\d+$/u.test(id.slice(wish.length + 1)));

/**
 * Lets a song's files be called by its title. The song goes through the shelf of removed songs, so
 * that wherever this is broken off it is in the songbook or on that shelf, whole.
 */
export const settleSong = async (
  songbook: Songbook,
  id: string,
): Promise<Answer<{ readonly id: string }>> => {
  const song = await songbook.read(id);
  if (!song.ok) {
    return song;
  }
  const { title } = readChart(song.value.text).value;
  const wish = bareNameFrom(title);
  if (wish === NO_TITLE || !OURS.test(id) || follows(id, wish)) {
    return given({ id });
  }
  const removed = await songbook.remove(id);
  if (!removed.ok) {
    return removed;
  }
  const settled = await songbook.restore(removed.value.ticket, wish);
  return settled.ok ? given({ id: settled.value.id }) : settled;
};
