// Help for our own chart language; its examples are invented.
/** One thing that a chart can say: in words, and as it is written. Our own chart language. */
export type ChartHelp = { readonly title: string; readonly says: string; readonly text: string };

/** How to write a chart, the common things first; every text reads without an error. */
export const chartHelpTable: readonly ChartHelp[] = [
  {
    title: "Headers",
    says: "Title, key, time signature, tempo and capo. What you leave out has its usual value. Tempo counts half notes in 2/2, dotted quarters in 6/8, else quarters.",
    text: "Title: Fern Hill Turn\nKey: A\nTime: 4/4\nTempo: 104\nCapo: 2",
  },
  {
    title: "Bars",
    says: "Chords by name, with a bar line between bars. Chords in one bar share it evenly.",
    text: "| G | C | Em D7 | G |",
  },
  {
    title: "Beats",
    says: "A dot holds the chord before it for one more beat (a quarter note, in 2/2 too): three beats of G, then one of C.",
    text: "| G . . C | D . G . |",
  },
  {
    title: "Half beats",
    says: "A comma is half a beat more; an apostrophe makes a chord half a beat long.",
    text: "| G . , C' D |",
  },
  {
    title: "Six-eight time",
    says: "In 6/8 a chord or dot is an eighth note, six to a bar: two chords of three, then G for five and D for one.",
    text: "Time: 6/8\n| G . . C . . | G . . . . D |",
  },
  {
    title: "The same again",
    says: "% plays the bar before once more.",
    text: "| G . . D | % | C | % |",
  },
  {
    title: "Silence",
    says: "N.C. is no chord.",
    text: "| G | N.C. | D . N.C. . |",
  },
  {
    title: "Numbers",
    says: "Chords by scale degree, in whatever key the song has. A hyphen stands before a 7.",
    text: "Key: A\n| 1 | 4 | 6m b7 | 5-7 |",
  },
  {
    title: "Repeats",
    says: "Twice as usual; one more colon plays the passage once more.",
    text: "|: G | C :| |: D | G ::|",
  },
  {
    title: "Endings",
    says: "The number touches the bar line.",
    text: "|: G | C |1 D | D :|2 D | G |",
  },
  {
    title: "Sections and form",
    says: "Name a section in brackets; Form says in which order the sections are played.",
    text: "Form: Verse Chorus Verse\n[Verse]\n| G | C |\n[Chorus]\n| D | G |",
  },
  {
    title: "Remarks",
    says: "What follows # is for you alone.",
    text: "| G | C | # slowly here",
  },
];
