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

  /** The songbook: its list, tags, set lists, removed songs, and what is done with them. */
  songbook: {
    views: "What to look at",
    all: "All songs",
    recent: "Recent",
    tags: "Tags",
    setLists: "Set lists",
    removed: "Removed",
    newSetList: "New set list",
    sort: "Sort by",
    sorts: {
      title: "Title",
      key: "Key",
      tempo: "Tempo",
      changed: "Last changed",
      opened: "Last opened",
    },
    placeholder: "Title, key, tempo, chord or tag",
    songs: (count: number): string => `${count} ${count === 1 ? "song" : "songs"}`,
    noneRecent: "No song has been opened yet.",
    noneHere: "No song has this tag any more.",
    choose: (title: string): string => `Choose ${title}`,
    tagged: (tags: readonly string[]): string => `, tagged ${tags.join(", ")}`,
    chooseAll: "Choose all",
    chosen: (count: number): string => `${count} chosen`,
    chosenActions: "With the chosen songs",
    chooseNone: "Choose none",
    tag: "Tags…",
    putInSetList: "Set list…",
    duplicate: "Duplicate",
    share: "Share",
    rename: "Rename",
    delete: "Delete",
    listHelp:
      "Arrow keys go from song to song, with Shift they choose. Control and A chooses all, Escape none, Delete deletes.",
    copyOf: (title: string, count: number): string =>
      `${title}, copy${count === 1 ? "" : ` ${count}`}`,
    deleted: (titles: readonly string[]): string =>
      titles.length === 1 ? `“${titles[0]}” is deleted.` : `${titles.length} songs are deleted.`,
    duplicated: (titles: readonly string[]): string =>
      titles.length === 1
        ? `“${titles[0]}” is in the songbook a second time.`
        : `${titles.length} songs are in the songbook a second time.`,
    kept: (count: number): string => `${count} ${count === 1 ? "song" : "songs"} kept.`,
    undo: "Undo",
    redo: "Redo",
    undone: (step: string): string => `Undone: ${step}.`,
    redone: (step: string): string => `Done again: ${step}.`,
    nothingToUndo: "There is nothing to undo in the songbook.",
    cancel: "Cancel",
    close: "Close",
    done: "Done",
    dropHint: "Drop to bring in",

    /** What a step is called when it is undone or done again. */
    steps: {
      delete: (titles: readonly string[]): string =>
        titles.length === 1 ? `delete “${titles[0]}”` : `delete ${titles.length} songs`,
      duplicate: (count: number): string =>
        count === 1 ? "duplicate a song" : `duplicate ${count} songs`,
      bringIn: (count: number): string =>
        count === 1 ? "bring in a song" : `bring in ${count} songs`,
      putBack: (count: number): string =>
        count === 1 ? "bring back a song" : `bring back ${count} songs`,
      rename: (from: string, to: string): string => `rename “${from}” to “${to}”`,
      tag: (count: number): string =>
        count === 1 ? "change the tags of a song" : `change the tags of ${count} songs`,
      renameTag: (tag: string): string => `rename the tag “${tag}”`,
      dropTag: (tag: string): string => `take the tag “${tag}” off`,
      newSetList: (name: string): string => `make the set list “${name}”`,
      renameSetList: (name: string): string => `rename the set list “${name}”`,
      deleteSetList: (name: string): string => `delete the set list “${name}”`,
      putIn: (name: string): string => `put songs in “${name}”`,
      takeFrom: (title: string, name: string): string => `take “${title}” out of “${name}”`,
      move: (title: string): string => `move “${title}”`,
      eveningKey: (title: string): string => `another key for “${title}”`,
      times: (title: string): string => `how often “${title}” is played`,
      goesOn: (name: string): string => `how “${name}” goes on`,
    },

    tagDialog: {
      title: (count: number): string =>
        count === 1 ? "Tags of one song" : `Tags of ${count} songs`,
      about: "Check what the songs are to be found by.",
      none: "There are no tags yet.",
      fresh: "New tag",
      add: "Add",
    },
    setDialog: {
      title: (count: number): string =>
        count === 1 ? "Put one song in a set list" : `Put ${count} songs in a set list`,
      about: "They come at its end, in the order of the list.",
      fresh: "New set list",
      make: "Make and put in",
      into: (name: string, count: number): string =>
        `${name}, ${count} ${count === 1 ? "song" : "songs"}`,
      done: (name: string, count: number): string =>
        `${count} ${count === 1 ? "song is" : "songs are"} in “${name}”.`,
    },
    nameDialog: {
      song: "Title of the song",
      tag: "Name of the tag",
      setList: "Name of the set list",
      fresh: "New set list",
      about: "It can be undone.",
      keep: "Rename",
      make: "Make",
    },
    tagView: {
      rename: "Rename tag",
      drop: "Take the tag off all songs",
    },
    sharing: {
      file: "Songs",
      done: (file: string, count: number): string =>
        `“${file}” with ${count === 1 ? "one song" : `${count} songs`} is with your downloads. Another player opens it in Shortslide.`,
      name: "Shortslide song",
      holds: "Chart, settings and patterns, for another player",
    },

    setList: {
      play: "Play from the start",
      playFrom: (title: string): string => `Play from ${title}`,
      rename: "Rename",
      delete: "Delete set list",
      share: "Share",
      goesOn: "Go on by itself",
      goesOnAbout: "After its times through, the next song comes up and plays.",
      empty: "No songs yet. Choose songs in the list, then “Set list…”.",
      songs: (name: string): string => `Songs of ${name}`,
      move: (title: string, place: number, of: number): string =>
        `Move ${title}, ${place} of ${of}: arrow keys, or drag`,
      moved: (title: string, place: number, of: number): string =>
        `${title} is ${place} of ${of} now.`,
      key: (title: string): string => `Key of ${title} for the evening`,
      ownKey: (key: string): string => (key === "" ? "Its own" : `Its own, ${key}`),
      times: (title: string): string => `Times through ${title}`,
      timesOf: (times: number): string => (times === 1 ? "Once" : `${times} times`),
      takeOut: (title: string): string => `Take ${title} out of the set list`,
      gone: "not in the songbook",
      missing: "None of its songs is in the songbook.",
    },

    removedView: {
      about: "Songs you deleted. They stay here until you delete them for good.",
      none: "Nothing is removed.",
      list: "Removed songs",
      putBack: "Bring back",
      putBackOne: (title: string): string => `Bring back ${title}`,
      erase: "Delete for good",
      eraseOne: (title: string): string => `Delete ${title} for good`,
      eraseAll: "Delete all for good",
      back: (title: string): string => `“${title}” is back in the songbook.`,
      erased: (count: number): string =>
        `${count} ${count === 1 ? "song is" : "songs are"} deleted for good.`,
      ask: (count: number): string =>
        count === 1 ? "Delete this song for good?" : `Delete ${count} songs for good?`,
      askAbout: "This cannot be undone.",
      keep: "Keep",
    },

    evening: {
      bar: "Set list",
      place: (name: string, place: number, of: number): string => `${name}, ${place} of ${of}`,
      time: (time: number, of: number): string => `time ${time} of ${of}`,
      next: (title: string, key: string): string =>
        key === "" ? `Next: ${title}` : `Next: ${title}, in ${key}`,
      last: "The last song",
      previousSong: "Previous song",
      nextSong: "Next song",
      end: "End the set",
      previousAction: "The song before in the set list",
      nextAction: "The next song of the set list",
    },
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
    readAll: "The chart, and all settings that go with it",
    readPins: (count: number): string =>
      count === 1 ? "One place that was pinned" : `${count} places that were pinned`,
    readPatterns: (names: readonly string[]): string => `Own patterns: ${names.join(", ")}`,
    readTags: (tags: readonly string[]): string => `Tags: ${tags.join(", ")}`,
    leftPattern: (name: string): string =>
      `The pattern “${name}” is not in the file; forward rolls are played in its place.`,
    leftToMend: "The chart has things to mend; it is kept as it is.",
    about: "From shared songs, ABC, MusicXML or text files. Nothing is kept until you say so.",
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
