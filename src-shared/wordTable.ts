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

  /** The printed hand-out, and where it is chosen. */
  handOut: {
    untitled: "Untitled",
    contents: "Contents",
    songs: "Songs",
    key: (tonic: string, mode: string): string => `Key of ${tonic} ${mode}`,
    tempo: (tempo: number, notes: string): string => `${tempo} ${notes} a minute`,
    tuning: (name: string, strings: string): string => `${name} tuning (${strings})`,
    capo: (fret: number, fifth: number): string => `capo ${fret}, 5th string at ${fifth}`,
    noChord: "N.C.",
    notes: "Notes",
    shapes: "Shapes",
    shapesHint: "In the order they come. Frets from the nut; a ring marks the root.",
    oneBar: (bar: number): string => `bar ${bar}`,
    fromBar: (bar: number, times: number): string => `from bar ${bar}, ${times} times`,
    shapeAt: (shape: string, fret: number): string => `${shape}, fret ${fret}`,
    road: "The song",
    roadHint: "How high the hand is, bar by bar. Figures are frets.",
    sameAs: (from: number, to: number): string =>
      from === to ? `as bar ${from}` : `as bars ${from} to ${to}`,
    tablature: "Tablature",
    straightThrough: "Straight through, as it is played",
    tabSigns:
      "T thumb, I index, M middle. Slanted line: slide. Brackets: let go early. Dot: stop at once. Wedge: louder.",
    barsTo: (from: number, to: number): string =>
      from === to ? `bar ${from}` : `bars ${from} to ${to}`,
    changes: "All changes",
    changesHint: "In the order they come, each once",
    change: (from: string, to: string): string => `${from} to ${to}`,
    backToStart: "back to the start",
    bars: "Bars",
    inBars: (bars: string): string => (/^\d+$/.test(bars) ? `Bar ${bars}` : `Bars ${bars}`),
    chords: "Chords",
    hand: "The hand",
    inTime: "In time",
    upTo: "Up to",
    anyTempo: "any tempo",
    andMore: (count: number): string => `and ${count} more`,
    trouble: "The hardest changes",
    troubleHint: "Hardest first. Stop at pain; rest often.",
    noTrouble: "Nothing moves: the hand stays where it is.",
    needs: (need: number, window: number): string => `Needs ${need} of ${window} ms`,
    fastest: (tempo: number): string => `up to ${tempo}`,
    drillSlide: (from: string, to: string): string =>
      `No roll: ${from} on one, slide, ${to} on the next one. Then back.`,
    drillSlow: "With the roll, slowly; every round clean.",
    drillSong: "In the song, from the bar before.",
    drillTempos: "Clean at",
    noRoute: "No route was found within the settings, so the hand has no places and no tablature.",
    name: "Hand-out",
    open: "Hand-out…",
    holds: "Pages for a student, to print or as a PDF",
    about: "What you see is what is printed.",
    paper: "Paper",
    papers: { a4: "A4", letter: "Letter" },
    layout: "Pages",
    layouts: { full: "Full tablature", overview: "Overview", practice: "Practice" },
    parts: "On the pages",
    partNames: {
      notes: "Your notes",
      shapes: "Shapes",
      road: "The song bar by bar",
      trouble: "Hardest changes",
      tablature: "Tablature",
      changes: "All changes",
    },
    yourNotes: "Notes for the student",
    notesHint: "Kept with the song.",
    preview: "Preview",
    page: (page: number, pages: number): string => `Page ${page} of ${pages}`,
    before: "Page before",
    after: "Next page",
    laying: "Setting the pages…",
    print: "Print",
    savePdf: "Save PDF",
    writing: "Writing the PDF",
    cancel: "Cancel",
    close: "Close",
    saved: (file: string): string => `“${file}” is with your downloads.`,
    failed: (reason: string): string =>
      `The pages could not be made: ${reason} Close this and try again; the song is kept.`,
    empty: "This song has no bars yet. Write its changes in the chart, then come back.",
    ofPages: (page: number, pages: number): string => `${page} of ${pages}`,
    missingSigns: (signs: string): string =>
      `The printed fonts lack ${signs}; a question mark stands there.`,
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
