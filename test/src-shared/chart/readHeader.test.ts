import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";

const headerOf = (text: string) => {
  const { title, key, meter, tempo, capo, tuning } = readChart(text).value;
  return { title, key: `${key.tonic} ${key.mode}`, meter, tempo, capo, tuning };
};
const plain = {
  title: "Untitled",
  key: "G major",
  meter: { beats: 4, unit: 4 },
  tempo: 100,
  capo: 0,
  tuning: "open G",
};
const noteOf = (text: string) => {
  const [note, ...rest] = readChart(text).notes;
  expect(rest).toEqual([]);
  return `${note?.at.line}:${note?.at.column}+${note?.at.length} ${note?.says} ${note?.try}`;
};

describe("a header", () => {
  test("is read one field a line", () => {
    const text =
      "Title: Down Lamp Lane\nKey: Bb\nTime: 3/4\nTempo: 96\nCapo: 3\nTuning: double C\nG";
    expect(readChart(text).notes).toEqual([]);
    expect(headerOf(text)).toEqual({
      title: "Down Lamp Lane",
      key: "Bb major",
      meter: { beats: 3, unit: 4 },
      tempo: 96,
      capo: 3,
      tuning: "double C",
    });
  });

  test("is read several fields a line, in any case, with remarks", () => {
    const text = "title: Down Lamp Lane  KEY: F#m time:2/2 Tempo:88 # brisk\nG";
    expect(readChart(text).notes).toEqual([]);
    expect(headerOf(text)).toEqual({
      ...plain,
      title: "Down Lamp Lane",
      key: "F# minor",
      meter: { beats: 2, unit: 2 },
      tempo: 88,
    });
  });

  test("has a title that runs to the next field, colons and all", () => {
    expect(headerOf("Title: Jam #2: the rain  Key: D").title).toBe("Jam #2: the rain");
    expect(headerOf("Title:\nG").title).toBe("Untitled");
  });

  test("may stand below bars", () => {
    expect(headerOf("G | D\nKey: D").key).toBe("D major");
  });

  test("is not mistaken for a bar line with colons, nor a bar line for it", () => {
    expect(headerOf("G:| C ::D:|")).toEqual(plain);
    expect(readChart("G:| C ::D:|").notes).toEqual([]);
  });
});

describe("a time signature", () => {
  test("is one of six, or common and cut time", () => {
    const meterOf = (text: string) => headerOf(`Time: ${text}`).meter;
    expect(
      ["4/4", "3/4", "2/4", "2/2", "6/8", "9/8", "C", "C|", "c", " 3 / 4"].map(meterOf),
    ).toEqual([
      { beats: 4, unit: 4 },
      { beats: 3, unit: 4 },
      { beats: 2, unit: 4 },
      { beats: 2, unit: 2 },
      { beats: 6, unit: 8 },
      { beats: 9, unit: 8 },
      { beats: 4, unit: 4 },
      { beats: 2, unit: 2 },
      { beats: 4, unit: 4 },
      { beats: 3, unit: 4 },
    ]);
  });

  test("that has no right-hand patterns is said, and 4/4 played", () => {
    for (const time of ["12/8", "6/4", "3/2", "5/4", "3/8", "6/16"]) {
      expect(noteOf(`Time: ${time}\nG`)).toBe(
        `1:7+${time.length} There are no right-hand patterns for ${time} yet. Write Time: 4/4, 3/4, 2/4, 2/2, 6/8 or 9/8.`,
      );
      expect(headerOf(`Time: ${time}`).meter).toEqual(plain.meter);
    }
    expect(noteOf("Time: swing")).toContain('"swing" is not a time signature.');
  });
});

describe("a tempo", () => {
  test("counts beats of the meter, or of the note value it names", () => {
    const tempoOf = (text: string) => headerOf(text).tempo;
    expect(tempoOf("Time: 2/2 Tempo: 104")).toBe(104);
    expect(tempoOf("Time: 2/2 Tempo: 1/2=105")).toBe(105);
    expect(tempoOf("Time: 2/2 Tempo: 1/4=212")).toBe(106);
    expect(tempoOf("Time: 4/4 Tempo: 1/2=107")).toBe(214);
    expect(tempoOf("Tempo: 1/2 = 108 Time: 3/4")).toBe(216);
    expect(tempoOf("Tempo: 109 bpm")).toBe(109);
    expect(tempoOf("Time: 2/2 Tempo: 1/4=111")).toBe(55.5);
  });

  // A dotted quarter is three eighths: by the definition of the augmentation dot.
  test("counts dotted quarters in 6/8", () => {
    const tempoOf = (text: string) => headerOf(text).tempo;
    expect(tempoOf("Time: 6/8 Tempo: 112")).toBe(112);
    expect(tempoOf("Time: 6/8 Tempo: 3/8=113")).toBe(113);
    expect(tempoOf("Time: 6/8 Tempo: 1/4=171")).toBe(114);
    expect(tempoOf("Time: 6/8 Tempo: 1/8 = 345")).toBe(115);
    expect(tempoOf("Time: 6/8 Tempo: 1/2=87")).toBe(116);
    expect(tempoOf("Time: 4/4 Tempo: 3/8=78")).toBe(117);
    expect(noteOf("Time: 6/8 Tempo: 14")).toContain("14 dotted quarters a minute is out of reach.");
    expect(noteOf("Time: 6/8 Tempo: jig")).toContain("Write the dotted quarters in a minute");
    expect(noteOf("Tempo: 3/4=60")).toContain('"3/4=60" is not a tempo.');
  });

  test("goes from 15 to 320, both included: 30 quarters can be written in cut time", () => {
    expect(["15", "320"].map((text) => headerOf(`Tempo: ${text}`).tempo)).toEqual([15, 320]);
    expect(headerOf("Time: 2/2 Tempo: 1/4=30").tempo).toBe(15);
    expect(noteOf("Tempo: 14")).toBe(
      "1:8+2 14 quarter notes a minute is out of reach. Write a tempo from 15 to 320.",
    );
    expect(noteOf("Time: 3/4  Tempo: 1/2=161")).toContain("1:19+7 322 quarter notes");
    expect(noteOf("Tempo: brisk")).toBe(
      '1:8+5 "brisk" is not a tempo. Write the quarter notes in a minute, as in Tempo: 100.',
    );
    expect(headerOf("Tempo: 321").tempo).toBe(100);
  });
});

describe("the other fields", () => {
  test("have a capo from 0 to 11", () => {
    expect(headerOf("Capo: 11").capo).toBe(11);
    expect(noteOf("Capo: 12")).toBe(
      '1:7+2 "12" is not a fret for a capo. Write Capo: and a fret from 0 (none) to 11.',
    );
  });

  test("have a tuning by name", () => {
    expect(headerOf("Tuning: OPEN d").tuning).toBe("open D");
    expect(noteOf("Tuning: wobbly")).toContain('1:9+6 There is no tuning "wobbly" here.');
  });

  test("have a key by its tonic", () => {
    expect(noteOf("Title: x\nKey: H moll")).toContain('2:6+6 "H moll" is not a key.');
    expect(noteOf("Key:")).toContain("1:1+3");
  });

  test("are unknown to the header by any other name", () => {
    expect(noteOf("Author: N. N.")).toBe(
      '1:1+6 "Author:" is not a field of the header. The fields are Title, Key, Time, Tempo, Capo, Tuning, Form; a section is written [Author].',
    );
    expect(noteOf("Key: D Kapo: 2")).toContain("1:8+4");
    expect(noteOf("Tmepo: 90")).toContain("The fields are");
  });

  test("stand once; the first counts", () => {
    expect(noteOf("Key: D\nKey: A")).toBe(
      "2:1+3 Key is given twice; the first stands. Take one of them out.",
    );
    expect(headerOf("Key: D\nKey: A").key).toBe("D major");
  });
});
