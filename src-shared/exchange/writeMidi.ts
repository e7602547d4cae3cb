import { writeMidi as bytesOf } from "midi-file";
import type { Meter } from "../chart/song.ts";
import { signatureOf } from "../harmony/readKey.ts";
import { quartersPerMinute, ticksPerBar, ticksPerBeat } from "../score/tempo.ts";
import { type Bpm, TICKS_PER_QUARTER } from "../units.ts";
import type { Arranged } from "./arranged.ts";
import {
  banjoEvents,
  midiText,
  partEvents,
  partsPlaying,
  type TimedEvent,
  trackOf,
} from "./midiTracks.ts";

/** MIDI clocks in a quarter note (MIDI 1.0). */
const CLOCKS_PER_QUARTER = 24;

/**
 * Microseconds in a quarter note when `tempo` counts beats of the meter, rounded.
 * @example microsecondsPerQuarter({ beats: 2, unit: 2 }, 100) // => 300000
 */
export const microsecondsPerQuarter = (meter: Meter, tempo: Bpm): number =>
  Math.round(60_000_000 / quartersPerMinute(meter, tempo));

/** The first track: tempo, metre, key, and a marker where a section starts. */
const conductor = ({ song, tempo, timeline }: Arranged, shift: number): readonly TimedEvent[] => {
  const { meter, key } = song;
  const at = (tick: number, event: TimedEvent["event"]): TimedEvent => ({ tick, order: 0, event });
  return [
    at(0, { type: "setTempo", microsecondsPerBeat: microsecondsPerQuarter(meter, tempo) }),
    at(0, {
      type: "timeSignature",
      numerator: meter.beats,
      denominator: meter.unit,
      metronome: (ticksPerBeat(meter) / TICKS_PER_QUARTER) * CLOCKS_PER_QUARTER,
      thirtyseconds: 8,
    }),
    at(0, { type: "keySignature", key: signatureOf(key), scale: key.mode === "minor" ? 1 : 0 }),
    ...timeline.bars.flatMap((bar) =>
      bar.startsSection && bar.section !== null
        ? [at(bar.start + shift, { type: "marker", text: midiText(bar.section) })]
        : [],
    ),
  ];
};

/** Whole bars before the first one, so that a count-in has room. */
const leadIn = ({ score, song }: Arranged): number => {
  const first = score.hits.reduce((earliest, hit) => Math.min(earliest, hit.tick), 0);
  const bar = ticksPerBar(song.meter);
  return Math.ceil(-first / bar) * bar;
};

/**
 * A song as a Standard MIDI File 1.0 of type 1, 480 ticks to a quarter: a conductor's track, the
 * banjo on five channels, one for each string, and each part of the band that plays. Slides are pitch
 * bends, one for each fret passed, within a declared range. The capo is in the pitches.
 */
export const writeMidi = (arranged: Arranged): Uint8Array => {
  const { song, score } = arranged;
  const shift = leadIn(arranged);
  const length = score.length + shift;
  const tracks = [
    trackOf(song.title, conductor(arranged, shift), length),
    ...(score.notes.length === 0
      ? []
      : [trackOf("Banjo", banjoEvents(score.notes, shift), length)]),
    ...partsPlaying(score.hits).map(({ voice, hits }) =>
      trackOf(voice.name, partEvents(voice, hits, shift), length),
    ),
  ];
  const header = { format: 1, numTracks: tracks.length, ticksPerBeat: TICKS_PER_QUARTER } as const;
  return Uint8Array.from(bytesOf({ header, tracks }));
};
