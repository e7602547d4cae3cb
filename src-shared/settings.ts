import * as v from "valibot";
import { type Rebindings, rebindingsSchema } from "./control/bindings.ts";
import { type NeckLook, neckLookSchema, usualNeckLook } from "./neck/neckLook.ts";
import { type HandAnswer, handAnswerSchema, noAnswer } from "./practice/ownHand.ts";
import { type Picking, pickingSchema, plainPicking } from "./roll/picking.ts";
import type { HandName } from "./route/handTable.ts";
import type { Pin } from "./route/pins.ts";
import type { Aim } from "./route/route.ts";
import {
  type Feel,
  feelSchema,
  type Practice,
  practiceSchema,
  usualFeel,
  usualPractice,
} from "./score/band.ts";
import type { ShapeName, StringSet } from "./voicing/voicing.ts";

/** What the planner may choose from and what it makes small. Complete: nothing here is optional. */
export type PlanSettings = {
  /** Key to play in, as a chart's Key header writes it ("A", "Bm"); null is the chart's own. */
  readonly playKey: string | null;
  readonly aim: Aim;
  /** At least one. */
  readonly shapes: readonly ShapeName[];
  /** Lowest and highest fretted fret allowed, both included, counted from the nut. */
  readonly fretLow: number;
  readonly fretHigh: number;
  /** The strings that are played. */
  readonly strings: StringSet;
  /** The last chord leads back to the first, and that change counts too. */
  readonly goesRound: boolean;
  /** How many voicings one chord takes in turn where it lasts two measures or more. */
  readonly perChord: 1 | 2;
  /** Every place of the chart is held the same each time it is played. */
  readonly alike: boolean;
  /** How fast the player's hand moves. */
  readonly hand: HandName;
  readonly pins: readonly Pin[];
};

/** All aims, the usual one first. */
export const aims: readonly Aim[] = [
  "ease",
  "steady",
  "travel",
  "region",
  "climb",
  "fall",
  "variety",
];

/** All sets of strings, the usual one first. */
export const stringSets: readonly StringSet[] = ["3-2-1", "4-3-2", "4-3-2-1"];

/** All hands that are somebody's, the slowest first, and the usual one without the player's own. */
export const handNames: readonly HandName[] = ["learner", "default", "skilled", "usual"];

/** What is kept with a song beside its chart text. */
export type SongSettings = {
  readonly version: 1;
  readonly plan: PlanSettings;
  readonly picking: Picking;
  readonly feel: Feel;
  readonly practice: Practice;
  /** Tempo to practise at, in beats of the song's meter per minute, 15 to 320; null is the chart's own. */
  readonly playTempo: number | null;
  readonly countInBars: 0 | 1 | 2;
  /** 0-based bars of the song as played, both included; null plays the whole song. */
  readonly loop: { readonly firstBar: number; readonly lastBar: number } | null;
  /** What a teacher says to the song; stands on its hand-out. At most MOST_NOTES characters. */
  readonly notes: string;
};

/** The longest notes to a song, in characters: two closely written pages. */
export const MOST_NOTES = 8000;

/** The sounding parts a player can set the level of. */
export type MixPart = "banjo" | "bass" | "guitar" | "chop" | "click";

/** One part's place in the mix. */
export type Level = {
  /** From 0 (silent) to 1 (full). */
  readonly volume: number;
  readonly muted: boolean;
  /** Where any part has this, only those that have it are heard. */
  readonly solo: boolean;
  /** From -1 (left) to 1 (right). */
  readonly pan: number;
};

/** What is kept for the player, whatever the song. */
export type Preferences = {
  readonly version: 1;
  readonly theme: "system" | "light" | "dark";
  readonly mix: Readonly<Record<MixPart, Level>>;
  /** Tempos are shown in beats of the song's meter (half notes in 2/2), or always in quarters. */
  readonly tempoIn: "beats" | "quarters";
  /** The player has read the caution about loudness and strain. */
  readonly cautionRead: boolean;
  readonly neckLook: NeckLook;
  /** How wide time is drawn on the lanes; 1 is usual. */
  readonly laneZoom: number;
  /** Keys, pedals and MIDI switches that do something else than usual. */
  readonly bindings: Rebindings;
  /** MIDI controllers are listened to. */
  readonly midi: boolean;
  /** The next change is told to a screen reader a bar before it is due. */
  readonly announce: boolean;
  /** The player's own hand, and what they said of it. */
  readonly hand: HandAnswer;
  /** What the songbook is sorted by. */
  readonly songSort: SongSort;
};

/** What songs can be sorted by; `changed` and `opened` with the last one first. */
export type SongSort = "title" | "key" | "tempo" | "changed" | "opened";

/** All that songs can be sorted by, the usual first. */
export const songSorts: readonly SongSort[] = ["title", "key", "tempo", "changed", "opened"];

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const stop = v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(22)));

const pin = v.object({
  kind: v.picklist(["hold", "avoid"]),
  bar: count,
  eighth: count,
  time: v.nullable(count),
  chord: v.pipe(v.string(), v.maxLength(24)),
  frets: v.strictTuple([stop, stop, stop, stop, stop]),
});

const planSettings = v.object({
  playKey: v.nullable(v.pipe(v.string(), v.maxLength(8))),
  aim: v.picklist(aims),
  shapes: v.pipe(v.array(v.picklist(["F", "D", "barre"])), v.minLength(1), v.maxLength(3)),
  fretLow: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(22)),
  fretHigh: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(22)),
  strings: v.picklist(stringSets),
  goesRound: v.boolean(),
  perChord: v.picklist([1, 2]),
  alike: v.boolean(),
  hand: v.picklist(handNames),
  pins: v.pipe(v.array(pin), v.maxLength(5000)),
});

/** A new song's picking on the screen: the open fifth string may cover a hard change. */
const newSongPicking: Picking = { ...plainPicking, fifth: "cover" };

/**
 * Checks a song's settings as they come from disk or over the wire. What songs kept by an earlier
 * version do not have yet is as in a new song.
 */
export const songSettingsSchema: v.GenericSchema<unknown, SongSettings> = v.object({
  version: v.literal(1),
  plan: planSettings,
  picking: v.optional(pickingSchema, newSongPicking),
  feel: v.optional(feelSchema, usualFeel),
  practice: v.optional(practiceSchema, usualPractice),
  playTempo: v.nullable(v.pipe(v.number(), v.minValue(15), v.maxValue(320))),
  countInBars: v.picklist([0, 1, 2]),
  loop: v.nullable(v.object({ firstBar: count, lastBar: count })),
  notes: v.optional(v.pipe(v.string(), v.maxLength(MOST_NOTES)), ""),
});

const level = v.object({
  volume: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  muted: v.boolean(),
  solo: v.optional(v.boolean(), false),
  pan: v.optional(v.pipe(v.number(), v.minValue(-1), v.maxValue(1)), 0),
});

const plainLevel = (volume: number): Level => ({ volume, muted: false, solo: false, pan: 0 });

/** Everything audible, the rhythm section under the banjo. */
const firstMix: Preferences["mix"] = {
  banjo: plainLevel(0.8),
  bass: plainLevel(0.7),
  guitar: plainLevel(0.5),
  chop: plainLevel(0.6),
  click: plainLevel(0.5),
};

/** Checks the player's preferences as they come from disk or over the wire. */
export const preferencesSchema: v.GenericSchema<unknown, Preferences> = v.object({
  version: v.literal(1),
  theme: v.picklist(["system", "light", "dark"]),
  mix: v.object({
    banjo: level,
    bass: level,
    guitar: v.optional(level, firstMix.guitar),
    chop: level,
    click: level,
  }),
  tempoIn: v.optional(v.picklist(["beats", "quarters"]), "beats"),
  cautionRead: v.boolean(),
  neckLook: v.optional(neckLookSchema, usualNeckLook),
  laneZoom: v.optional(v.pipe(v.number(), v.minValue(0.25), v.maxValue(4)), 1),
  bindings: v.optional(rebindingsSchema, []),
  midi: v.optional(v.boolean(), false),
  announce: v.optional(v.boolean(), false),
  hand: v.optional(handAnswerSchema, noAnswer),
  songSort: v.optional(v.picklist(songSorts), "title"),
});

/** The planner let loose on the whole neck: what the command line starts from. */
export const wholeNeckPlan: PlanSettings = {
  playKey: null,
  aim: "ease",
  shapes: ["F", "D", "barre"],
  fretLow: 1,
  fretHigh: 22,
  strings: "3-2-1",
  goesRound: false,
  perChord: 1,
  alike: false,
  hand: "default",
  pins: [],
};

/**
 * A new song's settings on the screen: up to fret 17, where a closed shape still sounds full, and
 * round and round as a jam plays it.
 */
export const newSongSettings: SongSettings = {
  version: 1,
  plan: { ...wholeNeckPlan, fretHigh: 17, goesRound: true },
  picking: newSongPicking,
  feel: usualFeel,
  practice: usualPractice,
  playTempo: null,
  countInBars: 1,
  loop: null,
  notes: "",
};

/** A player's first preferences. */
export const firstPreferences: Preferences = {
  version: 1,
  theme: "system",
  mix: firstMix,
  tempoIn: "beats",
  cautionRead: false,
  neckLook: usualNeckLook,
  laneZoom: 1,
  bindings: [],
  midi: false,
  announce: false,
  hand: noAnswer,
  songSort: "title",
};
