/**
 * Every word that a player reads on the screen, in one file: a translation is another file of this
 * type. What has a number or a name in it is a function, so that a language can put it where it
 * belongs and choose its own plural. Source: our own words; terms of the trade are common practice,
 * no published source.
 */
export const words = {
  /** Names that stand on every screen. */
  app: {
    name: "Shortslide",
  },
  /** The player's own hand, as their marks tell it. */
  ownHand: {
    mine: "Mine",
    asMarksTell: (fiveFretsMs: number): string =>
      `As your marks tell: five frets in about ${fiveFretsMs} ms.`,
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
