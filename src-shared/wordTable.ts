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
  /** Rehearsing: what needs work, drills, the guided rehearsal, exercises. */
  rehearsal: {
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
    due: "Due again",
    trouble: "Needs work",
    song: "Whole song",
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
    actions: {
      markClean: "The round was clean",
      markNotYet: "The round was not clean yet",
      nextPart: "The next part of the rehearsal",
      rehearse: "Rehearse",
    },
    actionGroup: "Rehearsing",
  },
} as const;

/** What a translation must have. */
export type Words = typeof words;
