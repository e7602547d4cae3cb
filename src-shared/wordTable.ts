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
    title: "Your hand",
    what: "How fast a hand moves decides which changes can be made in time. Your marks of single changes tell how fast yours does.",
    tooFew: (least: number, ofAKind: number, clean: number, notYet: number): string =>
      `A proposal takes ${least} marks of single changes, at least ${ofAKind} of them clean and ${ofAKind} not yet. So far: ${clean} clean, ${notYet} not yet.`,
    found: (marks: number): string => `Your hand, from ${marks} marks`,
    fiveFrets: "Five frets up",
    start: "To start",
    perBit: "For each bit of difficulty",
    estimate: (value: number, give: number): string => `${value} ms ± ${give}`,
    sure: "The true value lies within these limits about nine times in ten, if the marks are honest.",
    inUse: (own: boolean, fiveFretsMs: number): string =>
      `In use now: ${own ? "your hand" : "the usual hand"}, five frets in about ${fiveFretsMs} ms.`,
    fits: "That is the hand in use, as far as the marks can tell.",
    use: "Use my hand",
    refuse: "Not now",
    useAfterAll: "Use it after all",
    refused: "You said no to this. There is another proposal after more marks.",
    back: "Back to the usual hand",
    accepted: "Your hand is in use: routes and ceilings go by it.",
    wentBack: "The usual hand is in use again.",
    undo: "Undo",
  },
  /** What was practised, as pictures and as a list. */
  progress: {
    place: "Progress",
    log: "Practice log",
    reading: "Reading the practice log…",
    tryAgain: "Try again",
    empty: "Nothing is in the log yet",
    emptyHow:
      "Rehearse a song, or one change of it: every round that you play is written down here, with its tempo and your mark.",
    toSongbook: "To the songbook",
    passedOver: (damaged: number, newer: number): string =>
      [
        damaged === 1 ? "One line of the log is damaged and was passed over." : "",
        damaged > 1 ? `${damaged} lines of the log are damaged and were passed over.` : "",
        newer > 0 ? `${newer} were written by a later Shortslide.` : "",
      ]
        .filter((part) => part !== "")
        .join(" "),
    show: "Show",
    everything: "Everything",
    weeks: "Minutes a week",
    minutes: "Minutes",
    weekOf: "Week from",
    thisWeek: "this week",
    weekSays: (from: string, minutes: number): string => `Week from ${from}: ${minutes} minutes`,
    tempos: "Tempo from day to day",
    temposWhat: "The fastest round of each day. The bare slide is counted apart.",
    clean: "Clean",
    notYet: "Not yet",
    unmarked: "Not marked",
    tried: "Fastest tried",
    fastestClean: "Fastest clean",
    none: "none",
    day: "Day",
    asTable: "As a table",
    pictureSays: (what: string, from: number, to: number, days: number): string =>
      `${what}: fastest clean tempo from ${from} to ${to}, on ${days} days`,
    pictureNone: (what: string): string => `${what}: no clean round yet`,
    showAll: (count: number): string => `Show all ${count}`,
    moved: "What moved in four weeks",
    movedNothing: "Nothing yet: it takes a clean round on two days, at two tempos.",
    movedBy: (what: string, before: number, now: number, beats: string): string =>
      `${what}: from ${before} to ${now} ${beats} a minute`,
    rounds: "Rounds",
    more: (count: number): string => `Show ${count} more`,
    deleteRound: (what: string, when: string): string => `Delete: ${what}, ${when}`,
    deleted: "The round is deleted.",
    undo: "Undo",
    saveCsv: "Save as a table (CSV)",
    csvName: "practice-log.csv",
    csvHeads: ["When (UTC)", "Song", "What", "Stage", "Tempo", "Tempo counts", "Mark", "Seconds"],
    change: (from: string, fromFret: number, to: string, toFret: number): string =>
      `${from} at ${fromFret} to ${to} at ${toFret}`,
    bars: (first: number, last: number): string =>
      first === last ? `Bar ${first}` : `Bars ${first} to ${last}`,
    wholeSong: "Whole song",
    bare: (what: string): string => `${what}, bare slide`,
    stages: {
      slide: "Bare slide",
      slow: "Slowly, with the roll",
      tempo: "Up to tempo",
      song: "In the song",
    },
    aMinute: (tempo: number, beats: string): string => `${tempo} ${beats} a minute`,
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
