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

  /** Tags, set lists and removed songs as the machine keeps them, and what goes wrong with them. */
  shelf: {
    damaged: "The file of your tags and set lists was damaged.",
    damagedTry: (aside: string): string =>
      `It is kept as ${aside}. Your songs are all there; put them in order anew.`,
    newer: (path: string): string => `${path} was written by a later Shortslide than this one.`,
    newerTry: "Bring this Shortslide up to date. Nothing was changed in the file.",
    changed: "Tags or set lists were changed elsewhere at the same time.",
    changedTry: "Look at them as they are now, then try again.",
    settingsChanged: "This song's settings were changed elsewhere.",
    noFile: (name: string): string => `“${name}” could not be opened.`,
  },

  /** A file of shared songs. */
  shared: {
    notJson: "This file of songs is cut off or damaged: it is not JSON.",
    noMark: "This file holds no shared songs: it has no “shortslide”.",
    newer: "This file was made by a later Shortslide than this one.",
    newerTry: "Bring this Shortslide up to date, then open the file again.",
    again: "Ask for the file again; nothing was brought in from this one.",
    file: "This file",
    song: (number: number, inner: string): string => `Song ${number}${inner}`,
    pattern: (number: number, inner: string): string => `Pattern ${number}${inner}`,
    inner: (path: string): string => `, “${path}”,`,
    wrong: (where: string): string => `${where} is not as it must be.`,
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
