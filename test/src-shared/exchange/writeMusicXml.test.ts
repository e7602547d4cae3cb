import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { strToU8, zipSync } from "fflate";
import { Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import { validateXML } from "xmllint-wasm";
import { writeChart } from "../../../src-shared/chart/writeChart.ts";
import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import { kindFor, kindTable, suffixFor } from "../../../src-shared/exchange/kindTable.ts";
import { noteValues } from "../../../src-shared/exchange/noteValues.ts";
import { playedOut } from "../../../src-shared/exchange/playedOut.ts";
import { readMusicXml } from "../../../src-shared/exchange/readMusicXml.ts";
import { readXml } from "../../../src-shared/exchange/readXml.ts";
import { writeMusicXml } from "../../../src-shared/exchange/writeMusicXml.ts";
import {
  childOf,
  childrenOf,
  textAt,
  type XmlElement,
} from "../../../src-shared/exchange/xmlTree.ts";
import { readChord } from "../../../src-shared/harmony/readChord.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { demoWalks } from "./demoWalks.ts";

/** The MusicXML 4.0 schema of the W3C Music Notation Community Group, where it is at hand. */
const folder = resolve("../shared/musicxml");
const schemaThere = existsSync(resolve(folder, "musicxml.xsd"));
const schemaOf = (name: string): string => readFileSync(resolve(folder, name), "utf8");

/** xmllint knows the two imported schemas by the bare names they are handed over with. */
const validate = async (
  files: readonly (readonly [string, string])[],
): Promise<readonly string[]> => {
  const schema = schemaOf("musicxml.xsd").replace(
    /schemaLocation="[^"]*\/?(xml|xlink)\.xsd"/g,
    'schemaLocation="$1.xsd"',
  );
  const result = await validateXML({
    xml: files.map(([fileName, contents]) => ({ fileName, contents })),
    schema: [{ fileName: "musicxml.xsd", contents: schema }],
    preload: ["xml.xsd", "xlink.xsd"].map((fileName) => ({
      fileName,
      contents: schemaOf(fileName),
    })),
    initialMemoryPages: 1024,
    maxMemoryPages: 8192,
  });
  return result.errors.map((error) => error.message);
};

const rootOf = (text: string): XmlElement => {
  const reading = readXml(text);
  if (!reading.ok) {
    throw new Error(reading.says);
  }
  return reading.root;
};

const notesOf = (walk: Walk, notation = false): readonly XmlElement[] =>
  childrenOf(rootOf(writeMusicXml(walk, { notation })), "part")
    .flatMap((part) => childrenOf(part, "measure"))
    .flatMap((measure) => childrenOf(measure, "note"));

const walkOf = (chart: string): Walk => chartToScore(chart, wholeNeckPlan, null);

describe.runIf(schemaThere)("the MusicXML schema", () => {
  test("takes every demo song under every plan, with and without notation", async () => {
    const files = demoWalks.flatMap(([name, walk], index) =>
      [false, true].map(
        (notation) =>
          [
            `${index}-${notation ? "both" : "tab"}-${name.replace(/\W+/g, "-")}.xml`,
            writeMusicXml(walk, { notation }),
          ] as const,
      ),
    );
    expect(files.length).toBe(2 * demoWalks.length);
    expect(await validate(files)).toEqual([]);
  }, 120_000);

  test("refuses what it should: a kind of its own and a tuning on line 0", async () => {
    const good = writeMusicXml(walkOf("| G | C |"), { notation: false });
    const badKind = good.replace(">major</kind>", ">maj</kind>");
    const badLine = good.replace('staff-tuning line="1"', 'staff-tuning line="0"');
    expect((await validate([["kind.xml", badKind]])).length).toBeGreaterThan(0);
    expect((await validate([["line.xml", badLine]])).length).toBeGreaterThan(0);
  });

  test("has just the kinds of the table", () => {
    const names = /<xs:simpleType name="kind-value">[\s\S]*?<\/xs:simpleType>/.exec(
      schemaOf("musicxml.xsd"),
    );
    const values = [...(names?.[0] ?? "").matchAll(/enumeration value="([^"]+)"/g)];
    expect(kindTable.map((row) => row.kind)).toEqual(values.map((match) => match[1]));
    expect(kindTable.length).toBe(33);
  });
});

describe("every demo song as MusicXML", () => {
  for (const [name, walk] of demoWalks) {
    test(`${name}: comes back as the chart that was played, plain and packed`, () => {
      const expected = writeChart({
        ...playedOut(walk.song, walk.timeline),
        tempo: walk.tempo,
      });
      const bytes = strToU8(writeMusicXml(walk, { notation: false }));
      const packed = zipSync({
        "META-INF/container.xml": strToU8(
          '<container><rootfiles><rootfile full-path="a/score.xml"/></rootfiles></container>',
        ),
        "a/score.xml": bytes,
      });
      for (const file of [bytes, packed, strToU8(writeMusicXml(walk, { notation: true }))]) {
        const found = readMusicXml(file);
        const tune = found.ok ? found.tunes[0] : null;
        expect(tune?.ok ? tune.chart : (tune ?? found)).toBe(expected);
      }
    });

    test(`${name}: has pitches that are tuning plus capo plus fret, and durations that fill bars`, () => {
      const { open } = walk.neck.tuning;
      const letters: Readonly<Record<string, number>> = {
        C: 0,
        D: 2,
        E: 4,
        F: 5,
        G: 7,
        A: 9,
        B: 11,
      };
      let struck = 0;
      for (const note of notesOf(walk)) {
        const pitch = childOf(note, "pitch");
        const technical =
          childOf(note, "notations") && childOf(childOf(note, "notations") ?? note, "technical");
        if (pitch === null || technical === null) {
          continue;
        }
        const midi =
          12 * (Number(textAt(pitch, "octave")) + 1) +
          (letters[textAt(pitch, "step") ?? ""] ?? Number.NaN) +
          Number(textAt(pitch, "alter") ?? 0);
        const string = Number(textAt(technical, "string"));
        const fret = Number(textAt(technical, "fret"));
        expect(midi).toBe((open[string - 1] ?? Number.NaN) + walk.neck.capo + fret);
        expect(["T", "I", "M"]).toContain(textAt(technical, "pluck"));
        struck += childrenOf(note, "tie").some((tie) => tie.attributes["type"] === "stop") ? 0 : 1;
      }
      expect(struck).toBe(walk.score.notes.length);
      const part = childOf(rootOf(writeMusicXml(walk, { notation: false })), "part");
      for (const [index, measure] of childrenOf(part ?? rootOf(""), "measure").entries()) {
        const sum = childrenOf(measure, "note")
          .filter((note) => childOf(note, "chord") === null)
          .reduce((total, note) => total + Number(textAt(note, "duration")), 0);
        expect(sum, `bar ${index + 1}`).toBe(walk.timeline.bars[index]?.length);
      }
    });

    test(`${name}: starts each slide that it stops, on the string it stops on`, () => {
      const open = new Set<string>();
      let slides = 0;
      for (const note of notesOf(walk)) {
        const notations = childOf(note, "notations");
        for (const slide of notations === null ? [] : childrenOf(notations, "slide")) {
          const id = `${slide.attributes["number"]}`;
          if (slide.attributes["type"] === "stop") {
            expect(open.delete(id)).toBe(true);
            slides += 1;
          } else {
            expect(open.has(id)).toBe(false);
            open.add(id);
          }
        }
      }
      expect([...open]).toEqual([]);
      const legs = walk.route?.legs.filter((leg) => leg.kind === "slide" && !leg.seam) ?? [];
      expect(slides > 0).toBe(legs.length > 0);
    });
  }
});

describe("the kinds of harmony", () => {
  test("read back from the symbols they are written for", () => {
    for (const { kind, suffix } of kindTable) {
      if (suffix !== null) {
        const first = kind === "major-11th" ? "major-ninth" : kind;
        expect(kindFor(suffix)).toEqual({ kind: first, degrees: [] });
        expect(readChord(`C${suffix}`).ok, suffix).toBe(true);
        expect(TonalChord.get(`C${suffix}`).empty, suffix).toBe(false);
      }
    }
    for (const suffix of ["7sus4", "add9", "madd9", "7b9", "7#9", "7b5"]) {
      const found = kindFor(suffix);
      expect(found && suffixFor(found.kind, found.degrees)).toBe(suffix);
      expect(TonalChord.get(`C${suffix}`).empty, suffix).toBe(false);
    }
  });

  test("survive a chart with larger chords, slashes and silence", () => {
    const walk = walkOf(
      "Key: Bb\n| C9 | F7sus4 | N.C. | Eb6 . . Bb/D | Gm7b5 | A13 | Abdim7 | Gm |",
    );
    const found = readMusicXml(strToU8(writeMusicXml(walk, { notation: false })));
    const tune = found.ok ? found.tunes[0] : null;
    expect(tune?.ok ? tune.chart : "").toContain(
      "| C9 | F7sus4 | N.C. | Eb6 . . Bb/D |\n| Gm7b5 | A13 | Abdim7 | Gm |",
    );
  });
});

describe("a MusicXML score", () => {
  test("tells tempo in quarters, cut time by its sign, and the unit of its beat", () => {
    const of = (header: string) => writeMusicXml(walkOf(`${header}\n| G |`), { notation: false });
    const cut = of("Time: 2/2 Tempo: 100");
    expect(cut).toContain('<time symbol="cut">');
    expect(cut).toContain("<beat-unit>half</beat-unit>");
    expect(cut).toContain('<sound tempo="200"/>');
    const six = of("Time: 6/8 Tempo: 100");
    expect(six).toContain("<beat-unit-dot/>");
    expect(six).toContain('<sound tempo="150"/>');
  });

  test("escapes what XML must not have in a title, and drops what it cannot", () => {
    const walk = walkOf("Title: Salt & <Rye> \u0001\n| G |");
    const text = writeMusicXml(walk, { notation: false });
    expect(text).toContain("Salt &amp; &lt;Rye&gt;");
    const found = readMusicXml(strToU8(text));
    expect(found.ok && found.tunes[0]?.title).toBe("Salt & <Rye>");
  });

  test("spells pitches by the chord they are struck in, not by the key", () => {
    // Bb is a tone of Bb, C# one of A; in G, which has sharps, and in F, which has flats.
    const pitchesIn = (header: string): readonly string[] =>
      notesOf(walkOf(`${header}\n| Bb | A |`)).flatMap((note) => {
        const pitch = childOf(note, "pitch");
        return pitch === null ? [] : [`${textAt(pitch, "step")}${textAt(pitch, "alter") ?? ""}`];
      });
    for (const header of ["Key: G", "Key: F"]) {
      const pitches = new Set(pitchesIn(header));
      expect([pitches.has("B-1"), pitches.has("C1")]).toEqual([true, true]);
      expect([pitches.has("A1"), pitches.has("D-1")]).toEqual([false, false]);
    }
  });

  test("ties what no single value can be, and keeps the middle of the bar in sight", () => {
    const of = (at: number, length: number) =>
      noteValues(at, length, { beats: 4, unit: 4 }).map((value) => value.ticks);
    expect(of(0, 1920)).toEqual([1920]);
    expect(of(240, 1680)).toEqual([240, 480, 960]);
    expect(of(0, 1200)).toEqual([960, 240]);
    expect(noteValues(0, 1440, { beats: 6, unit: 8 }).map((value) => value.dots)).toEqual([1]);
    expect(noteValues(240, 480, { beats: 6, unit: 8 }).map((value) => value.ticks)).toEqual([480]);
    const nine = noteValues(0, 2160, { beats: 9, unit: 8 });
    expect(nine.map(({ ticks, dots }) => [ticks, dots])).toEqual([
      [1440, 1],
      [720, 1],
    ]);
  });
});
