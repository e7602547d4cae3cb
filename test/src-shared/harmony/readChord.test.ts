import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { qualityTable } from "../../../src-shared/harmony/qualityTable.ts";
import { readChord, readQuality } from "../../../src-shared/harmony/readChord.ts";
import { anyChord } from "../../laws/anyChord.ts";

const nameOf = (symbol: string): string => {
  const reading = readChord(symbol);
  return reading.ok ? reading.chord.name : `refused: ${reading.says}`;
};
const refusalOf = (symbol: string) => {
  const reading = readChord(symbol);
  return reading.ok ? `read as ${reading.chord.name}` : `${reading.says} ${reading.try}`;
};

/** Spellings met in printed and typed charts: common practice, no published source. */
const spellings: Readonly<Record<string, readonly string[]>> = {
  C: ["C", "CM", "Cmaj", "Cmajor"],
  Cm: ["Cm", "Cmin", "C-", "Cmi", "CMin", "Cminor"],
  C7: ["C7", "Cdom7"],
  Cm7: ["Cm7", "Cmin7", "C-7", "Cmi7"],
  Cmaj7: ["Cmaj7", "CM7", "Cma7", "CΔ", "CΔ7", "CMaj7", "C^7"],
  C6: ["C6"],
  Cdim: ["Cdim", "Co", "C°", "Cº"],
  Cdim7: ["Cdim7", "Co7", "C°7", "Cº7"],
  Cm7b5: ["Cm7b5", "Cø", "Cø7", "Cmin7b5", "Cm7-5", "C-7b5", "Cm7(b5)"],
  Caug: ["Caug", "C+"],
  Csus2: ["Csus2"],
  Csus4: ["Csus4", "Csus"],
};

describe("a chord symbol", () => {
  for (const [name, all] of Object.entries(spellings)) {
    test(`is ${name} in all the trade's spellings`, () => {
      expect(all.map(nameOf)).toEqual(all.map(() => name));
    });
  }

  test("covers every quality above", () => {
    expect(Object.keys(spellings).length).toBe(qualityTable.length);
  });

  test("takes flats and sharps, typed or printed", () => {
    expect(["Bbm", "F#7", "B♭m", "F♯7", "Bb7"].map(nameOf)).toEqual([
      "Bbm",
      "F#7",
      "Bbm",
      "F#7",
      "Bb7",
    ]);
  });

  test("takes a bass note, in small letters too as ABC 2.1 §4.18 allows", () => {
    expect(["G7/B", "Am/g", "D/f#", "C/C"].map(nameOf)).toEqual(["G7/B", "Am/G", "D/F#", "C"]);
  });

  test("reads back from its canonical name, whatever the chord", () => {
    fc.assert(
      fc.property(anyChord, (chord) => {
        expect(readChord(chord.name)).toEqual({ ok: true, chord });
      }),
    );
  });

  test("gives a value of its own each time", () => {
    expect(readChord("Em7")).toEqual({ ok: true, chord: makeChord("E", "m7") });
    expect(readChord("Em7")).not.toBe(readChord("Em7"));
  });
});

describe("a chord without a shape", () => {
  const nearest: Readonly<Record<string, string>> = {
    C9: "C7",
    C13: "C7",
    C7b9: "C7",
    "C7#9": "C7",
    C7b5: "C7",
    Cm9: "Cm7",
    Cm11: "Cm7",
    Cmaj9: "Cmaj7",
    "C6/9": "C6",
    C69: "C6",
    Cadd9: "C",
    C5: "C",
    Cm6: "Cm",
    CmM7: "Cm",
    Cmadd9: "Cm",
    C7sus4: "Csus4",
    "C+7": "Caug",
    C4: "Csus4",
    C2: "Csus2",
    "Bb9/D": "Bb7/D",
  };
  for (const [symbol, name] of Object.entries(nearest)) {
    test(`is played as ${name}: ${symbol}, whose nearest shape that is`, () => {
      const reading = readChord(symbol);
      expect(reading.ok && [reading.chord.name, reading.chord.standsFor]).toEqual([name, symbol]);
    });
  }
});

describe("a text that is no chord of ours", () => {
  const refusals: Readonly<Record<string, string>> = {
    g: "A chord's root is a capital letter. Write G.",
    am7: "A chord's root is a capital letter. Write Am7.",
    bb: "A chord's root is a capital letter. Write Bb.",
    d9: "A chord's root is a capital letter. Write D9.",
    H7: "H is B in English note names, and the German B is Bb. Write B7.",
    IV: "Degrees are written in figures here, not in Roman numerals. Write 4.",
    ii: "Degrees are written in figures here, not in Roman numerals. Write 2m.",
    V7: "Degrees are written in figures here, not in Roman numerals. Write 5-7.",
    vi7: "Degrees are written in figures here, not in Roman numerals. Write 6m7.",
    bVII: "Degrees are written in figures here, not in Roman numerals. Write b7.",
    "vii°": "Degrees are written in figures here, not in Roman numerals. Write 7dim.",
    "G/": '"G/" has no note after the slash. Name the bass note, as in G/C.',
    "C/3": '"3" is not a note for the bass. Name the bass note, as in C/G.',
    "C/": '"C/" has no note after the slash. Name the bass note, as in C/G.',
    "Am7/H": "H is B in English note names. Write Am7/B.",
    "(E7)": '"(E7)" is not a chord. Did you mean E7?',
    Gmmm: '"Gmmm" is not a chord. Did you mean Gm?',
    "F##": '"F##" is not a chord. Did you mean F#?',
    Abb: '"Abb" is not a chord. Did you mean Ab?',
    "": "There is no chord here. Write a root from A to G, then the quality, as in G, Am, D7 or Bbmaj7.",
    "Cmajor seventh": '"Cmajor seventh" is not a chord. Did you mean C?',
    Cconstructor: '"Cconstructor" is not a chord. Did you mean C?',
    __proto__:
      '"__proto__" is not a chord. Write a root from A to G, then the quality, as in G, Am, D7 or Bbmaj7.',
  };
  for (const [symbol, words] of Object.entries(refusals)) {
    test(`is refused in words: "${symbol}"`, () => {
      expect(refusalOf(symbol)).toBe(words);
    });
  }

  test("is refused or read, and never throws", () => {
    const scraps = ["C", "b", "#", "m", "7", "maj", "/", "9", "sus", "°", "(", "V", "H", " "];
    const near = fc.array(fc.constantFrom(...scraps), { maxLength: 8 }).map((all) => all.join(""));
    fc.assert(
      fc.property(fc.oneof(near, fc.string({ unit: "binary" })), (symbol) => {
        const reading = readChord(symbol);
        expect(reading.ok ? reading.chord.name : reading.try).not.toBe("");
      }),
      { numRuns: 2000 },
    );
  });
});

describe("a quality by itself", () => {
  test("is ours, lacking or unknown", () => {
    expect(readQuality("-7")).toEqual({ kind: "ours", quality: "m7" });
    expect(readQuality("11")).toEqual({ kind: "lacking", nearest: "sus4" });
    expect(readQuality("wide")).toEqual({ kind: "unknown" });
  });
});
