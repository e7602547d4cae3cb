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
  /** What is kept on the disk: damage, earlier versions, what could not be saved. */
  keeping: {
    again: "Try again",
    chartTooLong: (path: string): string => `The chart ${path} is too long to open.`,
    shortenChart: "Shorten it in a text editor.",
    chartNotText: (path: string): string => `The chart ${path} is damaged: it is not UTF-8 text.`,
    chartEmpty: (path: string): string =>
      `The chart ${path} is damaged: nothing is in it any more.`,
    chartCut: (path: string): string =>
      `The chart ${path} is damaged: it ends in the middle of a line.`,
    mendChart: "Open the last good version; the damaged file is kept beside it.",
    mendOrConvert:
      "Open what can be read of it; the file is kept beside it. Or save it as UTF-8 in a text editor.",
    openLastGood: "Open the last good version",
    chartMended: "This is the last good version of the chart.",
    chartGuessed: "This is what can be read of the chart. See that every letter is right.",
    keptAside: (path: string): string => `The damaged file is kept as ${path}.`,
    settingsDamaged: (song: string, found: boolean): string =>
      `What is kept beside the chart of “${song}” (tempo, route, picking) was damaged. ${
        found ? "The last good state is back." : "The song starts with the usual ones."
      }`,
    preferencesDamaged: (found: boolean): string =>
      `Your preferences were damaged. ${found ? "The last good ones are back." : "They start anew."}`,
    patternsDamaged: "The file of your own patterns was damaged. The last good ones are back.",
    noSuchVersion: "This version is no longer kept.",
    chooseAnother: "Choose another one.",
    versions: "Earlier versions",
    versionsAbout: (song: string): string => `Earlier versions of “${song}”`,
    versionsKept:
      "What was there a minute ago or more: the last ten, then one an hour for two days, one a day for ninety.",
    noVersions: "There is no earlier version yet. One is kept when you go on writing.",
    loadingVersions: "Looking for earlier versions…",
    chooseVersion: "Choose a version to see what is different in it.",
    sameChart: "Its chart is the same as now; its route or picking may differ.",
    bringBack: "Bring it back",
    broughtBack: "The earlier version is back. Undo brings yours back.",
    close: "Close",
    differs: (back: number, away: number): string => {
      const lines = (count: number): string => `${count} ${count === 1 ? "line" : "lines"}`;
      const parts = [
        ...(back > 0 ? [`brings back ${lines(back)}`] : []),
        ...(away > 0 ? [`takes away ${lines(away)}`] : []),
      ];
      return parts.length === 0 ? "" : `It ${parts.join(" and ")}.`;
    },
    comesBack: "Comes back:",
    goesAway: "Goes away:",
    sameLines: (count: number): string => `${count} ${count === 1 ? "line" : "lines"} the same`,
    differences: "What is different",
  },
  /** What the desktop's window asks by itself. */
  window: {
    crashed: "The screen stopped working.",
    crashedDetail: (reason: string): string => `Saved charts are safe. (${reason})`,
    openAgain: "Open it again",
    quit: "Quit",
    notSaved: "Something is not saved yet.",
    notSavedDetail: "The screen says why. If you close the window now, your last changes are lost.",
    stay: "Stay",
    leave: "Close without saving",
    broken: "Something went wrong inside Shortslide",
    brokenDetail: (what: string): string =>
      `${what}. It is in the log. Saved charts are safe; if something does not work, start again.`,
  },
  /** Opening the screen in the browser. */
  opening: {
    used: "This address was used before.",
    usedTwice:
      "Someone else may have opened it on this computer. What they were given does not work any more. Start Shortslide again.",
    expired: "This address is too old.",
    openPrinted: "Open the address that Shortslide printed when it started.",
  },
  /** What went wrong, and the log. */
  trouble: {
    wrong: (what: string): string => `Something went wrong inside Shortslide: ${what}`,
    songKept: "Your song is kept. Go on; if something does not work, load the page again.",
    showLog: "Show log",
    log: "Log",
    logAbout: "What went wrong on this computer, the newest last. It stays here.",
    logEmpty: "Nothing has gone wrong so far.",
    logAt: (path: string): string => `Kept in ${path}`,
    logNotRead: "The log cannot be read.",
    copy: "Copy",
    copied: "Copied.",
    notCopied: (reason: string): string => `It could not be copied: ${reason}.`,
    copyByHand: "Select the text and copy it by key.",
    boundary: "Your song is kept. Try again, or go back to the songbook.",
    close: "Close",
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
