import { type Tick, tick } from "../units.ts";
import type { Feel, Practice } from "./band.ts";
import { bouncedTick } from "./bounce.ts";
import { levelOff, type PlayerName, ticksOff } from "./looseness.ts";
import { inMix } from "./practiceMix.ts";
import type { Hit, Note, Score } from "./score.ts";
import { indexAt } from "./window.ts";

/** How a written score is to sound. */
export type Performance = {
  readonly feel: Pick<Feel, "bounce" | "human">;
  readonly practice: Pick<Practice, "mix">;
};

/** Where a stroke is heard, and how loud beside what is written. */
type Heard = { readonly tick: Tick; readonly level: number };

/** Where each stroke of a list in order of tick is heard. The click is exact. */
const heardAt = (
  strokes: readonly { readonly player: PlayerName; readonly tick: Tick }[],
  { bars, meter }: Score,
  { bounce, human }: Performance["feel"],
): readonly Heard[] => {
  const latest = new Map<PlayerName, Tick>();
  return strokes.map(({ player, tick: at }) => {
    const index = indexAt(bars, at);
    const bar = bars[index];
    if (!bar || player === "click") {
      return { tick: at, level: 1 };
    }
    const place = { player, bar: index, into: at - bar.start };
    const loose = bouncedTick(at, bounce, meter) + ticksOff(place, human);
    const inBar = Math.max(bar.start, Math.min(loose, bar.start + bar.length - 1));
    const heard = tick(Math.max(inBar, latest.get(player) ?? inBar));
    latest.set(player, heard);
    return { tick: heard, level: levelOff(place, human) };
  });
};

/** A note struck at `from`; `cut` is where its string is struck again, if that is what ends it. */
const performedNote = (
  note: Note,
  from: Tick,
  cut: Tick | null,
  bounced: (at: Tick) => Tick,
): Note => {
  const until = tick(Math.max(from + 1, cut ?? bounced(note.until)));
  const written = tick(note.tick + note.ticks);
  const ticks = tick(Math.max(1, bounced(written) - bounced(note.tick)));
  const { glide } = note;
  if (!glide) {
    return { ...note, tick: from, ticks, until };
  }
  const start = tick(Math.max(from + 1, bounced(glide.start)));
  const arrives = bounced(glide.end);
  const end = glide.end <= note.until ? tick(Math.min(arrives, until)) : arrives;
  return {
    ...note,
    tick: from,
    ticks,
    until,
    glide: start < end ? { ...glide, start, end } : null,
  };
};

const performedNotes = (score: Score, feel: Performance["feel"]): readonly Note[] => {
  const { notes, meter } = score;
  const bounced = (at: Tick): Tick => bouncedTick(at, feel.bounce, meter);
  const heard = heardAt(
    notes.map((note) => ({ player: "banjo", tick: note.tick })),
    score,
    feel,
  );
  const next = new Map<Note["string"], { readonly written: Tick; readonly heard: Tick }>();
  return notes
    .map((note, index) => ({ note, from: heard[index]?.tick ?? note.tick }))
    .toReversed()
    .map(({ note, from }) => {
      const again = next.get(note.string);
      next.set(note.string, { written: note.tick, heard: from });
      const isCut = again !== undefined && note.until >= again.written;
      return performedNote(note, from, isCut ? again.heard : null, bounced);
    })
    .toReversed();
};

/** A hit is damped where it is written to be, however early or late it was struck. */
const performedHits = (score: Score, feel: Performance["feel"]): readonly Hit[] => {
  const { hits, meter } = score;
  const heard = heardAt(
    hits.map((hit) => ({ player: hit.part, tick: hit.tick })),
    score,
    feel,
  );
  return hits
    .map((hit, index): Hit => {
      const { tick: from, level } = heard[index] ?? { tick: hit.tick, level: 1 };
      const end = bouncedTick(tick(hit.tick + hit.ticks), feel.bounce, meter);
      return {
        ...hit,
        tick: from,
        ticks: tick(Math.max(1, end - from)),
        level: hit.level * level,
      };
    })
    .toSorted((one, other) => one.tick - other.tick);
};

/**
 * The score as it is to sound: who plays, the bounce, and each player a little off the grid, the same
 * on every run. A stroke never leaves its bar, so that it starts with its loop and within the song;
 * each player's strokes keep their order; meter, length and bars stay. With even eighths, exact timing
 * and everyone playing it is the score as given.
 */
export const perform = (score: Score, { feel, practice }: Performance): Score => {
  const played = inMix(score, practice.mix);
  return { ...played, notes: performedNotes(played, feel), hits: performedHits(played, feel) };
};
