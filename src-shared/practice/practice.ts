import type { Meter } from "../chart/song.ts";
import type { PerString } from "../neck/neck.ts";
import type { Bpm, Milliseconds } from "../units.ts";

/** A chord as it is held: its name as it sounds, and the frets of strings 1 to 5, null where not played. */
export type HeldChord = {
  readonly chord: string;
  readonly frets: PerString<number | null>;
};

/**
 * One move of the left hand, the same wherever a song makes it. Two of them are one where both chords
 * and all frets are the same.
 */
export type Change = {
  readonly kind: "change";
  readonly from: HeldChord;
  readonly to: HeldChord;
};

/** Some bars of a song as it is played, 0-based, both included. */
export type Passage = {
  readonly kind: "passage";
  readonly firstBar: number;
  readonly lastBar: number;
};

/** A song from its first bar to its last. */
export type WholeSong = { readonly kind: "song" };

/** Something to practise without a song, by the name that `exercises.ts` gives it. */
export type ExerciseItem = { readonly kind: "exercise"; readonly name: string };

/** What can be practised. The song it belongs to stands outside: an exercise has none. */
export type Item = Change | Passage | WholeSong | ExerciseItem;

/**
 * How an item is practised. `slide`: one chord, the slide, the other, without a roll; `slow`: with the
 * roll, below the goal; `tempo`: with the roll, up to the goal; `song`: with what comes before and
 * after it in the song.
 */
export type Stage = "slide" | "slow" | "tempo" | "song";

/** What the player says of a round. */
export type Mark = "clean" | "not-yet";

/**
 * What a change asks of the left hand: Fitts's bits (`difficultyBits`), how many fingers are formed
 * anew, and the longest time that the right hand leaves it in this round, in ms.
 */
export type Shift = {
  readonly bits: number;
  readonly reformed: number;
  readonly window: Milliseconds;
};

/** Something played once, from its first beat to its last. */
export type Round = {
  readonly item: Item;
  readonly stage: Stage;
  /** Above 0, in beats of the meter a minute; never above the goal it was played for. */
  readonly tempo: Bpm;
  /** What the tempo counts: 2 half notes, 4 quarters, 8 dotted quarters. */
  readonly unit: Meter["unit"];
  /** null where the player said nothing. */
  readonly mark: Mark | null;
  /** When it ended, in ms since 1970 (UTC). */
  readonly atMs: number;
  /** How long it sounded, in ms. */
  readonly lasted: Milliseconds;
  /** null where more than one change was played. */
  readonly shift: Shift | null;
};

/** Where rounds go when they have been played; `song` is null for an exercise. */
export type RoundSink = (song: string | null, round: Round) => void;

/** Something practised on an earlier day that is to be seen again, the most overdue first in a list. */
export type Due = {
  readonly item: Item;
  readonly stage: Stage;
  /** What it was last played clean at, in beats of the meter a minute; null where it never was. */
  readonly tempo: Bpm | null;
};

/** Why something stands in a session. */
export type Reason = "trouble" | "due" | "song";

/** How long a guided rehearsal may be, in minutes. */
export type Minutes = 10 | 20 | 30;

/** One part of a guided rehearsal. */
export type SessionStep =
  | {
      readonly kind: "play";
      readonly item: Item;
      readonly stage: Stage;
      readonly why: Reason;
      /** The tempo to begin with and the one to come to, in beats of the meter a minute. */
      readonly start: Bpm;
      readonly goal: Bpm;
      /** How long it is worked on, whole seconds, above 0. */
      readonly lasts: number;
    }
  | {
      /** The hands rest. */
      readonly kind: "rest";
      /** Whole seconds, above 0. */
      readonly lasts: number;
    };

/** A guided rehearsal: its steps together last exactly as long as was asked for. */
export type SessionPlan = {
  readonly minutes: Minutes;
  readonly steps: readonly SessionStep[];
};
