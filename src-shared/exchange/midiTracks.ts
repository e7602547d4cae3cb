import { strFromU8, strToU8 } from "fflate";
import type { MidiEvent } from "midi-file";
import type { StringNumber } from "../neck/neck.ts";
import { glideFrets } from "../score/glideFrets.ts";
import type { Hit, Note } from "../score/score.ts";
import { TICKS_PER_EIGHTH, tick } from "../units.ts";
import {
  BANJO_PROGRAM,
  bandVoices,
  channelOfString,
  clickKeys,
  type MidiVoice,
} from "./soundTable.ts";

type Without<T> = T extends unknown ? Omit<T, "deltaTime"> : never;

/** An event with its tick from the start of the file; `order` settles events of one tick. */
export type TimedEvent = {
  readonly tick: number;
  readonly order: number;
  readonly event: Without<MidiEvent>;
};

/** Semitones that a banjo channel bends at most: more than a hand can slide. */
export const BEND_RANGE = 24;

const BEND_STEPS = 8192;
/** A damped stroke is heard for a quarter of an eighth, as one that is let go. */
const DAMPED_TICKS = TICKS_PER_EIGHTH / 4;

/** What happens first within one tick: setting up, endings, bends, then strokes. */
const order = { setUp: 0, off: 1, bend: 2, on: 3, end: 4 } as const;

/** The text bytes of a meta event: UTF-8, one character for each byte as the writer wants it. */
export const midiText = (text: string): string => strFromU8(strToU8(text), true);

const loudness = (value: number): number => Math.min(127, Math.max(1, Math.round(value)));

type Sounding = {
  readonly channel: number;
  readonly key: number;
  readonly from: number;
  readonly until: number;
  readonly velocity: number;
};

/** A key that is struck again while it sounds ends where it is struck again. */
const strokes = (all: readonly Sounding[]): readonly TimedEvent[] => {
  const struckNext = new Map<string, number>();
  return all
    .toSorted((a, b) => a.from - b.from)
    .toReversed()
    .flatMap(({ channel, key, from, until, velocity }): readonly TimedEvent[] => {
      const id = `${channel} ${key}`;
      const next = struckNext.get(id) ?? Number.POSITIVE_INFINITY;
      struckNext.set(id, from);
      if (next === from) {
        return [];
      }
      const sound = { channel, noteNumber: key } as const;
      const end = Math.max(from + 1, Math.min(until, next));
      return [
        { tick: from, order: order.on, event: { type: "noteOn", ...sound, velocity } },
        { tick: end, order: order.off, event: { type: "noteOff", ...sound, velocity: 0 } },
      ];
    });
};

const control = (channel: number, controllerType: number, value: number): TimedEvent => ({
  tick: 0,
  order: order.setUp,
  event: { type: "controller", channel, controllerType, value },
});

const program = (channel: number, number: number): TimedEvent => ({
  tick: 0,
  order: order.setUp,
  event: { type: "programChange", channel, programNumber: number - 1 },
});

/** Registered parameter 0 is the bend range in semitones; 127 127 closes it (MIDI 1.0). */
const bendRange = (channel: number): readonly TimedEvent[] => [
  control(channel, 101, 0),
  control(channel, 100, 0),
  control(channel, 6, BEND_RANGE),
  control(channel, 38, 0),
  control(channel, 101, 127),
  control(channel, 100, 127),
];

const bend = (tick: number, channel: number, semitones: number): TimedEvent => ({
  tick,
  order: order.bend,
  event: {
    type: "pitchBend",
    channel,
    value: Math.min(BEND_STEPS - 1, Math.round((semitones * BEND_STEPS) / BEND_RANGE)),
  },
});

const banjoStrings: readonly StringNumber[] = [1, 2, 3, 4, 5];

const banjoVelocity = (note: Note): number => {
  if (note.letGo) {
    return 56;
  }
  return note.accent ? 108 : 88;
};

const endOf = (note: Note): number =>
  note.damped ? Math.min(note.until, note.tick + DAMPED_TICKS) : note.until;

/** The banjo's events, `shift` ticks later than in the score. A bend goes back before the next note. */
export const banjoEvents = (notes: readonly Note[], shift: number): readonly TimedEvent[] => [
  ...banjoStrings.flatMap((string) => {
    const channel = channelOfString(string);
    return [program(channel, BANJO_PROGRAM), ...bendRange(channel)];
  }),
  ...strokes(
    notes.map((note) => ({
      channel: channelOfString(note.string),
      key: note.midi,
      from: note.tick + shift,
      until: endOf(note) + shift,
      velocity: banjoVelocity(note),
    })),
  ),
  ...notes.flatMap((note) => {
    const channel = channelOfString(note.string);
    const passed = glideFrets(note)
      .map((each) => ({ ...each, tick: tick(Math.round(each.tick)) }))
      .filter((each) => each.tick < note.until);
    if (passed.length === 0) {
      return [];
    }
    return [
      ...passed.map((each) => bend(each.tick + shift, channel, each.semitones)),
      bend(endOf(note) + shift, channel, 0),
    ];
  }),
];

const USUAL_HIT = 84;
const ACCENT = 1.2;

const keysOf = (hit: Hit): readonly number[] => {
  if (hit.part !== "click") {
    return hit.pitches;
  }
  return [hit.accent ? clickKeys.accent : clickKeys.plain];
};

/** One part of the band: its voice and its events, `shift` ticks later than in the score. */
export const partEvents = (
  voice: MidiVoice,
  hits: readonly Hit[],
  shift: number,
): readonly TimedEvent[] => [
  ...(voice.program === null ? [] : [program(voice.channel, voice.program)]),
  ...strokes(
    hits.flatMap((hit) =>
      keysOf(hit).map((key) => ({
        channel: voice.channel,
        key,
        from: hit.tick + shift,
        until: hit.tick + hit.ticks + shift,
        velocity: loudness(USUAL_HIT * hit.level * (hit.accent ? ACCENT : 1)),
      })),
    ),
  ),
];

/** The parts that play at all, each with its hits. */
export const partsPlaying = (
  hits: readonly Hit[],
): readonly { readonly voice: MidiVoice; readonly hits: readonly Hit[] }[] =>
  bandVoices
    .map((voice) => ({ voice, hits: hits.filter((hit) => hit.part === voice.part) }))
    .filter((each) => each.hits.length > 0);

/** A whole track: its name, its events in order with the time between them, and its end. */
export const trackOf = (
  name: string,
  events: readonly TimedEvent[],
  length: number,
): MidiEvent[] => {
  const named: TimedEvent = {
    tick: 0,
    order: -1,
    event: { type: "trackName", text: midiText(name) },
  };
  const last = events.reduce((latest, each) => Math.max(latest, each.tick), length);
  const end: TimedEvent = { tick: last, order: order.end, event: { type: "endOfTrack" } };
  let before = 0;
  return [named, ...events, end]
    .toSorted((a, b) => a.tick - b.tick || a.order - b.order)
    .map(({ tick, event }): MidiEvent => {
      const deltaTime = tick - before;
      before = tick;
      return { ...event, deltaTime };
    });
};
