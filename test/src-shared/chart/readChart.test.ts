import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import type { Bar } from "../../../src-shared/chart/song.ts";

const barText = (bar: Bar) => bar.stays.map((stay) => `${stay.symbol}:${stay.eighths}`).join(" ");
const barsOf = (text: string) =>
  readChart(text).value.sections.flatMap((section) => section.bars.map(barText));
const clean = (text: string) => {
  const reading = readChart(text);
  expect(reading.notes).toEqual([]);
  return barsOf(text);
};

describe("an empty chart", () => {
  test("is an empty song in G with nothing to say about it", () => {
    for (const text of ["", "   ", "\n\r\n\t\n", "# only a remark"]) {
      expect(readChart(text)).toEqual({
        value: {
          title: "Untitled",
          key: { tonic: "G", mode: "major" },
          meter: { beats: 4, unit: 4 },
          tempo: 100,
          capo: 0,
          tuning: "open G",
          form: null,
          sections: [],
        },
        notes: [],
        bars: [],
        symbols: [],
      });
    }
  });
});

describe("bars", () => {
  test("need no outer bar lines", () => {
    expect(clean("G C | D G")).toEqual(["G:4 C:4", "D:4 G:4"]);
    expect(clean("| G C | D G |")).toEqual(["G:4 C:4", "D:4 G:4"]);
  });

  test("end where their line ends", () => {
    expect(clean("G | C\nD\n| Em |")).toEqual(["G:8", "C:8", "D:8", "Em:8"]);
    expect(clean("G\r\nC\rD")).toEqual(["G:8", "C:8", "D:8"]);
  });

  test("are shared evenly by their chords, down to an eighth each", () => {
    expect(clean("G | G D | G C D G | G G C C D D G G")).toEqual([
      "G:8",
      "G:4 D:4",
      "G:2 C:2 D:2 G:2",
      "G:1 G:1 C:1 C:1 D:1 D:1 G:1 G:1",
    ]);
    expect(clean("Time: 3/4\nG | G D | G C D")).toEqual(["G:6", "G:3 D:3", "G:2 C:2 D:2"]);
    expect(clean("Time: 2/4\nG | G D")).toEqual(["G:4", "G:2 D:2"]);
  });

  test("are counted in eighths in 6/8, six to a bar", () => {
    expect(
      clean("Time: 6/8\nG . . C . . | G .. C .. | G ... . D | G . C . D . | . . . . G C"),
    ).toEqual(["G:3 C:3", "G:3 C:3", "G:5 D:1", "G:2 C:2 D:2", "D:4 G:1 C:1"]);
    expect(clean("Time: 6/8\nG | G C | G C D | G C D Em C G")).toEqual([
      "G:6",
      "G:3 C:3",
      "G:2 C:2 D:2",
      "G:1 C:1 D:1 Em:1 C:1 G:1",
    ]);
  });

  test("are counted in eighths in 9/8, nine to a bar, and three share one evenly", () => {
    expect(clean("Time: 9/8\nG | G C D | G . . . . . D . . | . . . . . . . . C")).toEqual([
      "G:9",
      "G:3 C:3 D:3",
      "G:6 D:3",
      "D:8 C:1",
    ]);
  });

  test("are counted as soon as there is a dot", () => {
    expect(clean("G . . D | G . D . | G . C D | G... | G.. D | G ... ")).toEqual([
      "G:6 D:2",
      "G:4 D:4",
      "G:4 C:2 D:2",
      "G:8",
      "G:6 D:2",
      "G:8",
    ]);
  });

  test("count eighths with a comma and an apostrophe", () => {
    expect(clean("G' D' C . . | G , D' C . | G., D' C | D’ G' C.. | G…")).toEqual([
      "G:1 D:1 C:6",
      "G:3 D:1 C:4",
      "G:5 D:1 C:2",
      "D:1 G:1 C:6",
      "G:8",
    ]);
  });

  test("are counted in quarters in 2/2 too", () => {
    expect(clean("Time: 2/2\nG . . D | G D | G . . .")).toEqual(["G:6 D:2", "G:4 D:4", "G:8"]);
  });

  test("hold the chord of the bar before on a dot at their start", () => {
    expect(clean("G C | . . D . | . . . .")).toEqual(["G:4 C:4", "C:4 D:4", "D:8"]);
    expect(clean("[A] G\n[B] . D ..")).toEqual(["G:8", "G:2 D:6"]);
  });

  test("repeat the bar before on a percent sign", () => {
    expect(clean("G C | % | % | D\n%")).toEqual(["G:4 C:4", "G:4 C:4", "G:4 C:4", "D:8", "D:8"]);
  });

  test("may be silent, and N.C. has two dots of its own", () => {
    expect(clean("N.C. | NC | n.c. | G N.C. | N.C.... | NC.. G | N.C.' G' C..")).toEqual([
      "N.C.:8",
      "N.C.:8",
      "N.C.:8",
      "G:4 N.C.:4",
      "N.C.:8",
      "N.C.:6 G:2",
      "N.C.:1 G:1 C:6",
    ]);
  });

  test("mix letters and degrees, each sounding in the key", () => {
    const { value, notes } = readChart("Key: D\n| 1 G | 5-7 6m | b7 | #4dim7 |");
    expect(notes).toEqual([]);
    const stays = value.sections.flatMap((section) => section.bars.flatMap((bar) => bar.stays));
    expect(stays.map((stay) => [stay.symbol, stay.chord?.name])).toEqual([
      ["1", "D"],
      ["G", "G"],
      ["5-7", "A7"],
      ["6m", "Bm"],
      ["b7", "C"],
      ["#4dim7", "G#dim7"],
    ]);
  });

  test("know canonical spellings of what was typed", () => {
    expect(clean("Gmin7 | CΔ | 2min | D7/f#")).toEqual(["Gm7:8", "Cmaj7:8", "2m:8", "D7/F#:8"]);
  });
});

describe("a remark", () => {
  test("starts at a # behind white space, not at a sharp or a degree", () => {
    expect(clean("# opening\nF# C#m # the hard one | G\n  # more\n#4dim | A #hm")).toEqual([
      "F#:4 C#m:4",
      "#4dim:8",
      "A:8",
    ]);
  });
});

describe("sections", () => {
  const labels = (text: string) =>
    readChart(text).value.sections.map((section) => [section.label, section.bars.length]);

  test("start at a label, on a line of its own or before bars", () => {
    expect(labels("[Verse]\nG | C\n[B-2] D | G | [Tag] C")).toEqual([
      ["Verse", 2],
      ["B-2", 2],
      ["Tag", 1],
    ]);
  });

  test("have no label where a chart starts without one", () => {
    expect(labels("G | C\n[B] D")).toEqual([
      [null, 2],
      ["B", 1],
    ]);
  });

  test("are played in the order of the form", () => {
    const { value, notes } = readChart("Form: A b, A\n[A] G\n[B] C");
    expect(notes).toEqual([]);
    expect(value.form).toEqual(["A", "B", "A"]);
  });
});

describe("the places of a reading", () => {
  const text = "Key: D\n[A] | G D7 | % |\n N.C. | 4 .. b7 |";
  const { bars, symbols } = readChart(text);

  test("are each bar's first to last word", () => {
    expect(bars.map(({ start, end }) => text.slice(start, end))).toEqual([
      "G D7",
      "%",
      "N.C.",
      "4 .. b7",
    ]);
    expect(bars.map(({ line, column }) => [line, column])).toEqual([
      [2, 7],
      [2, 14],
      [3, 2],
      [3, 9],
    ]);
  });

  test("are each chord symbol's, with the bar it is in", () => {
    const seen = symbols.map(({ offset, length, bar, kind }) => [
      text.slice(offset, offset + length),
      bar,
      kind,
    ]);
    expect(seen).toEqual([
      ["G", 0, "letter"],
      ["D7", 0, "letter"],
      ["N.C.", 2, "silence"],
      ["4", 3, "degree"],
      ["b7", 3, "degree"],
    ]);
  });
});

type Slip = {
  readonly when: string;
  readonly text: string;
  /** line:column+length code, for each note. */
  readonly notes: readonly string[];
  readonly says: string;
  readonly bars: readonly string[];
};

const slips: readonly Slip[] = [
  {
    when: "a bar is too short, where its bar line stands",
    text: "G . D | C",
    notes: ["1:7+1 wrong-length"],
    says: "3 beats in a bar of 4. Add 1 beat: a dot is one.",
    bars: ["G:4 D:4", "C:8"],
  },
  {
    when: "a bar is too long, at the line's last word where no bar line stands",
    text: "G | C . . . D.",
    notes: ["1:13+2 wrong-length"],
    says: "6 beats in a bar of 4. Take 2 beats out, or put a bar line before.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "half a beat is missing",
    text: "Time: 3/4\nG . D' |",
    notes: ["2:8+1 wrong-length"],
    says: "2½ beats in a bar of 3. Add ½ beat: a dot is one, a comma half of one.",
    bars: ["G:4 D:2"],
  },
  {
    when: "a 2/2 bar is counted in half notes",
    text: "Time: C|\n| G . |",
    notes: ["2:7+1 wrong-length"],
    says: "2 quarter notes in a bar of 4. Add 2 quarter notes: a dot is one.",
    bars: ["G:8"],
  },
  {
    when: "three chords are to share four beats",
    text: "| G C D |",
    notes: ["1:3+1 uneven-bar"],
    says: "3 chords do not share a bar of 4/4 evenly. Count the beats with dots: G C D . fills it.",
    bars: ["G:2 C:2 D:4"],
  },
  {
    when: "five chords are to share four beats",
    text: "G C D G C",
    notes: ["1:1+1 uneven-bar"],
    says: "5 chords do not share a bar of 4/4 evenly. Put a bar line between them, or halve some, as in G'.",
    bars: ["G:1 C:1 D:1 G:1 C:4"],
  },
  {
    when: "a 6/8 bar is counted in dotted quarters",
    text: "Time: 6/8\n| G . |",
    notes: ["2:7+1 wrong-length"],
    says: "2 eighth notes in a bar of 6. Add 4 eighth notes: a dot is one.",
    bars: ["G:6"],
  },
  {
    when: "a 6/8 bar lacks a single eighth",
    text: "Time: 6/8\n| G . . C . |",
    notes: ["2:13+1 wrong-length"],
    says: "5 eighth notes in a bar of 6. Add 1 eighth note: a dot is one.",
    bars: ["G:3 C:3"],
  },
  {
    when: "a 6/8 bar has an eighth too many",
    text: "Time: 6/8\n| G . . C . . . |",
    notes: ["2:17+1 wrong-length"],
    says: "7 eighth notes in a bar of 6. Take 1 eighth note out, or put a bar line before.",
    bars: ["G:3 C:3"],
  },
  {
    when: "four chords are to share six eighths",
    text: "Time: 6/8\nG C D G",
    notes: ["2:1+1 uneven-bar"],
    says: "4 chords do not share a bar of 6/8 evenly. Count the eighth notes with dots: G C D G . . fills it.",
    bars: ["G:1 C:1 D:1 G:3"],
  },
  {
    when: "seven chords are to share six eighths",
    text: "Time: 6/8\nG C D G C D G",
    notes: ["2:1+1 uneven-bar"],
    says: "7 chords do not share a bar of 6/8 evenly. Put a bar line between them.",
    bars: ["G:1 C:1 D:1 G:1 C:1 D:1"],
  },
  {
    when: "an eighth is halved in 6/8",
    text: "Time: 6/8\nG' . , C . .",
    notes: ["2:2+1 stray-mark", "2:6+1 stray-mark"],
    says: "A chord or dot is an eighth note in 6/8, and there is nothing shorter. Write dots: G . . is three eighth notes of G.",
    bars: ["G:3 C:3"],
  },
  {
    when: "an eighth of 6/8 is a slash",
    text: "Time: 6/8\nG / . C . .",
    notes: ["2:3+1 stray-mark"],
    says: "One more eighth note is a dot here, not /. Write a dot.",
    bars: ["G:3 C:3"],
  },
  {
    when: "a chord is unknown, which then holds the chord before it",
    text: "G Xy | foo",
    notes: ["1:3+2 unknown-chord", "1:8+3 unknown-chord"],
    says: '"Xy" is not a chord. Write a root from A to G, then the quality, as in G, Am, D7 or Bbmaj7.',
    bars: ["G:4 G:4", "G:8"],
  },
  {
    when: "a chord has no shape of its own",
    text: "G | Am9 .. D7",
    notes: ["1:5+3 reduced"],
    says: "Am9 is played as Am7, its nearest shape. The bass and the singer fill it up.",
    bars: ["G:8", "Am9:6 D7:2"],
  },
  {
    when: "a dominant seventh on a degree lacks its hyphen",
    text: "1 | 57 | 1",
    notes: ["1:5+2 unknown-chord"],
    says: "57 could be one chord or two. Write 5-7 for one chord, or 5 7 for two.",
    bars: ["1:8", "1:8", "1:8"],
  },
  {
    when: "a beat is a slash",
    text: "G / C .",
    notes: ["1:3+1 stray-mark"],
    says: "One more beat is a dot here, not /. Write a dot.",
    bars: ["G:4 C:4"],
  },
  {
    when: "an apostrophe stands behind nothing",
    text: "G . ' C .",
    notes: ["1:5+1 stray-mark"],
    says: "An apostrophe stands right behind a chord. Write it as in G', for half a beat of G.",
    bars: ["G:4 C:4"],
  },
  {
    when: "the chart starts on a dot",
    text: ". . G .",
    notes: ["1:1+1 stray-mark"],
    says: "There is no chord before this dot. Write a chord first.",
    bars: ["N.C.:4 G:4"],
  },
  {
    when: "the chart starts on a percent sign",
    text: "% | G",
    notes: ["1:1+1 no-bar-before"],
    says: "There is no bar before this %. Write the chords.",
    bars: ["N.C.:8", "G:8"],
  },
  {
    when: "a percent sign shares a bar",
    text: "G | C %",
    notes: ["1:5+1 stray-mark"],
    says: "% repeats a whole bar and stands alone. Put it between bar lines, or write a dot for one more beat.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a bar is empty",
    text: "| G |  | C |",
    notes: ["1:5+4 empty-bar"],
    says: "There is nothing in this bar. Write % for the bar before, or a dot for each beat of its last chord.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a repeat has no end",
    text: "|: G | C |",
    notes: ["1:1+2 open-repeat"],
    says: "This repeat has no end. Write :| where it goes back, or a plain | here.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a repeat end has nothing to repeat",
    text: "[A] :| G",
    notes: ["1:5+2 no-repeat"],
    says: "There is no bar before this repeat end. Put :| behind the last bar of the repeat.",
    bars: ["G:8"],
  },
  {
    when: "a repeat starts before its label",
    text: "G |: [B] C :|",
    notes: ["1:3+2 open-repeat"],
    says: "This repeat starts behind its section's last bar. Write |: behind the label of the section that is repeated.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "an ending belongs to no repeat",
    text: "G |[1 C | D",
    notes: ["1:4+2 bad-ending"],
    says: "This ending belongs to no repeat. Write :| at the end of the first ending.",
    bars: ["G:8", "C:8", "D:8"],
  },
  {
    when: "the second ending is missing",
    text: "|: G |[1 C :| D",
    notes: ["1:7+2 bad-ending"],
    says: "There is no ending for time 2. Write [2 before the bars played that time.",
    bars: ["G:8", "C:8", "D:8"],
  },
  {
    when: "two endings have one number",
    text: "|: G |[1 C :|[1,2 D |]",
    notes: ["1:14+4 bad-ending"],
    says: "There are two endings for time 1; the first is played. Number this one 2.",
    bars: ["G:8", "C:8", "D:8"],
  },
  {
    when: "an ending's numbers run backwards",
    text: "|: G |[2-1 C ::|[3 D |]",
    notes: ["1:7+4 bad-ending"],
    says: "An ending is numbered from 1 to 16, the lower number first. Write it as in [1 or [1,3 or [1-3.",
    bars: ["G:8", "C:8", "D:8"],
  },
  {
    when: "an ending starts in the middle of a bar",
    text: "|: G [1 C :|[2 D |]",
    notes: ["1:6+2 bad-ending"],
    says: "An ending starts behind a bar line. Write |[1",
    bars: ["G:8", "C:8", "D:8"],
  },
  {
    when: "a figure touches a bar line and could be meant as an ending",
    text: "| G |1 D | C |",
    notes: ["1:6+1 figure-is-degree"],
    says: "1 is the degree here, not an ending. An ending is written [1 and the one after it [2; a degree has white space before it.",
    bars: ["G:8", "1:4 D:4", "C:8"],
  },
  {
    when: "a label has a mark in it",
    text: "[Verse/2] G",
    notes: ["1:1+9 bad-label"],
    says: "A label is one word of letters, figures and hyphens, 32 at most. Write [Verse-2].",
    bars: ["G:8"],
  },
  {
    when: "two bars' repeats stand in one bar",
    text: "G C | % % | D",
    notes: ["1:7+1 stray-mark"],
    says: "% repeats a whole bar and stands alone. Write | % | % | for two bars.",
    bars: ["G:4 C:4", "G:4 C:4", "D:8"],
  },
  {
    when: "a field is misspelt",
    text: "Tepo: 120",
    notes: ["1:1+4 unknown-field"],
    says: '"Tepo:" is not a field of the header. Did you mean Tempo? The fields are Title, Key, Time, Tempo, Capo, Tuning, Form; a section is written [Tepo].',
    bars: [],
  },
  {
    when: "a section is labelled like a field",
    text: "Chorus: G",
    notes: ["1:1+6 unknown-field"],
    says: '"Chorus:" is not a field of the header. The fields are Title, Key, Time, Tempo, Capo, Tuning, Form; a section is written [Chorus].',
    bars: [],
  },
  {
    when: "a label is not closed",
    text: "[Verse G | C",
    notes: ["1:1+6 bad-label"],
    says: "This label has no closing bracket. Write [Verse].",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a section has no bars",
    text: "[A] G\n[B] C\n[A]",
    notes: ["3:1+3 empty-section"],
    says: "Section [A] has no bars. Write its bars behind it; to play a section again name it in Form.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "the form names a section that there is not",
    text: "Form: A C\n[A] G",
    notes: ["1:9+1 bad-form"],
    says: "There is no section [C]. The sections are A.",
    bars: ["G:8"],
  },
  {
    when: "the form's labels are run together",
    text: "Form: AAB\n[A] G\n[B] C",
    notes: ["1:7+3 bad-form"],
    says: "There is no section [AAB]. Write the labels apart: A A B.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "the form leaves a section out",
    text: "Form: A\n[A] G\n[B] C",
    notes: ["3:1+3 section-unplayed"],
    says: "The form leaves [B] out. Add it to Form to hear it.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "two sections of a form have one label",
    text: "Form: A A\n[A] G\n[A] C",
    notes: ["3:1+3 bad-form"],
    says: "There are two sections [A]; the form plays the first. Give this one a label of its own.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a heading has no brackets",
    text: "Chorus\nG",
    notes: ["1:1+6 not-chords"],
    says: "There are no chords on this line. To start a section write [Chorus]; for a remark put # before it.",
    bars: ["G:8"],
  },
  {
    when: "a heading has a number and a colon",
    text: "Verse 2:\nG",
    notes: ["1:1+7 not-chords"],
    says: "There are no chords on this line. To start a section write [Verse-2]; for a remark put # before it.",
    bars: ["G:8"],
  },
  {
    when: "a line is words",
    text: "G\nOh the rain came over the hill\nC",
    notes: ["2:1+30 not-chords"],
    says: "There are no chords on this line. For words or a remark put # before the line.",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a header field lacks its colon",
    text: "Key A\nG",
    notes: ["1:1+5 not-chords"],
    says: "A field of the header has a colon. Write Key: A",
    bars: ["G:8"],
  },
  {
    when: "a colon or bracket stands alone",
    text: "G : | C ]",
    notes: ["1:3+1 stray-mark", "1:9+1 stray-mark"],
    says: "A lone : means nothing here. A repeat starts with |: and ends with :|",
    bars: ["G:8", "C:8"],
  },
  {
    when: "a passage is to be played too often",
    text: `|: G ${":".repeat(20)}|`,
    notes: ["1:6+21 too-many-plays"],
    says: "A passage is played at most 16 times. Take colons out, or name the section more often in Form.",
    bars: ["G:8"],
  },
];

describe("a slip is put right and said at its place when", () => {
  for (const { when, text, notes, says, bars } of slips) {
    test(when, () => {
      const reading = readChart(text);
      const places = reading.notes.map(
        ({ at, code }) => `${at.line}:${at.column}+${at.length} ${code}`,
      );
      expect(places).toEqual(notes);
      expect(`${reading.notes[0]?.says} ${reading.notes[0]?.try}`).toBe(says);
      expect(barsOf(text)).toEqual(bars);
    });
  }

  test("there are more slips than anyone reads: the rest are counted", () => {
    const { notes } = readChart("X | ".repeat(950));
    expect(notes.length).toBe(200);
    expect(notes.at(-1)).toMatchObject({
      code: "too-many-notes",
      severity: "error",
      says: "From here on 751 more things are wrong.",
    });
  });
});
