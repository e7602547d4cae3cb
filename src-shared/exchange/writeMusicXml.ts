import type { TimedBar } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import { signatureOf } from "../harmony/readKey.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Arranged } from "./arranged.ts";
import { harmonyElement } from "./harmonyElement.ts";
import { partAttributes, rehearsalMark, tempoDirection } from "./partAttributes.ts";
import { BANJO_PROGRAM } from "./soundTable.ts";
import { type Staff, slidesOf, staffNotes } from "./staffNotes.ts";
import { strokesInBars, type WrittenStroke } from "./strokesInBars.ts";
import { element, writeXml, type XmlElement } from "./xmlTree.ts";

/** What a MusicXML file shows besides the tablature. */
export type MusicXmlOptions = {
  /** A staff in notation above the tablature. */
  readonly notation: boolean;
};

/** A chord symbol with its tick, and the voicing that is formed there. */
type Symbol = {
  readonly tick: number;
  readonly chord: Chord | null;
  readonly voicing: Voicing | null;
};

const symbolsOf = ({ timeline, route }: Arranged): readonly Symbol[] => {
  const placed = new Map((route?.placements ?? []).map((each) => [Number(each.start), each]));
  const starts = timeline.stays.map(({ start, chord }) => ({
    tick: start,
    chord,
    voicing: placed.get(start)?.voicing ?? null,
  }));
  const known = new Set(starts.map((each) => Number(each.tick)));
  const more = (route?.placements ?? [])
    .filter((placement) => !known.has(placement.start))
    .map(({ start, chord, voicing }) => ({ tick: start, chord, voicing }));
  return [...starts, ...more].toSorted((a, b) => a.tick - b.tick);
};

const stavesOf = (arranged: Arranged, { notation }: MusicXmlOptions): readonly Staff[] => {
  const { song, neck, route, score } = arranged;
  const common = {
    meter: song.meter,
    neck,
    flats: signatureOf(song.key) < 0,
    placements: route?.placements ?? [],
    ...slidesOf(score.notes),
  };
  const tablature = { ...common, kind: "tablature" } as const;
  return notation
    ? [
        { ...common, kind: "notation", number: 1, voice: 1 },
        // Four voices are kept free for each staff, as notation programs number them.
        { ...tablature, number: 2, voice: 5 },
      ]
    : [{ ...tablature, number: null, voice: 1 }];
};

const measureContent = (
  bar: TimedBar,
  strokes: readonly WrittenStroke[],
  symbols: readonly Symbol[],
  staves: readonly Staff[],
  arranged: Arranged,
): readonly XmlElement[] =>
  staves.flatMap((staff, which) => [
    ...(which === 0 ? [] : [element("backup", {}, element("duration", {}, bar.length))]),
    ...strokes.flatMap((stroke, index) => {
      const from = bar.start + stroke.at;
      const to = from + stroke.value.ticks;
      const own = which > 0 ? [] : symbols.filter(({ tick }) => tick >= from && tick < to);
      return [
        ...own.map(({ tick, chord, voicing }) =>
          harmonyElement(chord, voicing, arranged.neck, tick - from),
        ),
        ...staffNotes(strokes, index, staff),
      ];
    }),
  ]);

const barlineAfter = (bars: readonly TimedBar[], index: number): XmlElement | null => {
  const next = bars[index + 1];
  if (next !== undefined && !next.startsSection) {
    return null;
  }
  const style = next === undefined ? "light-heavy" : "light-light";
  return element("barline", { location: "right" }, element("bar-style", {}, style));
};

const partList = (): XmlElement =>
  element(
    "part-list",
    {},
    element(
      "score-part",
      { id: "P1" },
      element("part-name", {}, "Banjo"),
      element(
        "score-instrument",
        { id: "P1-I1" },
        element("instrument-name", {}, "Banjo"),
        element("instrument-sound", {}, "pluck.banjo"),
      ),
      element(
        "midi-instrument",
        { id: "P1-I1" },
        element("midi-channel", {}, 1),
        element("midi-program", {}, BANJO_PROGRAM),
      ),
    ),
  );

/**
 * A song as MusicXML 4.0, written straight through as it is played: banjo tablature with string, fret
 * (from the capo; the short string's from its own nut), left and right fingering and slides, chord
 * symbols with frames, sections as rehearsal marks.
 */
export const writeMusicXml = (arranged: Arranged, options: MusicXmlOptions): string => {
  const { song, tempo, timeline, score } = arranged;
  const staves = stavesOf(arranged, options);
  const written = strokesInBars(score.notes, timeline.bars, song.meter);
  const symbols = symbolsOf(arranged);
  let next = 0;
  const measures = timeline.bars.map((bar, index) => {
    const from = next;
    while ((symbols[next]?.tick ?? Number.POSITIVE_INFINITY) < bar.start + bar.length) {
      next += 1;
    }
    const own = symbols.slice(from, next);
    return element(
      "measure",
      { number: index + 1 },
      index === 0 ? partAttributes(song, staves) : null,
      index === 0 ? tempoDirection(song.meter, tempo) : null,
      bar.startsSection && bar.section !== null ? rehearsalMark(bar.section) : null,
      measureContent(bar, written[index] ?? [], own, staves, arranged),
      barlineAfter(timeline.bars, index),
    );
  });
  return writeXml(
    element(
      "score-partwise",
      { version: "4.0" },
      element("work", {}, element("work-title", {}, song.title)),
      element("identification", {}, element("encoding", {}, element("software", {}, "Shortslide"))),
      partList(),
      element("part", { id: "P1" }, measures),
    ),
  );
};
