import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { type Bpm, bpm } from "../units.ts";
import { itemId } from "./itemId.ts";
import type { Due, Item, Minutes, Reason, SessionPlan, SessionStep, Stage } from "./practice.ts";
import { stages } from "./standing.ts";

/** Something to work on, and where to begin with it. */
export type Work = {
  readonly item: Item;
  /** The stage to begin with; each further time one stage on. */
  readonly stage: Stage;
  /** The fastest it was played clean in that stage, in beats of the meter a minute; null for never. */
  readonly tempo: Bpm | null;
};

/** What a guided rehearsal is made of. */
export type Material = {
  readonly minutes: Minutes;
  /** A whole number: the same one gives the same order. */
  readonly seed: number;
  /** What the song is to be played at in the end; nothing is asked to be faster. Above 0. */
  readonly goal: Bpm;
  /** What the whole song can be played at now; above the goal it is the goal. */
  readonly songTempo: Bpm;
  /** What needs work, that which needs it most first. */
  readonly trouble: readonly Work[];
  /** What is to be seen again, the most overdue first. */
  readonly due: readonly Due[];
};

/** The hands rest a minute in five: five minutes in half an hour, widely advised, not tried in studies. */
const PART_SECONDS = 300;
const REST_SECONDS = 60;
/** A block is about so long, so that no change is drilled for long. A design choice. */
const BLOCK_SECONDS = 60;
/** The whole song at the end. */
const SONG_SECONDS = 120;
/** Each item of a session comes up at least so often. */
const TIMES = 2;

/** The tempo to begin a stage with and the one to come to in it, as shares of the goal. A design choice. */
const shares: Readonly<Record<Stage, { readonly start: number; readonly goal: number }>> = {
  slide: { start: 0.6, goal: 1 },
  slow: { start: 0.5, goal: 0.8 },
  tempo: { start: 0.7, goal: 1 },
  song: { start: 0.8, goal: 1 },
};

/** Begins a little below what has been clean, so that the first rounds succeed. A design choice. */
const EASIER = 0.9;

/**
 * The tempo that a stage begins with and the one it leads to, in whole beats a minute where the goal
 * is not slower than that: from what has been played clean (null for nothing), else from a share of
 * the goal; never above it.
 * @example tempoOfStage("slow", 100, null) // => { start: 50, goal: 80 }
 * @example tempoOfStage("tempo", 100, 95) // => { start: 86, goal: 100 }
 */
export const tempoOfStage = (
  stage: Stage,
  goal: Bpm,
  clean: Bpm | null,
): { readonly start: Bpm; readonly goal: Bpm } => {
  const share = shares[stage];
  const top = Math.min(goal, Math.max(1, Math.round(goal * share.goal)));
  const own = Math.max(goal * share.start, clean === null ? 0 : clean * EASIER);
  return { start: bpm(Math.min(top, Math.max(1, Math.round(own)))), goal: bpm(top) };
};

type Entry = Work & { readonly why: Reason };

/** Whole seconds in so many parts as even as can be, the longer ones first. */
const shared = (seconds: number, parts: number): readonly number[] =>
  Array.from(
    { length: parts },
    (_, index) => Math.floor(seconds / parts) + (index < seconds % parts ? 1 : 0),
  );

/** Lengths of the blocks in each part between rests; the last part leaves time for the song. */
const blocksOf = (minutes: Minutes): readonly (readonly number[])[] => {
  const parts = (minutes * 60) / PART_SECONDS;
  return Array.from({ length: parts }, (_, index) => {
    const seconds = PART_SECONDS - (index === parts - 1 ? SONG_SECONDS : REST_SECONDS);
    return shared(seconds, Math.round(seconds / BLOCK_SECONDS));
  });
};

/** Each item once, due ones and trouble in turn, until there is no more room. */
const chosen = ({ due, trouble }: Material, room: number): readonly Entry[] => {
  const found = new Map<string, Entry>();
  for (let at = 0; at < Math.max(due.length, trouble.length); at += 1) {
    const [again, hard] = [due[at], trouble[at]];
    const pair: readonly Entry[] = [
      ...(again ? [{ ...again, why: "due" as const }] : []),
      ...(hard ? [{ ...hard, why: "trouble" as const }] : []),
    ];
    for (const entry of pair) {
      const id = itemId(entry.item);
      if (!found.has(id) && found.size < room) found.set(id, entry);
    }
  }
  return [...found.values()];
};

/**
 * So many items in turn: every item once in an order by chance, then all of them again in another,
 * never one twice running.
 */
const inTurn = (pool: readonly Entry[], count: number, seed: number): readonly Entry[] => {
  const chance = xoroshiro128plus(seed);
  const order: Entry[] = [];
  while (order.length < count) {
    const left = [...pool];
    while (left.length > 0) {
      const last = order.at(-1);
      const free = left.filter((entry) => entry !== last || left.length === 1);
      const pick = free[uniformInt(chance, 0, free.length - 1)];
      if (!pick) break;
      left.splice(left.indexOf(pick), 1);
      order.push(pick);
    }
  }
  return order.slice(0, count);
};

const wholeSong = (songTempo: Bpm): Entry => ({
  item: { kind: "song" },
  stage: "song",
  tempo: songTempo,
  why: "song",
});

type PlayStep = Extract<SessionStep, { readonly kind: "play" }>;

/** What is played of an item when it comes up for the `time`th time, from 0. */
const stepOf = (
  entry: Entry,
  time: number,
  lasts: number,
  { goal, songTempo }: Material,
): PlayStep => {
  const { item, why } = entry;
  if (why === "song") {
    const tempo = bpm(Math.min(goal, songTempo));
    return { kind: "play", item, stage: "song", why, start: tempo, goal: tempo, lasts };
  }
  const stage = stages[Math.min(stages.indexOf(entry.stage) + time, stages.length - 1)] ?? "song";
  const clean = stage === entry.stage ? entry.tempo : null;
  return { kind: "play", item, stage, why, ...tempoOfStage(stage, goal, clean), lasts };
};

/**
 * A guided rehearsal: short blocks on several items in turn, each further along whenever it comes up
 * again, a minute's rest for the hands in every five, the whole song at the end. Every item that is in
 * it comes at least twice; those for which there is no time are not in it. Mixing has helped where
 * studies found a difference, and several found none (Carter and Grahn, Front. Psychol. 7, 2016): it
 * is chosen because it does no harm and tires a hand less. The steps last exactly `minutes`; the same
 * material gives the same plan.
 */
export const compose = (material: Material): SessionPlan => {
  const { minutes, seed, songTempo } = material;
  const parts = blocksOf(minutes);
  const blocks = parts.flat();
  const song = wholeSong(songTempo);
  const found = chosen(material, Math.floor(blocks.length / TIMES));
  const pool = found.length > 1 ? found : [...found, song];
  const order = inTurn(pool, blocks.length, seed);
  const times = new Map<Entry, number>();
  const played = order.map((entry, index) => {
    const time = times.get(entry) ?? 0;
    times.set(entry, time + 1);
    return stepOf(entry, time, blocks[index] ?? 0, material);
  });
  let at = 0;
  const steps = parts.flatMap((lengths, index): readonly SessionStep[] => {
    const own = played.slice(at, at + lengths.length);
    at += lengths.length;
    const isLast = index === parts.length - 1;
    return isLast
      ? [...own, stepOf(song, 0, SONG_SECONDS, material)]
      : [...own, { kind: "rest", lasts: REST_SECONDS }];
  });
  return { minutes, steps };
};
