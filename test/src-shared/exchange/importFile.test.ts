import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { importFile } from "../../../src-shared/exchange/importFile.ts";
import type { FoundSong, Importing } from "../../../src-shared/exchange/importing.ts";
import { readMusicXml } from "../../../src-shared/exchange/readMusicXml.ts";
import { writeMusicXml } from "../../../src-shared/exchange/writeMusicXml.ts";
import { demoWalks } from "./demoWalks.ts";

const abc = `X:1
T:Nine Stiles
M:6/8
L:1/8
Q:3/8=104
K:Ador
P:A
E|:"Am"A2B c2d|"G"B2A "Em/b"G2E|"Am"A2B "D/f+"c2d|[1 "Em"e3 "Am"A2E:|[2 "Em"e3 "Am"A3|]
`;
const score = writeMusicXml(demoWalks[0]?.[1] ?? never(), { notation: true });
const packed = zipSync({ "score.xml": strToU8(score) });

function never(): never {
  throw new Error("there are no demo songs");
}

/** Tunes whose charts read back, or a refusal that says what is wrong and what to do. */
const checkWhole = (found: Importing): void => {
  const refusals = found.ok ? found.tunes.filter((tune) => !tune.ok) : [found];
  for (const refusal of refusals) {
    expect(refusal.ok ? "" : refusal.says).toMatch(/^\S[\s\S]{5,300}$/);
    expect(refusal.ok ? "" : refusal.try).toMatch(/^\S.{5,200}$/);
  }
  for (const tune of found.ok ? found.tunes : []) {
    if (tune.ok) {
      expect(readChart(tune.chart).value.sections.length).toBeGreaterThan(0);
    }
  }
};

const onlyTune = (found: Importing): FoundSong => {
  const tune = found.ok ? found.tunes[0] : null;
  if (!tune?.ok) {
    throw new Error(JSON.stringify(tune ?? found));
  }
  return tune;
};

const saysOf = (found: Importing): string => {
  const tune = found.ok ? found.tunes[0] : found;
  return tune && !tune.ok ? `${tune.says} ${tune.try}` : "";
};

const files: readonly (readonly [string, Uint8Array])[] = [
  ["an ABC file", strToU8(abc)],
  ["a MusicXML file", strToU8(score)],
  ["a packed MusicXML file", packed],
  ["a chart", strToU8("Title: Ash Lane\n| G | C D | G . . D7 |")],
];

describe("every file", () => {
  for (const [name, bytes] of files) {
    test(`${name}, cut off anywhere, gives whole charts or a refusal in words`, () => {
      fc.assert(
        fc.property(fc.nat({ max: bytes.length - 1 }), (length) => {
          checkWhole(importFile(bytes.subarray(0, length)));
        }),
        { numRuns: 60 },
      );
    });

    test(`${name}, with bytes changed anywhere, gives whole charts or a refusal in words`, () => {
      const change = fc.tuple(fc.nat({ max: bytes.length - 1 }), fc.nat({ max: 255 }));
      fc.assert(
        fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), (changes) => {
          const broken = bytes.slice();
          for (const [at, byte] of changes) {
            broken[at] = byte;
          }
          checkWhole(importFile(broken));
        }),
        { numRuns: 60 },
      );
    });
  }

  test("of any bytes at all gives whole charts or a refusal in words", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        checkWhole(importFile(bytes));
      }),
      { numRuns: 500 },
    );
  });

  test("that is nearly ABC gives whole charts or a refusal in words", () => {
    const scraps = [
      ..."ABCDEFGabcdefgzxyZ|:[](){}<>~'\",^_=/0123456789 \n\\!+&*.-$%",
      '"G"',
      '"D7/f+"',
      "|:",
      ":|",
      "::",
      "[1",
      "|2",
      "(3",
      "M:6/8\n",
      "[M:9/8]",
      "K:Bb\n",
      "[K:none]",
      "P:B\n",
      "V:2\n",
      "Q:1/4=0\n",
      "L:1/0\n",
      "m:~n2=n\n",
      "%%score (1 2)\n",
      "[I:x]",
      "w: la\n",
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...scraps), { maxLength: 120 }), (parts) => {
        checkWhole(importFile(strToU8(`X:1\nT:x\nK:G\n${parts.join("")}\n`)));
      }),
      { numRuns: 600 },
    );
  });
});

describe("a file in another encoding", () => {
  const utf16 = (text: string, bigEndian: boolean): Uint8Array => {
    const bytes = Buffer.from(`\ufeff${text}`, "utf16le");
    return new Uint8Array(bigEndian ? bytes.swap16() : bytes);
  };

  test("is read where it is UTF-16 with its mark", () => {
    for (const bigEndian of [false, true]) {
      expect(onlyTune(importFile(utf16(abc, bigEndian))).title).toBe("Nine Stiles");
      const xml = score.replace('encoding="UTF-8"', 'encoding="UTF-16"');
      expect(onlyTune(importFile(utf16(xml, bigEndian))).chart).toBe(
        onlyTune(importFile(strToU8(score))).chart,
      );
    }
  });

  test("is read where UTF-8 has its mark, and as whole charts or a refusal where UTF-16 is cut", () => {
    const marked = Buffer.from(`\ufeff${abc}`, "utf8");
    expect(onlyTune(importFile(new Uint8Array(marked))).title).toBe("Nine Stiles");
    const bytes = utf16(abc, false);
    for (let length = 0; length < bytes.length; length += 13) {
      checkWhole(importFile(bytes.subarray(0, length)));
    }
  });

  test("is read as Latin-1 where it is no UTF-8, and that is said", () => {
    const tune = onlyTune(importFile(Buffer.from(abc.replace("Nine", "Öde"), "latin1")));
    expect(tune.title).toBe("Öde Stiles");
    expect(tune.read.join()).toContain("Latin-1");
  });
});

describe("a file made to do harm", () => {
  test("with entities of its own is refused, and none is expanded", () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE score-partwise [<!ENTITY a "aaaaaaaaaa">${Array.from(
      { length: 9 },
      (_, at) => `<!ENTITY a${at} "${`&a${at === 0 ? "" : at - 1};`.repeat(10)}">`,
    ).join("")}]><score-partwise><work><work-title>&a8;</work-title></work></score-partwise>`;
    expect(saysOf(importFile(strToU8(bomb)))).toContain("entities of its own");
    const hidden = '<score-partwise><!ENTITY a SYSTEM "file:///etc/passwd"></score-partwise>';
    expect(saysOf(importFile(strToU8(hidden)))).toContain("entities of its own");
  });

  test("that only names the usual document type is read", () => {
    const named = score.replace(
      "<score-partwise",
      '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 3.1 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">\n<score-partwise',
    );
    expect(onlyTune(importFile(strToU8(named))).chart).toBe(
      onlyTune(importFile(strToU8(score))).chart,
    );
  });

  test("that unpacks to more than its limit is refused before it is unpacked", () => {
    const zeros = new Uint8Array(200 * 1024 * 1024);
    const bomb = zipSync({ "score.xml": zeros }, { level: 9 });
    expect(bomb.length).toBeLessThan(1024 * 1024);
    const before = process.memoryUsage().arrayBuffers;
    expect(saysOf(importFile(bomb))).toContain("more than 8 MB");
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(64 * 1024 * 1024);
  });

  test("that is packed with too many files, or with none that is a score, is refused", () => {
    const many = Object.fromEntries(
      Array.from({ length: 100 }, (_, at) => [`${at}.txt`, Uint8Array.of(65)]),
    );
    expect(saysOf(importFile(zipSync(many)))).toContain("more than 64 files");
    expect(saysOf(importFile(zipSync({ "a.txt": Uint8Array.of(65) })))).toContain("no whole score");
  });

  test("that nests deeper than any score is refused", () => {
    const deep = `<score-partwise>${"<a>".repeat(100_000)}${"</a>".repeat(100_000)}</score-partwise>`;
    expect(saysOf(importFile(strToU8(deep)))).toContain("cannot be read");
  });

  test("that is longer than any tune book is refused", () => {
    expect(saysOf(importFile(new Uint8Array(9 * 1024 * 1024).fill(65)))).toContain("8 MB");
    const tunes = "X:1\nK:G\n\n".repeat(3000);
    expect(saysOf(importFile(strToU8(tunes)))).toContain("3000 tunes");
    const long = `X:1\nK:G\n${'"G"G4|'.repeat(20_000)}`;
    expect(saysOf(importFile(strToU8(long)))).toContain("too long");
  });

  test("whose notes last for ever, or for no time at all, gives a chart of its bars or a refusal", () => {
    const ever =
      'X:1\nT:Ever\nM:4/4\nL:1/8\nK:G\n"G"G99999999|"C"c8|"D"d99999999999999999999|"G"G8|\n';
    const tune = onlyTune(importFile(strToU8(ever)));
    expect(tune.chart).toContain("| G | C | D | G |");
    expect(tune.left.join(" ")).toContain("longer than a bar");
    const none = 'X:1\nT:None\nM:4/4\nL::/8\nK:G\n"G"G8|\n';
    expect(saysOf(importFile(strToU8(none)))).toContain("no bars");
    const bars = `<measure number="1"><attributes/><harmony><root><root-step>C</root-step></root><kind>major</kind></harmony><note><rest/><duration>4</duration></note></measure>`;
    const many = `<score-partwise><part>${bars.repeat(6000)}</part></score-partwise>`;
    expect(saysOf(importFile(strToU8(many)))).toContain("6000 bars");
  });

  test("of more tags than any score is refused before it is read", () => {
    const wide = `<score-partwise>${"<a/>".repeat(400_001)}</score-partwise>`;
    expect(saysOf(importFile(strToU8(wide)))).toContain("more than 400000 XML tags");
    const attributes = `<score-partwise ${'a="" '.repeat(400_001)}/>`;
    expect(saysOf(importFile(strToU8(attributes)))).toContain("more than 400000 XML tags");
  });

  // The parser's work grows with the square of these; without a budget each takes minutes.
  test.each([
    ["a line without an end", '"G"GGGG|'.repeat(400), "longer than 2000 characters"],
    ["marks without an end", `"G"G4|${"{".repeat(1500)}`, "{ stands more than 40 times running"],
    ["voices without an end", '"G"G4&A4|\n'.repeat(200), "more than 128 voices"],
  ])("of %s is refused before it is parsed", (_, body, says) => {
    expect(saysOf(importFile(strToU8(`X:1\nT:x\nM:4/4\nL:1/4\nK:G\n${body}\n`)))).toContain(says);
  });

  test.each([
    ["commas", `G${",".repeat(100_000)}x`, "no chords"],
    ["dashes", `G${"-".repeat(100_000)}x`, "no chords"],
    ["dashes between spaces", `G${" -".repeat(50_000)}x`, "more than 20000 words"],
    ["chords", "G ".repeat(9000), "9000 chords"],
    ["words", "G ".repeat(30_000), "more than 20000 words"],
    ["bar lines", "| G ".repeat(11_000), "11000 bar lines"],
    ["letters", "G".repeat(300_000), "too long"],
  ])("of %s without an end is refused", (_, text, says) => {
    expect(saysOf(importFile(strToU8(text)))).toContain(says);
  });

  test("that jumps back from everywhere ends, as the chart has so many bars at most", () => {
    const bar = '"G"G4!D.C.!|\n';
    const tunes = importFile(strToU8(`X:1\nT:x\nM:4/4\nL:1/4\nK:G\n${bar.repeat(900)}`));
    expect(saysOf(tunes)).toMatch(/^This tune has 6\d\d\d bars/);
  });

  test("with zero bytes or nothing in it is refused", () => {
    expect(saysOf(importFile(Uint8Array.of(65, 0, 66)))).toContain("zero bytes");
    expect(saysOf(importFile(new Uint8Array(0)))).toContain("empty");
  });
});

describe("an ABC file", () => {
  test("gives its changes, key, metre, tempo, endings and parts, and says what was left", () => {
    const tune = onlyTune(importFile(strToU8(abc)));
    expect(tune.chart).toBe(`Title: Nine Stiles
Key: Am
Time: 6/8
Tempo: 104

[A]
|: Am | G Em/B | Am D/F# |[1 Em Am :|
|[2 Em Am ||
`);
    expect(tune.left.join(" ")).toContain("mode (Dor)");
    expect(tune.left.join(" ")).toContain("notes");
  });

  test("of many tunes gives a list, each with its own chart or reason", () => {
    const more = `${abc}\nX:2\nT:No Chords\nK:C\nCDEF|\n\nX:3\nT:Odd\nM:7/8\nK:C\n"C"C7|\n`;
    const found = importFile(strToU8(more));
    const tunes = found.ok ? found.tunes : [];
    expect(tunes.map((tune) => [tune.ok, tune.title])).toEqual([
      [true, "Nine Stiles"],
      [false, "No Chords"],
      [false, "Odd"],
    ]);
    expect(tunes[2]?.ok === false && tunes[2].says).toContain("7/8");
  });

  test("plays its parts in the order that its header tells", () => {
    const text = 'X:1\nT:Order\nP:A2B\nM:2/4\nL:1/4\nK:D\nP:A\n"D"D2|"A"A2|\nP:B\n"G"G2|"D"D2|\n';
    expect(onlyTune(importFile(strToU8(text))).chart).toContain("Form: A A B");
  });

  test("has a chord that stands at a line's end before the next line's first note", () => {
    const text = 'X:1\nT:Wrap\nM:2/4\nL:1/4\nK:D\n"D"D2|"A"\nA2|"G"G2|\n';
    expect(onlyTune(importFile(strToU8(text))).chart).toContain("| D | A | G |");
  });

  test("names a pick-up's chords that are left out", () => {
    const text = 'X:1\nT:Early\nM:3/4\nL:1/4\nK:D\n"A"A|"D"D3|"G"G3|\n';
    const tune = onlyTune(importFile(strToU8(text)));
    expect(tune.chart).toContain("| D | G |");
    expect(tune.left.join(" ")).toContain("Bar 1 is a pick-up (A)");
  });

  test("moves chords between eighths to the nearest, and says so", () => {
    const text = 'X:1\nT:Quick\nM:2/4\nL:1/16\nK:D\n"D"D3"A"A5|"D"D8|\n';
    const tune = onlyTune(importFile(strToU8(text)));
    expect(tune.chart).toContain("| D A");
    expect(tune.left.join(" ")).toContain("between two eighths");
  });
});

describe("a MusicXML file", () => {
  const measure = (number: number, inner: string): string =>
    `<measure number="${number}">${inner}</measure>`;
  const chord = (step: string, kind = "major"): string =>
    `<harmony><root><root-step>${step}</root-step></root><kind>${kind}</kind></harmony>`;
  const rest = (duration: number): string => `<note><rest/><duration>${duration}</duration></note>`;
  const scoreOf = (...measures: readonly string[]): Uint8Array =>
    strToU8(
      `<score-partwise version="3.1"><movement-title>Tin Gate</movement-title><part-list/><part id="P1">${measures.join("")}</part></score-partwise>`,
    );
  const start =
    "<attributes><divisions>2</divisions><key><fifths>-1</fifths><mode>minor</mode></key><time><beats>3</beats><beat-type>4</beat-type></time></attributes>";

  test("gives chords, pick-up, repeats, endings, key, metre and tempo", () => {
    const bytes = scoreOf(
      measure(0, `${start}<sound tempo="90"/>${rest(2)}`),
      measure(
        1,
        `<barline location="left"><repeat direction="forward"/></barline>${chord("D", "minor")}${rest(6)}`,
      ),
      measure(
        2,
        `<barline location="left"><ending number="1" type="start"/></barline>${chord("A", "dominant")}${rest(4)}${chord("G")}${rest(2)}<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>`,
      ),
      measure(
        3,
        `<barline location="left"><ending number="2" type="start"/></barline>${chord("D", "minor")}${rest(6)}<barline location="right"><ending number="2" type="stop"/></barline>`,
      ),
    );
    expect(onlyTune(readMusicXml(bytes)).chart).toBe(`Title: Tin Gate
Key: Dm
Time: 3/4
Tempo: 90

|: Dm |[1 A7 . G :|[2 Dm ||
`);
  });

  test("leaves kinds that no chord symbol has, and says in which bar", () => {
    const bytes = scoreOf(
      measure(1, `${start}${chord("D", "minor")}${rest(6)}`),
      measure(2, `${chord("E", "Neapolitan")}${rest(6)}`),
    );
    expect(onlyTune(readMusicXml(bytes)).left.join(" ")).toContain(
      "Bar 2: the harmony E Neapolitan",
    );
  });

  test("says why it cannot be a chart: no chords, another metre, no score", () => {
    expect(saysOf(readMusicXml(scoreOf(measure(1, `${start}${rest(6)}`))))).toContain(
      "no chord symbols",
    );
    const change = "<attributes><time><beats>5</beats><beat-type>4</beat-type></time></attributes>";
    const changing = scoreOf(
      measure(1, `${start}${chord("C")}${rest(6)}`),
      measure(2, `${change}${chord("C")}${rest(10)}`),
    );
    expect(saysOf(readMusicXml(changing))).toContain("changes to 5/4 in bar 2");
    expect(saysOf(readMusicXml(strToU8("<html/>")))).toContain("<html>");
    expect(saysOf(readMusicXml(strToU8("<score-timewise/>")))).toContain("score-timewise");
  });
});

describe("pasted text", () => {
  test("of chords alone gives a bar to each, and leaves other lines", () => {
    const tune = onlyTune(importFile(strToU8("G  C  D\nA walk by the weir\nEm - A7, D")));
    expect(tune.chart).toContain("| G | C | D | Em |\n| A7 | D |");
    expect(tune.left).toEqual(['"A walk by the weir" has no chords alone.']);
  });

  test("that is a chart is kept as it is", () => {
    const text = "Title: Ash Lane # mine\n| G | C | X |\n";
    const tune = onlyTune(importFile(strToU8(text)));
    expect(tune.chart).toBe(text);
    expect(tune.left.join()).toContain("Line 2");
  });

  test("without a chord is refused", () => {
    expect(saysOf(importFile(strToU8("Down by the weir")))).toContain("no chords");
  });
});
