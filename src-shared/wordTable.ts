/**
 * Every word that a player reads on the screen, in one file: a translation is another file of this
 * type. What has a number or a name in it is a function, so that a language can put it where it
 * belongs and choose its own plural. Source: our own words; terms of the trade are common practice,
 * no published source.
 */

/** "1 bar", "2 bars". */
const counted = (count: number, one: string, many: string): string =>
  `${count} ${count === 1 ? one : many}`;

/** The words, in the order of the screen: what stands everywhere, then page by page. */
export const words = {
  /** The program, its places, and what may go wrong with all of it. */
  app: {
    name: "Shortslide",
    skip: "Skip to the page",
    places: "Places",
    openFirst: "Open a song first",
    windowTitle: (song: string): string => `${song} · Shortslide`,
    preferences: "Preferences",
    notStartedTry: "If loading the page again does not help, it is a mistake in Shortslide.",
    notStarted: (reason: string): string => `Shortslide could not start: ${reason}`,
    loadAgain: "Load again",
    messages: "Messages",
    menu: { edit: "&Edit", view: "&View" },
  },
  /** Buttons that mean the same wherever they stand. */
  act: {
    close: "Close",
    tryAgain: "Try again",
    dismiss: "Dismiss",
    pause: "Pause",
    play: "Play",
    cancel: "Cancel",
    stop: "Stop",
    clear: "Clear",
    undo: "Undo",
    redo: "Redo",
    duplicate: "Duplicate",
    delete: "Delete",
  },
  /** Things that are counted. */
  count: {
    bars: (count: number): string => counted(count, "bar", "bars"),
    measures: (count: number): string => counted(count, "measure", "measures"),
    eighths: (count: number): string => counted(count, "eighth", "eighths"),
  },
  /** Facts of a song or a route, each in a word or two. */
  facts: {
    capo: (capo: number, peg: number): string => `capo ${capo}, 5th string at ${peg}`,
    millimetres: (mm: number): string => `${mm} mm`,
    centimetres: (cm: number): string => `${cm} cm`,
    today: (time: string): string => `Today ${time}`,
    yesterday: "Yesterday",
    key: (tonic: string, mode: string): string => `${tonic} ${mode}`,
    modes: {
      major: "major",
      minor: "minor",
    },
    timesIn: "en",
    datesIn: "en-GB",
  },
  /** How fast. */
  tempo: {
    aMinute: (beats: string): string => `${beats} a minute`,
    title: "Tempo",
    countInBeats: (beats: string): string => `Count in ${beats}`,
    slower: "Slower",
    faster: "Faster",
    ofChart: (tempo: number): string => `of the chart's ${tempo}`,
    slider: (beats: string): string => `Tempo, ${beats}`,
    is: (tempo: number, beats: string): string => `${tempo} ${beats} a minute`,
    notes: { 2: "half notes", 4: "quarter notes", 8: "dotted quarters" },
  },
  /** Light or dark. */
  theme: {
    system: "As the system",
    light: "Light",
    dark: "Dark",
    is: (theme: string): string => `Light or dark: ${theme.toLowerCase()}`,
  },

  /** The songbook: its list, tags, set lists, removed songs, and what is done with them. */
  songbook: {
    row: {
      changed: ", changed ",
      editOf: (title: string): string => `Edit the chart of ${title}`,
      edit: "Edit chart",
      duplicateOf: (title: string): string => `Duplicate ${title}`,
      deleteOf: (title: string): string => `Delete ${title}`,
    },
    title: "Songbook",
    list: "Songs",
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
    },
    demos: "Demo songs",
    bringIn: "Bring songs in",
    empty: {
      title: "Your songbook is empty",
      demos: "Try a demo song: it is copied into your songbook, and you can change it as you like.",
      write: "Or write down the chords of a song that you know.",
      bring: "Or bring in songs you have: ABC, MusicXML or text files, or pasted text.",
      jam: "Or play along with a jam, and call the chords as they come.",
    },
    newSong: "New song",
    searchLabel: "Search the songbook",
    opening: "Opening the songbook…",
    noMatch: (search: string): string => `No song matches “${search}”.`,
  },
  /** Songs found in files, before they are kept. */
  found: {
    chooseFiles: "Choose files",
    orDrop: "or let them fall anywhere on the songbook.",
    files: "Files with songs",
    orPaste: "Or paste text: ABC, a chart, or lines of chords",
    readText: "Read the text",
    about: "What was read and what was left",
    read: "Read",
    left: "Left",
    nothingLeft: "Nothing.",
    from: "From",
    filterLabel: "Filter the songs found",
    filter: "Filter",
    all: "All",
    none: "None",
    noMatch: (filter: string): string => `Nothing found here matches “${filter}”.`,
    list: "Songs found",
    verdict: (songs: number, refused: number): string => {
      const found = songs === 0 ? "No song found" : `${counted(songs, "song", "songs")} found`;
      const why = `${counted(refused, "other", "others")} cannot be had, and ${refused === 1 ? "says" : "say"} why.`;
      return refused === 0 ? `${found}.` : `${found}. ${why}`;
    },
    inBook: "A song of this title is in your songbook; both are kept.",
    twice: "This title comes more than once in this list.",
    reading: "Reading",
    readingNow: (what: string): string => `Reading ${what}…`,
    keeping: "Keeping",
    stopHere: "Stop here",
    otherFiles: "Other files",
    keep: (songs: number): string => `Keep ${counted(songs, "song", "songs")}`,
    fileCount: (count: number): string => `${count} files`,
    noText: "There is no text yet. Paste a tune or a line of chords, as in G C D.",
    theText: "the text",
    pasted: "Pasted text",
    unreadable: (reason: string): string =>
      `This could not be read: ${reason} Try it again, or one file at a time.`,
    readerEnded: "the reader ended.",
    noDoor: (reason: string): string => `Songs cannot be brought in now: ${reason}.`,
    noDoorTry: "Try again; else start anew.",
    tuneOf: (file: string, tune: number, of: number): string => `${file}, tune ${tune} of ${of}`,
  },
  /** Saving, and what hinders it. */
  save: {
    notSavedBecause: "Not saved:",
    saved: "Saved",
    saving: "Saving…",
    notSaved: "Not saved",
    notSavedWhy: (what: string, why: string): string => `${what}: not saved. ${why}`,
    tookOther: "This is the other version now. Undo brings yours back.",
    keepMine: "Keep mine as a new song",
    takeOther: "Take the other",
    isNotSaved: (song: string): string => `“${song}” is not saved`,
    leave: "Leave without saving",
    stay: "Stay with it",
    opening: "Opening the song…",
    failedTry: "The song itself is kept. Try again, or save it as another kind of file.",
    failedAs: (song: string, kind: string, reason: string): string =>
      `“${song}” could not be saved as ${kind}: ${reason}.`,
    as: "Save as…",
    withDownloads: (file: string, silent: boolean): string =>
      `“${file}” is with your downloads.${silent ? " No route was found, so the banjo is silent in it." : ""}`,
    untitled: "Song",
    kinds: {
      musicxml: {
        name: "MusicXML",
        says: "Tablature with fingers and slides",
      },
      notation: {
        name: "MusicXML with notation",
        says: "A staff in notation above the tablature",
      },
      midi: {
        name: "MIDI",
        says: "Banjo, bass and chop",
      },
      tablature: {
        name: "Text tablature",
        says: "To print, or to send in a letter",
      },
      chart: {
        name: "Chart text",
        says: "The changes as you wrote them",
      },
    },
    stopped: (reason: string): string => `Saving stopped inside Shortslide (${reason}).`,
    stoppedTry: "Try again; if it happens again, copy your text to another place.",
    roundsTry: "Try again; the rounds are kept here until it works.",
    mine: (title: string): string => `${title} (mine)`,
  },
  /** The Chart page: the text, and what it says. */
  chart: {
    help: "How to write a chart",
    fret: (fret: number): string => `fret ${fret}`,
    wholeSong: "Song",
    bar: "Bar",
    toMendMark: (says: string): string => `To mend: ${says}`,
    notes: "Notes on the chart",
    error: "Error",
    hint: "Hint",
    line: (line: number): string => `Line ${line}`,
    nothingToMend: "Nothing to mend.",
    thingsToMend: (count: number): string => `${counted(count, "thing", "things")} to mend`,
    errorsToMend: (count: number): string => `${counted(count, "error", "errors")} to mend`,
    asPlayed: (bars: number): string => `${counted(bars, "bar", "bars")} as played`,
    text: "Chart text",
    title: "Chart",
    meaning: "What the chart says",
    noCapo: "No capo",
    capo: (fret: number): string => `Capo at fret ${fret}`,
    playedIn: (played: string, written: string): string =>
      `Played in ${played}, written in ${written}`,
    playAsWritten: "Play as written",
    empty: "No bars yet. Write chords with bar lines between them, as in | G | C |",
    helpOn: {
      headers: {
        title: "Headers",
        says: "Title, key, time signature, tempo and capo. What you leave out has its usual value. Tempo counts half notes in 2/2, dotted quarters in 6/8 and 9/8, else quarters.",
      },
      bars: {
        title: "Bars",
        says: "Chords by name, with a bar line between bars. Chords in one bar share it evenly.",
      },
      beats: {
        title: "Beats",
        says: "A dot holds the chord before it for one more beat (a quarter note, in 2/2 too): three beats of G, then one of C.",
      },
      halfBeats: {
        title: "Half beats",
        says: "A comma is half a beat more; an apostrophe makes a chord half a beat long.",
      },
      sixEight: {
        title: "Six-eight time",
        says: "In 6/8 and 9/8 a chord or dot is an eighth note. Six to a bar: two chords of three, then G for five and D for one.",
      },
      again: {
        title: "The same again",
        says: "% plays the bar before once more.",
      },
      silence: {
        title: "Silence",
        says: "N.C. is no chord.",
      },
      numbers: {
        title: "Numbers",
        says: "Chords by scale degree, in whatever key the song has. A hyphen stands before a 7.",
      },
      repeats: {
        title: "Repeats",
        says: "Twice as usual; one more colon plays the passage once more.",
      },
      endings: {
        title: "Endings",
        says: "The number touches the bar line.",
      },
      sections: {
        title: "Sections and form",
        says: "Name a section in brackets; Form says in which order the sections are played.",
      },
      remarks: {
        title: "Remarks",
        says: "What follows # is for you alone.",
      },
    },
  },
  /** The Play page: what is held, what comes, and when. */
  play: {
    bar: "Bar",
    ofBars: (bars: number): string => `of ${bars}`,
    largeType: "Large type",
    drawer: "Route and band",
    next: (chord: string, change: string): string => `Next ${chord}: ${change}.`,
    loopStays: "Stay: the loop starts over",
    toTheEnd: "To the end",
    backToBar: (bar: number, shape: string): string => `Back to bar ${bar}: ${shape}`,
    pinned: "pinned",
    noRoot: "no root: the bass has it",
    handRests: "The hand rests",
    noRoute: "No route",
    beatsLeft: (count: number): string => `${counted(count, "beat", "beats")} left`,
    leaveLargeType: "Leave large type",
    inBar: (bar: number): string => `Bar ${bar}`,
    inBars: (first: number, last: number): string => `Bars ${first} to ${last}`,
    empty: "No bars yet: write the changes on the Chart page.",
    openChart: "Open the chart",
    countInBeat: (beat: number): string => `Count-in, beat ${beat}`,
    title: "Play",
  },
  /** The whole song as a strip of bars. */
  strip: {
    bar: (bar: number, chords: string): string => `Bar ${bar}: ${chords}`,
    toMend: (says: string): string => `to mend: ${says}`,
    bars: "Bars of the song",
  },
  /** The neck. */
  neck: {
    spike: (fret: number): string => `Spike for the 5th string, fret ${fret}`,
    pinned: "Pinned",
    places: "Places for this chord",
    now: (chord: string, detail: string, next: string): string =>
      `Neck. Now ${chord}, ${detail}.${next === "" ? "" : ` ${next}`}`,
  },
  /** Hand path and tablature. */
  lanes: {
    tooFast: "Too fast at this tempo",
    backToNow: "Back to now",
    moreBars: "More bars on the lanes",
    fewerBars: "Fewer bars on the lanes",
    letGo: "Let go early",
    damped: "Damped at once",
    tooFastAt: (from: string, to: string, bar: number): string => `${from} to ${to} in bar ${bar}`,
    says: (tooFast: readonly string[], more: number): string => {
      const others = more > 0 ? ` and ${more} more` : "";
      const trouble =
        tooFast.length > 0 ? ` Too fast at this tempo: ${tooFast.join(", ")}${others}.` : "";
      return `Hand path and tablature. Fret numbers in brackets are let go early.${trouble}`;
    },
  },
  /** How neck and lanes are seen. */
  view: {
    left: "Left",
    right: "Right",
    asPlayer: "As you look down",
    asListener: "As a listener sees it",
    firstOnTop: "1st string on top",
    fifthOnTop: "5th string on top",
    title: "View",
    neck: "Neck",
    roots: "Roots on every string",
    noteNames: "Note names",
    seen: "Seen",
    neckSeen: "Neck seen",
    nut: "Nut",
    lanes: "Lanes",
    moreBars: "More bars",
    fewerBars: "Fewer bars",
    says: (player: "right-handed" | "left-handed", strings: string): string =>
      `A ${player} player's neck, ${strings}.`,
  },
  /** What is pressed to play. */
  transport: {
    countIn: "Count-in",
    keyAsWritten: "As written",
    playIn: (key: string): string => `Key to play in: ${key}`,
    key: "Key",
    asWritten: "as written",
    title: "Transport",
    toStart: "Back to the start",
    loopThis: "Loop this bar",
    clearLoop: (loop: string): string => `Clear loop: ${loop}`,
    loop: "Loop",
  },
  /** What a grip is called. */
  shapes: {
    names: {
      F: "F shape",
      D: "D shape",
      barre: "barre",
    },
    across: "one finger across",
    third: (string: number): string => `third on string ${string}`,
    at: (shape: string, fret: number): string => `${shape}, fret ${fret}`,
    root: (string: number): string => `root on string ${string}`,
    rootAny: (strings: string): string => `grip with the root on string ${strings}`,
  },
  /** Changes from chord to chord, and how they are made. */
  changes: {
    slowDown: (tempo: number): string => `Slow down to ${tempo}.`,
    bar: (bar: number): string => `Bar ${bar}`,
    upTo: (tempo: number): string => `up to ${tempo}`,
    fromFret: (change: string, fret: number): string => `${change} from fret ${fret}`,
    withAim: (aim: string, change: string, need: string): string =>
      `With the aim ${aim}: ${change.charAt(0).toLowerCase()}${change.slice(1)}, ${need}.`,
    backToStart: (chords: string): string => `${chords}, back to the start`,
    tooFast: (tooFast: number, changes: number, tempo: string): string =>
      `${tooFast} of ${counted(changes, "change", "changes")} too fast at ${tempo}`,
    allInTime: (changes: number, tempo: string): string =>
      `${counted(changes, "change", "changes")}, all in time at ${tempo}`,
    onlyTooFast: "Only those too fast",
    list: "Changes",
    upToBeats: (tempo: number, beats: string): string => `Up to ${tempo} ${beats} a minute`,
    anyTempo: "Any tempo",
    noneMoves: "None: nothing moves",
    chords: (from: string, to: string): string => `${from} to ${to}`,
    needs: (need: number, window: number): string => `needs ${need} of ${window}\u00a0ms`,
    hardest: (chords: string, way: string, need: string): string =>
      `${chords}, ${way.toLowerCase()}: ${need}`,
    none: "No changes: the hand stays in one place.",
    title: "Changes",
    ways: {
      hold: { name: "Hold", says: "Nothing moves." },
      keep: { name: "Keep every note", says: "There is time after the last note." },
      "let-one": {
        name: "Let the last note go",
        says: "Damp the last note early and be on your way.",
      },
      open: {
        name: "Open 5th string",
        says: "The open 5th string sounds while the hand is on its way.",
      },
      "let-two": {
        name: "Let two notes go",
        says: "Damp the last two notes early and be on your way.",
      },
      "too-fast": { name: "Too fast", says: "At this tempo the hand cannot be there in time." },
    },
    fingers: {
      1: "index",
      2: "middle",
      3: "ring",
      4: "little",
    },
    sameFret: "Same fret",
    up: (frets: number): string => `Up ${frets}`,
    stayNamed: (shape: string): string => `Stay in the ${shape}`,
    stay: (shape: string): string => `Stay, ${shape}`,
    everyKeeps: "Every finger keeps its string",
    down: (frets: number): string => `Down ${frets}`,
    toNamed: (way: string, shape: string): string => `${way} to the ${shape}`,
    to: (way: string, shape: string): string => `${way}, ${shape}`,
    placeAnew: (fingers: readonly string[]): string => `Place anew: ${fingers.join(", ")}`,
    tooFastUpTo: (tempo: number): string => `Too fast at this tempo: up to ${tempo}`,
  },
  /** The route and its settings. */
  routes: {
    inUse: "In use",
    take: "Take",
    travel: "Hand travel",
    hardest: "Hardest change",
    tempo: "Tempo",
    changes: "Changes",
    shapes: "Shapes",
    takeThis: (route: string): string => `Take ${route.toLowerCase()}`,
    kinds: (slides: number, reshapes: number): string =>
      `${counted(slides, "slide", "slides")}, ${reshapes} re-formed`,
    aim: "Aim",
    hand: "Hand",
    perChord: "Places for each chord",
    strings: "Strings",
    goesRound: "Goes round",
    goesRoundSays: "The song starts over at its end, and that change counts too.",
    alike: "The same each time",
    alikeSays: "A bar that comes again is held as it was before. Variety does not heed this.",
    frets: "Frets",
    range: (low: number, high: number): string => `${low} to ${high}`,
    lowest: "Lowest fret",
    highest: "Highest fret",
    list: "Routes",
    nth: (route: number): string => `Route ${route}`,
    onTheNeck: "On the neck now",
    elsewhere: (chords: readonly string[], more: number): string =>
      `Elsewhere: ${chords.join(", ")}${more > 0 ? ` and ${more} more` : ""}`,
    noneFits: "No route fits these settings.",
    allowMore: "Allow more shapes or more frets.",
    moreTrouble: (more: number): string => `And ${more} more: see the Chart page.`,
    changeSettings: "Change the route's settings",
    title: "Route",
    others: "Other routes",
    brokeOff: (reason: string): string => `The search broke off. ${reason}`,
    noOther: "No other route really differs.",
    nthIsOn: (route: number, routes: number): string =>
      `Route ${route} of ${routes} is on the neck.`,
    looking: "Looking for routes…",
    found: (count: number): string => `${count} routes that really differ`,
    isOn: "Another route is on the neck, pinned in place.",
    noChords: "No chords yet: write the changes on the Chart page.",
    order: (aim: string): string =>
      `By the aim ${aim}, best first, after the one in use. Up the page is up the neck. Taking one pins it; undo brings this one back.`,
    noOtherTry: (pinned: boolean): string =>
      `No other route really differs. Allow more shapes or frets${pinned ? ", or take pins off" : ""}.`,
    aims: {
      ease: {
        name: "Ease",
        says: "Short slides, and the hand seldom re-formed.",
      },
      steady: {
        name: "Easiest hardest change",
        says: "The change that leaves least time is made as easy as it can be, then the others.",
      },
      travel: {
        name: "Shortest travel",
        says: "The hand goes the fewest millimetres, even if it is re-formed at every chord.",
      },
      region: {
        name: "One region",
        says: "Stay in the narrowest stretch of the neck that holds the song.",
      },
      climb: {
        name: "Climb",
        says: "Go up the neck through the song, and step back only where there is no other way.",
      },
      fall: {
        name: "Fall",
        says: "Come down the neck through the song, and step up only where there is no other way.",
      },
      variety: {
        name: "Variety",
        says: "A chord that comes back after one other takes another place.",
      },
    },
    hands: {
      learner: { name: "Learner", says: "Takes its time: five frets in about 440 ms." },
      default: { name: "Usual", says: "Five frets in about 300 ms." },
      skilled: { name: "Skilled", says: "Five frets in about 180 ms." },
      usual: { name: "Usual", says: "Five frets in about 300 ms." },
    },
    stringSets: {
      "3-2-1": { name: "Top three", says: "The closed shapes on strings 3, 2 and 1." },
      "4-3-2": {
        name: "Inner three",
        says: "Strings 4, 3 and 2: lower, and out of a singer's way.",
      },
      "4-3-2-1": { name: "All four", says: "The full shapes, with string 4 for the thumb." },
    },
    places: {
      1: { name: "One", says: "A chord keeps its place for as long as it lasts." },
      2: {
        name: "Two",
        says: "A chord of two measures or more is held in two places, one after the other.",
      },
    },
    handCaution:
      "These times are worked out from measurements of aimed arm movements (Fitts's law), not measured on a banjo. Take them as a guide.",
  },
  /** Places that the player has pinned. */
  pins: {
    heldNow: "held now",
    pinned: "pinned",
    keptOff: "kept off",
    outside: "outside the route's settings",
    holdThisTime: "Hold it here this time",
    holdEveryTime: "Hold it here every time",
    keepOff: "Keep off this place",
    takeOff: "Take the pin off",
    title: "Pins",
    takeAllOff: "Take all pins off",
    noneSet: "No pins",
    held: (count: number): string => `${counted(count, "grip", "grips")} held`,
    ruledOut: (count: number): string => `${counted(count, "grip", "grips")} ruled out`,
    asleep: (count: number): string =>
      `${counted(count, "pin", "pins")} asleep: another chord stands there now`,
    noChoice: (said: string): string => `${said}. No choice is left to the aim.`,
    sleeping: (count: number): string =>
      count === 1
        ? "1 pin sleeps: its chord is gone"
        : `${count} pins sleep: their chords are gone`,
    clear: (count: number): string => (count === 1 ? "Clear it" : "Clear them"),
    takeTheseOff: (count: number): string =>
      count === 1 ? "Take this pin off" : "Take these pins off",
    grip: (place: string, frets: string): string => `${place}, grip ${frets}`,
    ofChord: (chord: string, place: string): string => `${chord}, ${place}`,
    everyTime: "every time",
    time: (time: number): string => `time ${time}`,
    heldAt: (grip: string, when: string): string => `held at ${grip} (${when})`,
    keptOffAt: (grip: string, when: string): string => `kept off ${grip} (${when})`,
  },
  /** Why the hand is where it is. */
  why: {
    title: "Why here?",
    elsewhere: "Anywhere else",
    holdThis: (place: string): string => `Hold it here: ${place}`,
    hold: "Hold it here",
    otherPlaces: "Other places",
    brokeOff: (reason: string): string => `The other places could not be weighed. ${reason}`,
    weighing: "Weighing the other places…",
    isPinned: "You have pinned it here, so no other place is weighed.",
    noOther: "Your shapes, frets and pins leave it no other place.",
    held: (chord: string, bar: number, place: string): string => `${chord} in bar ${bar}: ${place}`,
    from: (chord: string): string => `From ${chord}`,
    onTo: (chord: string): string => `On to ${chord}`,
    asGood: "just as good",
    countedIn: {
      travel: "Counted in the way of the index finger over the whole song.",
      steady: "Counted in shares of the time that a change has.",
      climb:
        "Counted in the way of the index finger up or down the neck; after that in travel, a finger placed anew as 60 mm.",
      region:
        "Counted in frets from the lowest to the highest position; after that in travel, a finger placed anew as 60 mm.",
      variety:
        "Counted in chords that come back after one other in the same place; after that in travel, a finger placed anew as 60 mm.",
      ease: "Counted in travel over the whole song, a finger placed anew as 60 mm.",
    },
    more: {
      effort: (length: string): string => `${length} more`,
      travel: (length: string): string => `${length} more travel`,
      hardest: (share: string): string => `hardest change ${share} tighter`,
      strain: (share: string): string => `all changes together ${share} tighter`,
      down: (length: string): string => `${length} more down the neck`,
      up: (length: string): string => `${length} more up the neck`,
      lessUp: (length: string): string => `${length} less up the neck`,
      lessDown: (length: string): string => `${length} less down the neck`,
      stretch: (frets: number): string =>
        `${counted(frets, "more fret", "more frets")} from lowest to highest`,
      returns: (chords: number): string =>
        `${counted(chords, "more chord", "more chords")} back in the same place`,
      unmoved: (chords: number): string =>
        `${counted(chords, "more chord", "more chords")} held in one place only`,
    },
    stays: "The hand stays as it is.",
    underMm: "under 1 mm",
    underPercent: "under 1 %",
    percent: (percent: number): string => `${percent} %`,
    howFar: (way: string, length: string): string => `${way}, ${length}`,
    costs: (way: string, fingers: string, need: number, window: number): string =>
      `${way}. ${fingers}. Needs ${need} ms, has ${window} ms.`,
  },
  /** What the right hand plays. */
  hand: {
    styleOf: (about: string): string => `${about}: style`,
    densityOf: (about: string): string => `${about}: how much of it`,
    beforeLabels: "Before the first label",
    noLabels: "Give parts of the chart a label, as [A], to pick each in its own way.",
    sungIs: (section: string): string => `${section}: sung`,
    sung: "Sung",
    asSong: "As the song",
    sungSays: "Where someone sings, one step sparser and softer.",
    noneHeld: "No chord is held here.",
    asSection: "As its section",
    everyTime: "Every time",
    everyTimeSays: "this bar is played, not only this time",
    yourOwn: (meter: string): string => `Your own, in ${meter}.`,
    draft: (name: string): string => `${name} (draft)`,
    draftSays: "Not used until it is mended.",
    gone: (name: string): string => `${name} (gone)`,
    goneSays: "Not among your patterns.",
    style: "Style of the song",
    density: "How much of it",
    sections: "Sections",
    chordHeld: "The chord held now",
    chordInBar: (chord: string, bar: number): string => `${chord} in bar ${bar}`,
    fifth: "Open 5th string",
    sleeping: (count: number): string =>
      count === 1
        ? "1 chord picked by itself is not there any more."
        : `${count} chords picked by themselves are not there any more.`,
    title: "Right hand",
    short: "Hand",
    plays: (pattern: string | null): string =>
      pattern === null ? "Right hand" : `Right hand: ${pattern}`,
    fifthOut: (note: string, chord: string): string =>
      `Leave the 5th string out: ${note} is not in ${chord}`,
    styles: {
      forward: {
        name: "Forward roll",
        says: "Thumb, index, middle, over and over; drives the song.",
      },
      backward: { name: "Backward roll", says: "From the high string down; lighter than forward." },
      "forward-reverse": {
        name: "Forward-reverse roll",
        says: "Up and back down within the measure.",
      },
      "alternating-thumb": {
        name: "Alternating thumb",
        says: "The thumb on every other eighth; steady and easy to sing over.",
      },
      vamp: { name: "Vamp", says: "A low note on the beat, a short damped pinch off it." },
      strum: { name: "Strum", says: "One stroke over the strings." },
    },
    ownSays: "Your own pattern; elsewhere the forward roll.",
    densities: {
      full: { name: "Every stroke", says: "The whole pattern." },
      beats: { name: "On the beats", says: "Only what falls on a beat." },
      bars: { name: "On the bar lines", says: "A pinch at each chord and each bar line." },
      once: { name: "Once for each chord", says: "One pinch, then let it ring." },
    },
    fifthUses: {
      never: { name: "Never", says: "Only the closed strings sound." },
      cover: {
        name: "To cover a hard change",
        says: "It rings while the hand moves, where it belongs to the chord.",
      },
      always: {
        name: "Wherever a pattern has it",
        says: "Where it belongs to the chord; elsewhere string 3 stands in.",
      },
    },
    fillsWhere: (length: string): string =>
      `Repeated where ${length} fit a chord evenly between bar lines; forward rolls fill the rest.`,
    fillsMeasures: (measures: number): string => {
      const each = measures === 1 ? "every whole measure" : `every ${measures} whole measures`;
      return `Repeated in ${each}; forward rolls fill the rest.`;
    },
  },
  /** The right-hand patterns by name. */
  rolls: {
    onBeats: (pattern: string): string => `${pattern}, on the beats`,
    names: {
      forward: "forward",
      backward: "backward",
      reverse: "forward-reverse",
      alternating: "alternating thumb",
      vamp: "vamp",
      strum: "single strum",
    },
    cells: {
      thumbMiddle: "thumb and middle",
      forwardCell: "forward cell",
      halfAlternating: "alternating thumb, half a measure",
      forwardCellThumbMiddle: "forward cell and thumb and middle",
      twoForward: "two forward cells",
      forwardAlternating: "forward cell and alternating thumb",
      forward8: "forward, eight eighths",
      threeForward: "three forward cells",
      twoForwardAlternating: "two forward cells and alternating thumb",
      threeForwardThumbMiddle: "three forward cells and thumb and middle",
      thumbIndex: "thumb and index",
      backwardCell: "backward cell",
      halfBackward: "backward, half a measure",
      backwardCellThumbIndex: "backward cell and thumb and index",
      twoBackward: "two backward cells",
      backward7: "backward, seven eighths",
      backward8: "backward, eight eighths",
      threeBackward: "three backward cells",
      backward10: "backward, ten eighths",
      threeBackwardThumbIndex: "three backward cells and thumb and index",
      halfReverse: "forward-reverse, half a measure",
      reverse6: "forward-reverse, six eighths",
      reverse7: "forward-reverse, seven eighths",
      reverse8: "forward-reverse, eight eighths",
      reverse9: "forward-reverse, nine eighths",
      reverse10: "forward-reverse, ten eighths",
      reverse11: "forward-reverse, eleven eighths",
      alternating5: "alternating thumb, five eighths",
      alternating6: "alternating thumb, six eighths",
      alternating7: "alternating thumb, seven eighths",
      alternating8: "alternating thumb, eight eighths",
      alternating9: "alternating thumb, nine eighths",
      alternating10: "alternating thumb, ten eighths",
      alternating11: "alternating thumb, eleven eighths",
    },
    twoMeasures: (roll: string): string => `${roll}, two measures`,
    oneMeasure: (roll: string): string => `${roll}, one measure`,
    waltzMeasure: (roll: string): string => `${roll}, waltz measure`,
    partOfMeasure: (roll: string): string => `${roll}, part of a measure`,
  },
  /** The player's own patterns, and the bench they are made on. */
  bench: {
    toMendFirst: "To mend before a song can use it",
    mend: "Mend",
    startFrom: "Start from",
    newPattern: "New pattern",
    marks: {
      accent: "Accent",
      damped: "Damped",
    },
    fifth: "5th",
    markCell: (eighth: number, mark: string, on: boolean, toMend: boolean): string =>
      `Eighth ${eighth}, ${mark.toLowerCase()}: ${on ? "yes" : "no"}${toMend ? ", to mend" : ""}`,
    stringCell: (
      eighth: number,
      string: string,
      fingers: readonly string[],
      toMend: boolean,
    ): string =>
      `Eighth ${eighth}, ${string}: ${fingers.join(" and ") || "nothing"}${toMend ? ", to mend" : ""}`,
    name: "Name",
    meter: "Meter",
    length: "Length",
    import: "Import",
    export: "Export",
    file: "File of patterns to import",
    grid: (name: string): string => `Pattern ${name}`,
    eighth: "Eighth",
    toMend: "to mend",
    string: "String",
    none: "No patterns of your own yet. Start from one that is there, or from nothing.",
    title: "My patterns",
    draft: "! Draft: not used until mended",
    inThisSong: (about: string): string => `${about}, in this song`,
    unreadable: (file: string, reason: string): string => `“${file}” could not be read: ${reason}.`,
    unreadableTry: "Try it again.",
    hear: "Hear it",
    empty: "Empty",
    nothing: "Nothing",
    firstName: "My pattern",
    nothingNew: "Nothing new in this file.",
    renamed: (from: string, to: string): string =>
      `“${from}” is kept as “${to}”, since you have one of that name.`,
    imported: (count: number): string => `${counted(count, "pattern", "patterns")} imported.`,
    alreadyHad: (count: number): string =>
      `${counted(count, "pattern", "patterns")} you have already.`,
    isDraft: "A draft: songs do not use it until it is mended.",
    otherMeter: (meter: string, songMeter: string): string =>
      `In ${meter}; the song is in ${songMeter}.`,
    heardOn: (chord: string, place: string): string => `Heard on ${chord}, ${place}.`,
    noChord: "The song has no chord to hear it on.",
    used: "Used for this song",
    use: "Use for this song",
    keys: {
      point: "Click, or arrows and",
      accent: "accent,",
      damped: "damped,",
      rest: "rest.",
      clears: "clears,",
    },
    says: "Patterns of your own for the right hand, for every song.",
    deleted: (name: string): string => `“${name}” is deleted.`,
    full: (most: number): string => `You have ${most} patterns, the most there can be.`,
    fullTry: "Delete some first.",
    needsName: "A pattern needs a name.",
    nameTooLong: "A name has at most 60 characters.",
    nameTaken: "Another of your patterns has this name.",
    fingerStrings: {
      T: "strings 2, 3 and 4 and the 5th",
      I: "strings 2, 3 and 4",
      M: "strings 1 and 2",
    },
    breach: {
      startsOffThumb: "The first eighth has no thumb: a pattern starts on the thumb.",
      endsOnThumb: (eighth: number): string =>
        `The thumb strikes on the last eighth, ${eighth}: it must be free to start the next pattern.`,
      cross: (eighth: number): string =>
        `The fingers cross, or share a string, on eighth ${eighth}: the thumb lies lowest, the middle finger highest.`,
      empty: "Nothing is struck yet.",
      length: (eighths: number, meter: string, whole: number): string =>
        `${eighths} eighths are not whole measures of ${meter}, which has ${whole}.`,
      twice: (finger: string, first: number, second: number): string =>
        `${finger} strikes twice running, on eighths ${first} and ${second}.`,
      offString: (finger: string, eighth: number, strings: string): string =>
        `${finger} is off its strings on eighth ${eighth}: it picks ${strings}.`,
      apart: (finger: string, eighth: number): string =>
        `${finger} is on strings that lie apart on eighth ${eighth}.`,
    },
    fingerOn: (finger: string, string: string): string => `${finger} on ${string}`,
    rest: "a rest",
    stroke: (eighth: number, stroke: string): string => `eighth ${eighth}: ${stroke}`,
    fingers: { T: "thumb", I: "index", M: "middle" },
    theFinger: { T: "The thumb", I: "The index finger", M: "The middle finger" },
    fifthString: "5th string",
    stringNumber: (string: number): string => `string ${string}`,
    restAdded: (count: number): string => `${counted(count, "eighth", "eighths")} of rest added`,
    cut: (count: number): string => `${counted(count, "eighth", "eighths")} cut`,
    inFile: {
      list: "The list “patterns”",
      notPatterns: "Choose a file that was exported from “My patterns”.",
      tooLarge: "This file is too large to be a file of patterns.",
      notJson: "This file is not JSON, or is cut off.",
      noPatterns: "This file holds no patterns: it has no “shortslidePatterns”.",
      later: "This file is of a later version than this program.",
      laterTry: "Update the program, or export from one of the same version.",
      wrong: (where: string): string => `${where} is not as it must be. Nothing was imported.`,
      wanted: {
        name: "a name of 1 to 60 characters",
        meter: "one of 4/4, 3/4, 2/4, 6/8 and 9/8",
        strokes: "a list of 1 to 32 eighths",
        picks: "a list of at most 5 picks",
        finger: "T, I or M",
        on: 'one of 1, 2, 3, 4 and "fifth"',
        trueOrFalse: "true or false",
        patterns: "a list of 1 to 500 patterns",
      },
      pattern: "a pattern",
      mustBe: (wanted: string): string =>
        `It must be ${wanted}. Mend the file, or export it again.`,
      nth: (pattern: number, name: string | null): string =>
        `Pattern ${pattern}${name === null ? "" : ` (“${name}”)`}`,
      eighth: (where: string, eighth: number): string => `${where}, eighth ${eighth}`,
      pick: (where: string, eighth: number, pick: number): string =>
        `${where}, eighth ${eighth}, pick ${pick}`,
      entry: (where: string, entry: string): string => `${where}: “${entry}”`,
    },
  },
  /** The band, who plays, and how it feels. */
  band: {
    eighths: "Eighths",
    even: "Even",
    bouncing: "Bouncing",
    timing: "Timing",
    exact: "Exact",
    loose: "Loose",
    dynamics: "Sections differ",
    dynamicsSays: "Choruses full, verses held back.",
    walkUps: "Walk-ups",
    walkUpsSays: "The bass walks into the next chord.",
    fills: "Fills",
    fillsSays: "The last bar leads into a new section.",
    noBounce: "In 6/8 and 9/8 the eighths come in threes and stay even.",
    scale: (name: string, low: string, high: string): string =>
      `${name}, from ${low.toLowerCase()} to ${high.toLowerCase()}`,
    out: "Out",
    solo: "Solo",
    volumeOf: (part: string): string => `${part} volume`,
    outOf: (part: string): string => `${part} out`,
    soloOf: (part: string): string => `${part} solo`,
    leftRight: "Left and right",
    onlySolo: (parts: readonly string[]): string =>
      `Solo: only ${parts.join(" and ")} can be heard.`,
    left: "Left",
    panOf: (part: string): string => `${part}, from left to right`,
    right: "Right",
    parts: {
      banjo: "Banjo",
      bass: "Bass",
      guitar: "Guitar",
      chop: "Chop",
      click: "Click",
    },
    whoPlays: "Who plays",
    takesTheNext: "takes the next.",
    silentBars: "Silent bars",
    silentBarsSays: "Everyone drops out and comes back in: keep the time yourself.",
    play: "Play",
    barsToPlay: "Bars to play",
    barsRest: "bars, rest",
    barsToRest: "Bars to rest",
    countInEach: "Count in each round",
    countInEachSays: "A bar of clicks before it starts over.",
    asNow: "As now",
    practice: "Practice",
    mix: "Mix",
    feel: "Feel",
    soundFile: "Sound file",
    soundFileSays: "The song or the loop as a WAV file, for a player in the car or a lesson.",
    otherFiles: "Other files",
    otherFilesSays: "The song as it is played now, for a notation program, a sequencer or paper.",
    care: "Take care",
    title: "Band",
    mixes: {
      all: { name: "Everyone", says: "The banjo plays with the band." },
      "without-banjo": { name: "You are the banjo", says: "The band plays; the banjo is yours." },
      "bass-and-click": { name: "Bass and click", says: "The bass, and a click on every beat." },
      "banjo-only": { name: "Banjo alone", says: "The banjo by itself." },
    },
    noSilence: (bars: number): string =>
      `The song has ${counted(bars, "bar", "bars")}: it is over before anyone drops out.`,
  },
  /** The sound as a file. */
  wav: {
    wholeSong: "Whole song",
    title: "Save as sound",
    about: "A WAV file in stereo, at the tempo and with the levels set now.",
    what: "What",
    whoPlays: "Who plays",
    quality: "Quality",
    bits16: "16 bit",
    bits24: "24 bit",
    sampleRate: "Sample rate",
    khz44: "44.1 kHz",
    khz48: "48 kHz",
    countIn: "Count-in before it",
    save: "Save WAV",
    writing: "Writing the sound",
    withDownloads: (fileName: string): string => `${fileName} is with your downloads.`,
    failed: (reason: string): string =>
      `The sound could not be written: ${reason} Try a shorter stretch, or 16 bit.`,
    cannotWrite: "This browser cannot write sound to a file. Use Shortslide's own window.",
    noFile: "The sound was rendered, but no file came of it.",
  },
  /** Where there is no sound. */
  sound: {
    closed: "The player was closed.",
    heldBack: "The browser holds the sound back.",
    stoppedHear: "The system stopped the sound. Press Hear it to go on.",
    noneHear: (reason: string): string => `No sound. ${reason} Press Hear it to try again.`,
    nonePlay: (reason: string): string => `No sound. ${reason} Press Play to try again.`,
    stoppedPlay: "The system stopped the sound. Press Play to go on.",
    recovered: "The system stopped the sound for a moment. It goes on now.",
  },
  /** Ears and hands. */
  caution: {
    ears: "Ears.",
    earsSays:
      "Loud sound for long harms hearing. NIOSH, the US institute for safety and health at work, recommends at most 85 dBA over 8 hours, and half that time for each 3 dB more. Shortslide cannot know how loud it is at your ears: start quiet.",
    hands: "Hands.",
    handsSays: "Rest them often. Stop at pain, numbness or tingling, and see a clinician.",
    noAdvice: "This is not medical advice.",
    title: "Before the first note",
    notNow: "Not now",
    understood: "Understood, play",
  },
  /** Changes called without a chart. */
  jam: {
    pad: "Chords to call",
    call: "Call",
    playedNow: "played now",
    calledBars: "Called bars",
    bar: (bar: number, chord: string, called: boolean): string =>
      `Bar ${bar}: ${chord}${called ? ", called" : ""}`,
    title: "Call the changes",
    cleared: "The called bars are cleared.",
    noChord: "No chord",
    takeBack: "Take back",
    startOver: "Start over",
    keep: "Keep as a song",
    key: "Key",
    meter: "Metre",
    help: "Figures 1 to 7 call the next chord, with Shift minor, pressed again its seventh.",
    windowTitle: "Call the changes · Shortslide",
    callNext: "Call the next chord",
    toNextBar: (beats: number): string => `${counted(beats, "beat", "beats")} to the next bar`,
    songTitle: "Called changes",
    keptTitle: (key: string): string => `Called in ${key}`,
  },
  /** What can be done without the mouse, and by which key, pedal or MIDI switch. */
  keys: {
    takeOff: (trigger: string, does: string): string => `Take ${trigger} off ${does}`,
    noKey: "no key",
    addFor: (does: string): string => `Add a key or pedal for ${does}`,
    pressIt: "Press it…",
    add: "Add",
    midiOff: "For foot controllers that send notes, controls or programs.",
    midiAsking: "Allow MIDI where the browser asks for it.",
    midiAbsent:
      "This browser has no Web MIDI. The desktop window has it, and pedals that send keys work here too.",
    midiListening: (names: string): string => `Listening to ${names}.`,
    midiNone: "No MIDI controller is plugged in. One that is plugged in later is heard too.",
    midi: "Listen to MIDI controllers",
    midiRefused: (reason: string): string =>
      `MIDI was refused${reason ? ` (${reason})` : ""}. Allow it for this page in the browser's settings, then switch it off and on here.`,
    title: "Keys and pedals",
    giveTo: (action: string): string => `Give it to “${action}”`,
    leave: "Leave it as it is",
    asWell: "As well",
    onBars: "On the bars of the song,",
    shift: "Shift",
    with: "with",
    or: "or",
    stretches: "stretches the loop.",
    inJam: "Calling the changes,",
    figures: "with a figure is minor; the same figure again is the seventh.",
    notAwake: "This browser cannot keep the screen awake: let the system do it while you play.",
    sleeps: "The system does not let the screen stay awake now, perhaps to save the battery.",
    awake: "The screen stays awake while the music plays.",
    announce: "Announce the next change to a screen reader, a bar ahead",
    usual: "Back to the usual keys",
    press: (action: string): string =>
      `Press the key, pedal or MIDI switch for “${action}”. Escape leaves it as it is.`,
    doesAlready: (trigger: string): string => `${trigger} does that already.`,
    taken: (trigger: string, action: string): string => `${trigger} is taken: it does “${action}”.`,
    nothingNow: (trigger: string): string => `${trigger} does nothing now.`,
    allUsual: "Every key is as usual. MIDI switches do nothing.",
    takenBack: "Taken back.",
    nowDoes: (trigger: string, action: string): string => `${trigger} now does “${action}”.`,
    does: (trigger: string, action: string): string => `${trigger}: ${action}.`,
    nothingYet: "nothing yet",
    help: "Add a key by pressing it. Press a key that is there to take it off.",
    midiController: "MIDI controller",
    actions: {
      playPause: "Play or pause",
      stop: "Stop",
      toStart: "Back to the start",
      barBack: "One bar back",
      barOn: "One bar on",
      slower: "Slower",
      faster: "Faster",
      countIn: "Count-in of 0, 1 or 2 bars",
      banjo: "Banjo out or in",
      band: "The next practice mix",
      loopHere: "Loop this bar, or clear the loop",
      loopFrom: "Loop starts here",
      loopTo: "Loop ends here",
      loopOff: "Clear the loop",
      routes: "Other routes",
      previousRoute: "The route before",
      nextRoute: "The next route",
      others: "Other places of the chord",
      why: "Why the hand is here",
      hand: "What the right hand plays",
      largeType: "Large type",
      lookBack: "Look a bar back",
      lookOn: "Look a bar ahead",
      backToNow: "Back to now",
      moreBars: "More bars on the lanes",
      fewerBars: "Fewer bars on the lanes",
      roots: "Find the roots",
      noteNames: "Note names",
      announce: "Announce the next change, or not",
      jam: "Call the changes",
      keys: "Keys and pedals",
      call1: "Call the 1",
      call2: "Call the 2",
      call3: "Call the 3",
      call4: "Call the 4",
      call5: "Call the 5",
      call6: "Call the 6",
      call7: "Call the 7",
      flat: "The called chord a half step lower",
      noChord: "Call no chord",
      takeBack: "Take the last call back",
      markClean: "The round was clean",
      markNotYet: "The round was not clean yet",
      nextPart: "The next part of the rehearsal",
      previousSong: "The song before in the set list",
      nextSong: "The next song of the set list",
      rehearse: "Rehearse",
    },
    groups: {
      playing: "Playing",
      loop: "Loop",
      route: "Route",
      screen: "Screen",
      calling: "Calling the changes",
      rehearsing: "Rehearsing",
    },
    midiKinds: {
      note: "note",
      control: "control",
      program: "program",
    },
    leads: (key: string): string =>
      `${key} leads out of here and stays as it is. Press another key.`,
    modifier: (key: string): string => `${key} only goes with other keys. Press another key.`,
    system: (key: string): string =>
      `${key} belongs to the browser or the system. Press another key.`,
    midiTrigger: (kind: string, number: number, channel: number): string =>
      `MIDI ${kind} ${number}, channel ${channel}`,
    named: {
      space: "Space",
      pageUp: "Page up",
      pageDown: "Page down",
      comma: ", (comma)",
      fullStop: ". (full stop)",
      minus: "− (minus sign)",
    },
  },
  /** What the machine answers where it cannot do what was asked. */
  host: {
    closeAndStart: (reason: string): string => `Close Shortslide and start it again. (${reason})`,
    notUnderstood: "Shortslide's answer could not be understood.",
    reload: "Reload the page. If it happens again, it is a mistake in Shortslide.",
    noAnswer: "Shortslide itself does not answer.",
    seeTerminal: "See that Shortslide still runs in its terminal, then try again.",
    cannotBeDone: (reason: string): string =>
      `The screen asked for something that cannot be done: ${reason}`,
    wentWrong: "Something went wrong inside Shortslide.",
    wentWrongTry: "Your last change may not be saved. The terminal says more.",
    notThisPage: "This page may not use the songbook.",
    ownWindow: "Use Shortslide's own window. If this is it, start Shortslide again.",
    onlyReading: "Only reading is possible here.",
    notBuilt: "The screen is not built yet. Run npm run build, then start Shortslide again.",
    noFile: "There is no such file.",
    openAgain: "Open the address that Shortslide printed when it started.",
    byPost: "A call is made by POST.",
    notThisStart: "This page was not opened by this start of Shortslide.",
    inJson: "A call is made in JSON.",
    tooMuch: "That is more than can be saved at once.",
    tooMuchTry: "Shorten the chart.",
    unreadable: "The call is not readable.",
    otherAddress: "This is not Shortslide's address.",
    noCall: "There is no such call.",
    onlyRead: "Files are only read here.",
    noPage: "There is no such page.",
    notShown: "Shortslide's screen cannot be shown",
  },
  /** The songbook's folder, and what may be wrong with it. */
  disk: {
    freeSpace: "Free some space, then try again. What was saved before is still there.",
    lookAtFolder: "See who may write there, or whether something else is in its place.",
    folder: "the songbook's folder",
    full: "The disk is full.",
    refused: (where: string): string => `The system refuses access to ${where}.`,
    readOnly: (where: string): string => `${where} can only be read.`,
    readOnlyTry: "Make it writable, then try again.",
    notAsItShould: (where: string): string => `${where} is not what it should be.`,
    gone: (where: string): string => `${where} is gone.`,
    goneTry: "Something outside Shortslide moved it. Put it back, or try again.",
    failed: (where: string, code: string): string => `The disk failed on ${where} (${code}).`,
    failedTry: "Try again. If it stays, copy your charts to another disk.",
    noSong: "This song is no longer in the songbook.",
    noSongTry: "Go back to the songbook; it may have been removed or renamed elsewhere.",
    patternsDamaged: "The file of your own patterns was damaged.",
    patternsDamagedTry: (path: string): string =>
      `It is kept as ${path}. Import your patterns from a file you exported, or make them anew.`,
    changedTry: "Another window or another program has saved it since you opened it here.",
    changed: "This song was changed elsewhere.",
    nothingBack: "There is nothing left to bring back.",
    nothingBackTry: "It may have been brought back already; look in the songbook.",
  },
  /** What readers of charts and planners of routes have to say: what is so, and what to try. */
  notes: {
    noVoicing: {
      says: (chord: string, shapes: string, low: number, high: number): string =>
        `${chord} has no ${shapes} within frets ${low} to ${high} that is not ruled out.`,
      try: "Allow more frets or another shape, or take a pin off.",
    },
    pinsClash: {
      try: "Take one of these pins off.",
      says: (chord: string, bar: number, pins: readonly string[]): string =>
        `${chord} in bar ${bar} cannot be ${pins.join(" and ")} at once.`,
    },
    chordAt: (chord: string, bar: number): string => `${chord} in bar ${bar}`,
    tooShort: {
      says: (where: string): string =>
        `${where} lasts one eighth, too short for a roll: it gets one stroke, with the fingers that are free.`,
      try: "Leave it so, or give the chord more time.",
    },
    patternGone: {
      says: (pattern: string): string =>
        `There is no pattern "${pattern}" to play, or it is still a draft: a forward roll is played instead.`,
      try: "Mend it among your patterns, or choose another.",
    },
    otherMeter: {
      says: (pattern: string): string =>
        `The pattern "${pattern}" is in another meter: a forward roll is played instead.`,
      try: "Choose a pattern in the song's meter.",
    },
    noFit: {
      says: (pattern: string, where: string): string =>
        `The pattern "${pattern}" does not fit ${where}: a forward roll is played instead.`,
      try: "Give the pattern another length, or choose another for this chord.",
    },
    unlike: {
      says: (chord: string, bar: number): string =>
        `${chord} in bar ${bar} is not held as it was before: the bars of this song follow each other in too many ways to plan that.`,
      try: "Pin the places that should stay the same for every time, or turn this wish off.",
    },
    meter: {
      noPatterns: (meter: string): string => `There are no right-hand patterns for ${meter} yet.`,
      says: (text: string): string => `"${text}" is not a time signature.`,
      try: "Write Time: 4/4, 3/4, 2/4, 2/2, 6/8 or 9/8.",
    },
    tempo: {
      says: (text: string): string => `"${text}" is not a tempo.`,
      try: (beats: string): string => `Write the ${beats} in a minute, as in Tempo: 100.`,
      outOfReach: (tempo: number, beats: string): string =>
        `${tempo} ${beats} a minute is out of reach.`,
      outOfReachTry: (low: number, high: number): string => `Write a tempo from ${low} to ${high}.`,
    },
    capo: {
      says: (text: string): string => `"${text}" is not a fret for a capo.`,
      try: (high: number): string => `Write Capo: and a fret from 0 (none) to ${high}.`,
    },
    label: {
      try: (label: string): string => `Write [${label}].`,
      open: "This label has no closing bracket.",
      says: (most: number): string =>
        `A label is one word of letters, figures and hyphens, ${most} at most.`,
    },
    stray: {
      says: (mark: string): string => `A lone ${mark} means nothing here.`,
      repeat: "A repeat starts with |: and ends with :|",
      bracket: "Write a label as in [Verse], an ending as in [1",
      dot: (dot: string, mark: string): string => `One more ${dot} is a dot here, not ${mark}.`,
      dotTry: "Write a dot.",
    },
    ending: {
      empty: "This ending has no bars.",
      emptyTry: "Write its chords behind it.",
      place: "An ending starts behind a bar line.",
      placeTry: (ending: string): string => `Write |[${ending}`,
      numbers: (most: number): string =>
        `An ending is numbered from 1 to ${most}, the lower number first.`,
      numbersTry: "Write it as in [1 or [1,3 or [1-3.",
      twice: (time: number): string =>
        `There are two endings for time ${time}; the first is played.`,
      twiceTry: (time: number): string => `Number this one ${time}.`,
      missing: (time: number): string => `There is no ending for time ${time}.`,
      missingTry: (time: number): string => `Write [${time} before the bars played that time.`,
      alone: "This ending belongs to no repeat.",
      aloneTry: "Write :| at the end of the first ending.",
    },
    emptyBar: {
      says: "There is nothing in this bar.",
      try: "Write % for the bar before, or a dot for each beat of its last chord.",
    },
    notChords: {
      field: "A field of the header has a colon.",
      fieldTry: (field: string): string => `Write ${field}`,
      says: "There are no chords on this line.",
      section: (label: string): string =>
        `To start a section write [${label}]; for a remark put # before it.`,
      try: "For words or a remark put # before the line.",
    },
    dot: {
      first: "There is no chord before this dot.",
      firstTry: "Write a chord first.",
      eighth: (meter: string): string =>
        `A chord or dot is an eighth note in ${meter}, and there is nothing shorter.`,
      eighthTry: "Write dots: G . . is three eighth notes of G.",
    },
    apostrophe: {
      says: "An apostrophe stands right behind a chord.",
      try: "Write it as in G', for half a beat of G.",
    },
    reduced: {
      says: (symbol: string, chord: string): string =>
        `${symbol} is played as ${chord}, its nearest shape.`,
      try: "The bass and the singer fill it up.",
    },
    barRepeat: {
      says: "% repeats a whole bar and stands alone.",
      two: "Write | % | % | for two bars.",
      try: (dot: string): string => `Put it between bar lines, or write a dot for one more ${dot}.`,
      first: "There is no bar before this %.",
      firstTry: "Write the chords.",
    },
    unevenBar: {
      says: (chords: number, beats: number, unit: number): string =>
        `${chords} chords do not share a bar of ${beats}/${unit} evenly.`,
      count: (dots: string, chords: string): string =>
        `Count the ${dots} with dots: ${chords} fills it.`,
      divide: (canHalve: boolean): string =>
        `Put a bar line between them${canHalve ? ", or halve some, as in G'" : ""}.`,
    },
    barLength: {
      says: (dots: string, full: string): string => `${dots} in a bar of ${full}.`,
      takeOut: (dots: string): string => `Take ${dots} out, or put a bar line before.`,
      add: (dots: string, withHalf: boolean): string =>
        `Add ${dots}: a dot is one${withHalf ? ", a comma half of one" : ""}.`,
    },
    dots: {
      2: {
        one: "quarter note",
        many: "quarter notes",
      },
      4: {
        one: "beat",
        many: "beats",
      },
      8: {
        one: "eighth note",
        many: "eighth notes",
      },
    },
    figure: {
      says: (figure: string): string => `${figure} is the degree here, not an ending.`,
      try: "An ending is written [1 and the one after it [2; a degree has white space before it.",
    },
    tooLong: {
      says: "The chart is too long; it is read up to here.",
      try: "Split it into several songs.",
    },
    tooMany: {
      says: (more: number): string => `From here on ${more} more things are wrong.`,
      try: "Put the ones above right first.",
    },
    emptySection: {
      says: (label: string): string => `Section [${label}] has no bars.`,
      try: "Write its bars behind it; to play a section again name it in Form.",
    },
    cut: {
      says: (bars: number): string => `The song is cut here, after ${bars} bars.`,
      try: "Take repeats out.",
    },
    form: {
      label: (label: string): string => `Label a section with [${label}].`,
      apart: (labels: string): string => `Write the labels apart: ${labels}.`,
      sections: (labels: string): string => `The sections are ${labels}.`,
      unknown: (label: string): string => `There is no section [${label}].`,
      empty: "The form is empty.",
      emptyTry: "Write labels, as in Form: A A B.",
      twice: (label: string): string =>
        `There are two sections [${label}]; the form plays the first.`,
      twiceTry: "Give this one a label of its own.",
      leavesOut: (label: string): string => `The form leaves [${label}] out.`,
      leavesOutTry: "Add it to Form to hear it.",
    },
    field: {
      says: (field: string): string => `"${field}:" is not a field of the header.`,
      twice: (field: string): string => `${field} is given twice; the first stands.`,
      twiceTry: "Take one of them out.",
      try: (fields: readonly string[], field: string, meant: string | null): string =>
        `${meant === null ? "" : `Did you mean ${meant}? `}The fields are ${fields.join(", ")}; a section is written [${field}].`,
    },
    untitled: "Untitled",
    repeat: {
      open: "This repeat has no end.",
      openTry: "Write :| where it goes back, or a plain | here.",
      plays: (most: number): string => `A passage is played at most ${most} times.`,
      playsTry: "Take colons out, or name the section more often in Form.",
      first: "There is no bar before this repeat end.",
      firstTry: "Put :| behind the last bar of the repeat.",
      late: "This repeat starts behind its section's last bar.",
      lateTry: "Write |: behind the label of the section that is repeated.",
    },
    chord: {
      roman: "Degrees are written in figures here, not in Roman numerals.",
      h: "H is B in English note names.",
      noBass: (symbol: string): string => `"${symbol}" has no note after the slash.`,
      notBass: (bass: string): string => `"${bass}" is not a note for the bass.`,
      bassTry: (example: string): string => `Name the bass note, as in ${example}.`,
      german: "H is B in English note names, and the German B is Bb.",
      write: (chord: string): string => `Write ${chord}.`,
      small: "A chord's root is a capital letter.",
      none: "There is no chord here.",
      says: (text: string): string => `"${text}" is not a chord.`,
      try: "Write a root from A to G, then the quality, as in G, Am, D7 or Bbmaj7.",
      meant: (chord: string): string => `Did you mean ${chord}?`,
    },
    degree: {
      spaces: "Degrees need white space between them.",
      says: (text: string): string => `"${text}" is not a degree.`,
      try: "Write a figure from 1 to 7, as in 4, 6m or b7.",
      none: (figure: string): string => `There is no degree ${figure}.`,
      noneTry: "Degrees go from 1 to 7.",
      stops: (text: string): string => `${text} stops at the hyphen.`,
      noBass: (text: string): string => `"${text}" has no degree after the slash.`,
      hyphen: (text: string): string => `${text} is written with a hyphen here.`,
      oneOrTwo: (text: string): string => `${text} could be one chord or two.`,
      oneOrTwoTry: (degree: string, rest: string): string =>
        `Write ${degree}-${rest} for one chord, or ${degree} ${rest} for two.`,
      stopsTry: (degree: string): string => `Write ${degree}m for minor, or ${degree}-7.`,
      qualities: (degree: string): string => `Write ${degree}, ${degree}m or ${degree}-7.`,
      bassTry: (example: string): string =>
        `The bass of a degree is a degree too, as in ${example}.`,
    },
    key: {
      says: (text: string): string => `"${text}" is not a key.`,
      try: "Write the tonic, with m for minor, as in Key: G or Key: F#m.",
      small: "A key is written with a capital letter.",
      write: (key: string): string => `Write Key: ${key}.`,
      tooMany: (key: string): string => `${key} would have more than seven sharps or flats.`,
    },
    tuning: {
      says: (text: string): string => `There is no tuning "${text}" here.`,
      try: (tunings: string): string =>
        `Write one of ${tunings}, or five notes from string 5 to string 1, as in G4 D3 G3 B3 D4.`,
    },
  },
  /** What is said of songs that come in from files. */
  import: {
    noChord: (text: string): string => `"${text}" is no chord.`,
    twoChords: (taken: string, other: string): string =>
      `${taken} is taken where ${other} is the other.`,
    noBars: "No note or rest of this tune has a length, so there are no bars.",
    noBarsTry: "Check its note lengths and bar lines.",
    tooManyBars: (bars: number): string => `This tune has ${bars} bars.`,
    divide: (most: number): string => `Divide it: ${most} at most.`,
    bars: (count: number): string => `${count} bars`,
    rounded: (chords: number): string =>
      `${chords} chords between two eighths are moved to the nearest.`,
    empty: "The file is empty.",
    emptyTry: "Choose a file with a tune in it.",
    tooLong: (megabytes: number): string => `The file is longer than ${megabytes} MB.`,
    tooLongTry: "Divide it into smaller files.",
    notText: "The file is not text: it has zero bytes in it.",
    notTextTry: "Choose an ABC, MusicXML or text file; save it as UTF-8.",
    latin1: "The letters are read as Latin-1, as they are not UTF-8.",
    longBar: (bar: string): string =>
      `Bar ${bar} is longer than a bar; what is beyond is left out.`,
    pickUp: (bar: string, chords: string): string =>
      `Bar ${bar} is a pick-up (${chords}) and is left out.`,
    shortBar: (bar: string): string => `Bar ${bar} is shorter than a bar; its last chord fills it.`,
    noRoot: (bar: string): string => `Bar ${bar}: a harmony without a root by letter is left out.`,
    addedTones: (bar: string, chord: string): string =>
      `Bar ${bar}: added tones of ${chord} are left out.`,
    noHarmony: (bar: string, root: string, kind: string): string =>
      `Bar ${bar}: the harmony ${root} ${kind} is left out; no chord is that.`,
    text: {
      tooLong: "This text is too long for a chart.",
      tooLongTry: "Paste one song at a time.",
      noBars: "There are no bars in this text.",
      noBarsTry: "Write the changes as in | G | C | D |.",
      line: (line: number, says: string, advice: string): string =>
        `Line ${line}: ${says} ${advice}`,
      noChords: "There are no chords in this text.",
      noChordsTry: "Paste a line of chords, as in G C D.",
      barLines: (lines: number): string => `There are ${lines} bar lines in this text.`,
      manyWords: (most: number): string => `There are more than ${most} words in this text.`,
      manyChords: (chords: number): string => `There are ${chords} chords in this text.`,
      manyChordsTry: (most: number): string => `Paste one song at a time: ${most} chords at most.`,
      lineLeft: (line: string): string => `"${line}" has no chords alone.`,
      oneBarEach: (chords: number): string => `${chords} chords, one bar each`,
      moreLines: (more: number): string => `and ${more} more lines`,
    },
    xml: {
      try: "Open it in the program it comes from and export it as MusicXML again.",
      entities: "The file declares XML entities of its own, which are not read.",
      broken: (line: number, column: number, reason: string): string =>
        `The XML is broken in line ${line}, column ${column}: ${reason}`,
      manyMarks: (most: number): string =>
        `The file has more than ${most} XML tags and attributes.`,
      manyMarksTry: "Export only the part with the chord symbols.",
      noElement: "There is no XML element in the file.",
      says: (reason: string): string => `The XML cannot be read: ${reason}.`,
      lyrics: (count: number): string => `${count} syllables of lyrics.`,
      keys: "Changes of key: the chart keeps its first one.",
      parts: (count: number): string => `${count} other parts.`,
      noChords: "There are no chord symbols in this score.",
      noChordsTry:
        "Write the chords as harmony symbols in a notation program, and export it again.",
      partwiseTry: "Export it as MusicXML (score-partwise) from a notation program.",
      timewise: "This score is written measure by measure (score-timewise).",
      noScore: (root: string): string => `This is XML, but no score: it starts with <${root}>.`,
    },
    packed: {
      try: "Export the score again, as .mxl or as .musicxml.",
      cutOff: "The packed file is cut off: its list of files is missing.",
      damaged: "The packed file is damaged: its checksum does not agree.",
      manyFiles: (most: number): string => `it has more than ${most} files in it`,
      tooLarge: (megabytes: number): string => `it unpacks to more than ${megabytes} MB`,
      says: (reason: string): string => `The packed file cannot be opened: ${reason}.`,
      noScore: "There is no whole score in this packed file.",
    },
    barSays: (bar: number, says: string): string => `Bar ${bar}: ${says}`,
    more: (count: number): string => `and ${count} more of the same kind`,
    jumps: {
      coda: "There is a way to the coda, but no da capo or dal segno before it",
      repeat: (jump: string, bar: string): string => `${jump} in ${bar} stands within a repeat`,
      segno: (jump: string, bar: string): string => `${jump} in ${bar} has no segno before it`,
      daCapo: "Da capo",
      dalSegno: "Dal segno",
      asWritten: (why: string): string => `${why}; the bars are played as they stand.`,
      again: (jump: string, bar: string, bars: string, ends: "fine" | "coda" | null): string => {
        const to = ends === "fine" ? ", to the fine" : ", then the coda";
        return `${jump} after ${bar}: ${bars} again${ends === null ? "" : to}`;
      },
      noUntil: (jump: string, bar: string, until: "fine" | "coda"): string =>
        `${jump} in ${bar} goes to a ${until}, and there is none: it goes on to its end.`,
    },
    bar: (bar: string): string => `bar ${bar}`,
    barsTo: (first: string, last: string): string => `bars ${first} to ${last}`,
    afterJump: (bar: string): string =>
      `Bar ${bar}: its repeat is asked for after a jump too, and is not made there.`,
    meters: {
      kept: (bar: string, meter: string, kept: string): string =>
        `From bar ${bar} the metre is ${meter}: ${kept} is kept.`,
      try: "Put the bars of each metre in a tune of their own.",
      says: (changes: string): string => `${changes}, and a chart keeps one metre.`,
      apart: (changes: string): string => `${changes}: each part is a song of its own.`,
      broken: (changes: string, says: string): string => `${changes}: ${says}`,
      part: (first: string, last: string, meter: string): string =>
        `bars ${first} to ${last}, ${meter}`,
      common: (meters: readonly string[], meter: string): string =>
        `The tune is in ${meters.join(" and ")}: it is written in ${meter} throughout, each chord where it was.`,
      to: (meter: string, bar: string): string => `to ${meter} in bar ${bar}`,
      changes: (where: string, andOn: boolean): string =>
        `The metre changes ${where}${andOn ? " and on" : ""}`,
      over: (changes: string, jumps: boolean): string =>
        `${changes}, and ${jumps ? "a da capo or dal segno" : "a repeat"} goes over it.`,
    },
    noKey: "no key: G is taken",
    mode: (mode: string, key: string): string => `The mode (${mode}): ${key} is written.`,
    key: (key: string): string => `key ${key}`,
    abc: {
      budget: {
        longLine: (line: number, most: number): string =>
          `Line ${line} of this tune is longer than ${most} characters.`,
        longLineTry: "Break the lines of music, four to eight bars each.",
        noMusic: (line: number, mark: string, most: number): string =>
          `Line ${line} of this tune is no music: ${mark} stands more than ${most} times running.`,
        noMusicTry: "Choose a file of tunes in ABC.",
        voices: (most: number): string => `This tune overlays more than ${most} voices.`,
        voicesTry: "Write them as voices of their own, with V: lines.",
      },
      tooLong: "This tune is too long to read.",
      tooLongTry: "Divide it into parts.",
      says: (reason: string): string => `The ABC cannot be read: ${reason}.`,
      try: "Check its K: and M: lines.",
      noChordsTry: 'Write chords in quotes before the notes, as in "G"B2 "D7"A2.',
      noChords: "This tune has no chord symbols.",
      order: (parts: string): string => `parts in the order ${parts}`,
      lyrics: "Lyrics.",
      noTune: "There is no tune in this file: no line starts with X: and K:.",
      noTuneTry: "Choose an ABC file.",
      manyTunes: (count: number): string => `There are ${count} tunes in this file.`,
    },
    notes: (count: number): string => `${count} notes: a chart has chords alone.`,
    symbols: (count: number): string => `${count} chord symbols`,
    noTempo: (tempo: number): string => `no tempo: ${tempo} is taken`,
    tempo: (tempo: number): string => `tempo ${tempo}`,
    order: (parts: string): string => `The order of parts, ${parts}: each song has its bars once.`,
    orderPlayed: "Da capo or dal segno: the order of parts is played.",
  },
  /** What stands at the head of a song in text tablature. */
  tablature: {
    key: (key: string): string => `Key ${key}`,
    tuning: (tuning: string): string => `tuning ${tuning}`,
    capo: (capo: number): string => `capo ${capo}`,
    help: "Frets from the nut; / and \\ slide up and down; T I M thumb, index, middle.",
    letGo: (mark: string): string => `${mark} behind a finger: its note is let go early.`,
  },
  /** Small words that join others. */
  say: {
    or: (others: string, last: string): string => `${others} or ${last}`,
  },

  /** The printed hand-out, and where it is chosen. */
  handOut: {
    untitled: "Untitled",
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
  /** Rehearsing: what needs work, drills, the guided rehearsal, exercises. */
  rehearsal: {
    due: "Due again",
    trouble: "Needs work",
    song: "Whole song",
    place: "Rehearse",
    /** The page's heading. */
    heading: (title: string): string => `Rehearse ${title}`,
    exercisesHeading: "Exercises",
    views: { changes: "Changes", exercises: "Exercises" },
    viewsLabel: "What to rehearse",
    noSong: "Open a song to rehearse its changes. Exercises need none.",
    noBars: "No bars yet: write the changes on the Chart page.",
    noRoute: "This song has no route yet. Play says what is in the way.",
    openChart: "Open the chart",
    openPlay: "Open Play",
    nothingMoves: "Nothing moves in this song: the hand stays where it is.",
    gone: "The song has changed: this is not in it any more.",
    back: "Back",
    change: (from: string, to: string): string => `${from} to ${to}`,
    changeAt: (change: string, from: number, to: number): string =>
      from === to ? `${change}, fret ${from}` : `${change}, fret ${from} to ${to}`,
    passage: (first: number, last: number): string =>
      first === last ? `Bar ${first}` : `Bars ${first} to ${last}`,
    wholeSong: "The whole song",
    countIn: "Count-in",
    stageLabel: "Stage",
    stages: {
      slide: "Bare slide",
      slow: "Slow roll",
      tempo: "Up to tempo",
      song: "In the song",
    },
    why: {
      "no-time": "no time at this tempo",
      "let-go": "notes let go",
      "long-slide": "long slide",
      "fingers-cross": "fingers cross",
      "new-grip": "fingers formed anew",
      "not-yet": "marked not yet",
    },
    listLabel: "Changes, hardest first",
    bars: (bars: readonly number[]): string =>
      `${bars.length === 1 ? "bar" : "bars"} ${bars.join(", ")}`,
    moreBars: (bars: readonly number[], more: number): string =>
      `bars ${bars.join(", ")} and ${more} more`,
    needs: (need: number, window: number): string =>
      `needs ${Math.round(need)} of ${Math.round(window)}\u00a0ms`,
    marksSaid: (clean: number, all: number): string => `${clean} of ${all} clean`,
    atTempo: (tempo: string): string => `At ${tempo}, what needs work most comes first.`,
    from: "From bar",
    to: "to bar",
    practise: "Practise",
    clean: "Clean",
    notYet: "Not yet",
    markGroup: "How was it?",
    markHint: "Press while you play on.",
    cleanLeft: (count: number): string =>
      count === 1 ? "1 more clean round to go up" : `${count} more clean rounds to go up`,
    roundsLeft: (count: number): string =>
      count === 1 ? "1 more round to go up" : `${count} more rounds to go up`,
    atGoal: "At the goal. Stay as long as you like.",
    marked: { clean: "Marked clean", "not-yet": "Marked not yet" },
    ofGoal: (goal: number): string => `of ${goal}`,
    tempoNow: "Tempo",
    ladder: "Ladder",
    ladderClaim:
      "A rising tempo is a convenience: no study shows that it teaches better. What goes with keeping a passage is the share of clean rounds.",
    ladderStart: "Start",
    ladderGoal: "Goal",
    ladderStep: "Step",
    ladderRounds: "Rounds looked at",
    ladderClean: "Clean of them to go up",
    ladderBack: "Steps back after misses",
    ladderBy: "Goes up by",
    ladderMarks: "my marks",
    ladderByRounds: "rounds",
    play: "Play",
    pause: "Pause",
    guided: "Guided rehearsal",
    guidedAbout:
      "Short turns on what needs work and what is due again, mixed, with rests for the hands, and the whole song at the end.",
    length: "Length",
    minutes: (minutes: number): string => `${minutes} minutes`,
    start: "Start",
    rest: "Rest",
    restHands: "Rest your hands",
    restAbout: "Shake them out. Stop for today at pain, numbness or tingling.",
    next: (what: string): string => `Next: ${what}`,
    last: "Last part",
    timeLeft: (clock: string): string => `${clock} left`,
    partLeft: (clock: string): string => `${clock} in this part`,
    clock: (minutes: number, seconds: number): string =>
      `${minutes}:${String(seconds).padStart(2, "0")}`,
    partOf: (part: number, parts: number): string => `Part ${part} of ${parts}`,
    goOn: "Go on now",
    skip: "Skip",
    resume: "Resume",
    end: "End",
    over: "Done for now",
    overAbout: (rounds: number, clean: number): string =>
      `${rounds === 1 ? "1 round" : `${rounds} rounds`} played, ${clean} marked clean. What is not yet clean comes first the next time.`,
    overHands: "Rest your hands. Stop at pain, numbness or tingling, and see a clinician.",
    again: "Back to the list",
    space: "Space",
    takeCircle: "Practise the circle",
    takeCalls: "Practise a set of calls",
    pairs: "Pairs of degrees",
    pairsAbout: "Two degrees of the key, a bar each, back and forth.",
    circle: "Circle of keys",
    circleAbout: "One shape through all twelve keys, each a fifth below the one before.",
    calls: "Random calls",
    callsAbout: "Sixteen bars called by chance; another set each time.",
    key: "Key",
    shape: "Shape",
    bothShapes: "either",
    pairName: (key: string, from: string, to: string): string => `${from} and ${to} in ${key}`,
    circleName: (key: string): string => `Circle of keys from ${key}`,
    callsName: (key: string, seed: number): string => `Calls in ${key}, set ${seed}`,
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
        .join(" ") || "Every line of the log was read.",
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
    csvHeads: [
      "When (UTC)",
      "Song",
      "What",
      "Stage",
      "Tempo",
      "Tempo counts",
      "Mark",
      "Seconds",
    ] as const,
    change: (from: string, fromFret: number, to: string, toFret: number): string =>
      `${from} at ${fromFret} to ${to} at ${toFret}`,
    bare: (what: string): string => `${what}, bare slide`,
    aMinute: (tempo: number, beats: string): string => `${tempo} ${beats} a minute`,
  },
  /** What is kept on the disk: damage, earlier versions, what could not be saved. */
  keeping: {
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
      return parts.length === 0 ? "It changes nothing." : `It ${parts.join(" and ")}.`;
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
    copy: "Copy",
    copied: "Copied.",
    notCopied: (reason: string): string => `It could not be copied: ${reason}.`,
    copyByHand: "Select the text and copy it by key.",
    boundary: "Your song is kept. Try again, or go back to the songbook.",
    close: "Close",
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
};

/** The same words in any language. */
type Told<Part> = Part extends (...given: infer Given) => string
  ? (...given: Given) => string
  : Part extends string
    ? string
    : { readonly [Name in keyof Part]: Told<Part[Name]> };

/** What a translation must have. */
export type Words = Told<typeof words>;
