import * as v from "valibot";

/** The families of patterns there are; each has patterns for every meter and length. */
export type StyleName =
  | "forward"
  | "backward"
  | "forward-reverse"
  | "alternating-thumb"
  | "vamp"
  | "strum";

/** A family of patterns, or a pattern of the player's own by its name. */
export type Style = StyleName | `own:${string}`;

/**
 * How much of a pattern is played. `full`: every stroke; `beats`: those on the beats; `bars`: a
 * pinch at the start and on each bar line; `once`: one pinch for each chord.
 */
export type Density = "full" | "beats" | "bars" | "once";

/** How the right hand plays a stretch of the song. */
export type Manner = { readonly style: Style; readonly density: Density };

/** How a section is played, by its label, each time it comes. */
export type SectionPicking = {
  readonly label: string;
  /** null is the song's own manner. */
  readonly manner: Manner | null;
  /** Someone sings: one step sparser and softer. */
  readonly sung: boolean;
};

/** How one chord is played; its place is told as a pin tells it. */
export type StayPicking = {
  /** 0-based written bar in which it starts, and where in it, in eighth notes. */
  readonly bar: number;
  readonly eighth: number;
  /** Which time that bar is played, from 0; null every time. */
  readonly time: number | null;
  readonly chord: string;
  readonly manner: Manner;
};

/**
 * When a pattern may use the open fifth string, where it belongs to the chord: never; only where it
 * covers a change that is hard to make in time; wherever a pattern has it.
 */
export type FifthUse = "never" | "cover" | "always";

/** What the right hand plays in a song. Complete: nothing here is optional. */
export type Picking = {
  readonly song: Manner;
  readonly sections: readonly SectionPicking[];
  readonly stays: readonly StayPicking[];
  readonly fifth: FifthUse;
};

/** All families, the usual one first. */
export const styleNames: readonly StyleName[] = [
  "forward",
  "backward",
  "forward-reverse",
  "alternating-thumb",
  "vamp",
  "strum",
];

/** All densities, the fullest first. */
export const densities: readonly Density[] = ["full", "beats", "bars", "once"];

/** All uses of the fifth string, the least first. */
export const fifthUses: readonly FifthUse[] = ["never", "cover", "always"];

const count = v.pipe(v.number(), v.integer(), v.minValue(0));

const isStyle = (text: unknown): text is Style =>
  typeof text === "string" &&
  text.length <= 64 &&
  (text.startsWith("own:") || styleNames.some((name) => name === text));

const manner = v.object({ style: v.custom<Style>(isStyle), density: v.picklist(densities) });

/** Checks what the right hand plays as it comes from disk or over the wire. */
export const pickingSchema: v.GenericSchema<unknown, Picking> = v.object({
  song: manner,
  sections: v.pipe(
    v.array(
      v.object({
        label: v.pipe(v.string(), v.maxLength(200)),
        manner: v.nullable(manner),
        sung: v.boolean(),
      }),
    ),
    v.maxLength(500),
  ),
  stays: v.pipe(
    v.array(
      v.object({
        bar: count,
        eighth: count,
        time: v.nullable(count),
        chord: v.pipe(v.string(), v.maxLength(24)),
        manner,
      }),
    ),
    v.maxLength(5000),
  ),
  fifth: v.picklist(fifthUses),
});

/** Full forward rolls on the closed strings alone: what the command line starts from. */
export const plainPicking: Picking = {
  song: { style: "forward", density: "full" },
  sections: [],
  stays: [],
  fifth: "never",
};
