import { writeMidi as bytesOf } from "midi-file";
import MIDIFile from "midifile";
import { describe, expect, test } from "vitest";
import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import { BEND_RANGE, trackOf } from "../../../src-shared/exchange/midiTracks.ts";
import { writeMidi } from "../../../src-shared/exchange/writeMidi.ts";
import type { Hit } from "../../../src-shared/score/score.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { bpm, midi, tick } from "../../../src-shared/units.ts";
import { demoWalks } from "./demoWalks.ts";

/*
 * Read back with midifile and midievents, which share no code with the writer (midi-file). Meta event
 * and status numbers as in the Standard MIDI File 1.0 and MIDI 1.0 specifications.
 */
const META = 0xff;
const NOTE_OFF = 0x8;
const NOTE_ON = 0x9;
const CONTROLLER = 0xb;
const PROGRAM = 0xc;
const BEND = 0xe;

type Timed = ReturnType<MIDIFile["getTrackEvents"]>[number] & { readonly tick: number };

const tracksOf = (bytes: Uint8Array): readonly (readonly Timed[])[] => {
  const file = new MIDIFile(bytes, true);
  return Array.from({ length: file.header.getTracksCount() }, (_, index) => {
    let at = 0;
    return file.getTrackEvents(index).map((event) => {
      at += event.delta;
      return { ...event, tick: at };
    });
  });
};

const textOf = (events: readonly Timed[], subtype: number): readonly string[] =>
  events
    .filter((event) => event.type === META && event.subtype === subtype)
    .map((event) => Buffer.from(event.data ?? []).toString("utf8"));

const channelEvents = (events: readonly Timed[], subtype: number) =>
  events.filter((event) => event.type !== META && event.subtype === subtype);

const named = (bytes: Uint8Array, name: string): readonly Timed[] =>
  tracksOf(bytes).find((events) => textOf(events, 3)[0] === name) ?? [];

const withHits = (walk: Walk, hits: readonly Hit[]): Walk => ({
  ...walk,
  score: { ...walk.score, hits },
});

describe("a variable-length quantity", () => {
  // The table of the Standard MIDI File 1.0 specification; values from memory, and recomputed.
  const table: readonly (readonly [number, readonly number[]])[] = [
    [0x00, [0x00]],
    [0x40, [0x40]],
    [0x7f, [0x7f]],
    [0x80, [0x81, 0x00]],
    [0x2000, [0xc0, 0x00]],
    [0x3fff, [0xff, 0x7f]],
    [0x4000, [0x81, 0x80, 0x00]],
    [0x100000, [0xc0, 0x80, 0x00]],
    [0x1fffff, [0xff, 0xff, 0x7f]],
    [0x200000, [0x81, 0x80, 0x80, 0x00]],
    [0x8000000, [0xc0, 0x80, 0x80, 0x00]],
    [0xfffffff, [0xff, 0xff, 0xff, 0x7f]],
  ];
  for (const [ticks, bytes] of table) {
    test(`of ${ticks} ticks stands in a track as ${bytes.length} bytes`, () => {
      const note = { type: "noteOn", channel: 0, noteNumber: 60, velocity: 64 } as const;
      const track = trackOf("", [{ tick: ticks, order: 3, event: note }], 0);
      const written = bytesOf({ header: { format: 1, numTracks: 1 }, tracks: [track] });
      const header = 14 + 8;
      const name = [0, 0xff, 3, 0];
      const end = [0, 0xff, 0x2f, 0];
      expect(written.slice(header)).toEqual([...name, ...bytes, 0x90, 60, 64, ...end]);
    });
  }
});

describe("every demo song as a MIDI file", () => {
  for (const [name, walk] of demoWalks) {
    const bytes = writeMidi(walk);
    const tracks = tracksOf(bytes);

    test(`${name}: is of type 1 with 480 ticks to a quarter, all tracks as long as the song`, () => {
      const { header } = new MIDIFile(bytes, true);
      expect(header.getFormat()).toBe(1);
      expect(header.getTicksPerBeat()).toBe(480);
      expect(tracks.map((events) => textOf(events, 3)[0])).toEqual([
        walk.song.title,
        ...(walk.score.notes.length > 0 ? ["Banjo"] : []),
        "Bass",
        "Guitar",
        "Chop",
      ]);
      for (const events of tracks) {
        expect(events.at(-1)?.tick).toBe(walk.score.length);
      }
    });

    test(`${name}: has every banjo note at its tick and pitch, and ends each once`, () => {
      const banjo = named(bytes, "Banjo");
      const struck = channelEvents(banjo, NOTE_ON).map((event) => [
        event.tick,
        event.param1,
        event.channel,
      ]);
      expect(struck.toSorted()).toEqual(
        walk.score.notes.map((note) => [note.tick, note.midi, note.string - 1]).toSorted(),
      );
      const sounding = new Set<string>();
      for (const event of banjo) {
        const id = `${event.channel} ${event.param1}`;
        if (event.type !== META && event.subtype === NOTE_ON) {
          expect(sounding.has(id)).toBe(false);
          sounding.add(id);
        }
        if (event.type !== META && event.subtype === NOTE_OFF) {
          expect(sounding.delete(id)).toBe(true);
        }
      }
      expect([...sounding]).toEqual([]);
    });

    test(`${name}: bends within its range by whole frets, as far as each slide goes, and back`, () => {
      const banjo = named(bytes, "Banjo");
      let bent = 0;
      for (let channel = 0; channel < 5; channel += 1) {
        const own = banjo.filter((event) => event.type !== META && event.channel === channel);
        let now = 0;
        for (const event of own) {
          if (event.subtype === BEND) {
            const value = (event.param1 ?? 0) + 128 * (event.param2 ?? 0) - 8192;
            now = (value * BEND_RANGE) / 8192;
            bent += Math.abs(Math.round(now)) > 0 ? 1 : 0;
            expect(Math.abs(now - Math.round(now))).toBeLessThan(0.01);
          }
          if (event.subtype === NOTE_ON) {
            expect(now).toBe(0);
          }
        }
        expect(now).toBe(0);
      }
      const whole = walk.score.notes.filter((note) => note.glide && note.until >= note.glide.end);
      expect(bent).toBeGreaterThanOrEqual(whole.length);
    });
  }
});

describe("a MIDI file", () => {
  const chart = (header: string) =>
    chartToScore(
      `Title: Crumbly Step\n${header}\n[A] | C | F |\n[B] | G | C |`,
      wholeNeckPlan,
      null,
    );
  const meta = (walk: Walk, subtype: number) =>
    tracksOf(writeMidi(walk))[0]?.filter(
      (event) => event.type === META && event.subtype === subtype,
    );

  test("tells a tempo in quarters and a metre with the clocks of its beat", () => {
    // FF 58 nn dd cc bb and FF 51 tttttt as in the Standard MIDI File 1.0 specification.
    const cases = [
      ["Time: 2/2 Tempo: 100", 300_000, "ff 58 04 02 01 30 08"],
      ["Time: 4/4 Tempo: 120", 500_000, "ff 58 04 04 02 18 08"],
      ["Time: 3/4 Tempo: 90", 666_667, "ff 58 04 03 02 18 08"],
      ["Time: 6/8 Tempo: 100", 400_000, "ff 58 04 06 03 24 08"],
      ["Time: 9/8 Tempo: 125", 320_000, "ff 58 04 09 03 24 08"],
    ] as const;
    for (const [header, microseconds, signature] of cases) {
      const walk = chart(header);
      expect(meta(walk, 0x51)?.map((event) => event.tempo)).toEqual([microseconds]);
      expect(Buffer.from(writeMidi(walk)).toString("hex")).toContain(signature.replaceAll(" ", ""));
    }
  });

  test("tells a key's sharps and flats and whether it is minor", () => {
    // A signed byte; the parser gives it without its sign.
    const of = (key: string) =>
      meta(chart(`Key: ${key}`), 0x59)?.map((event) => [
        ((event.key ?? 0) << 24) >> 24,
        event.scale,
      ]);
    expect([of("A"), of("Eb"), of("F#m"), of("Bbm")]).toEqual([
      [[3, 0]],
      [[-3, 0]],
      [[3, 1]],
      [[-5, 1]],
    ]);
  });

  test("marks each section where it starts", () => {
    const markers = tracksOf(writeMidi(chart("Form: A B A")))[0] ?? [];
    const found = markers.filter((event) => event.type === META && event.subtype === 6);
    expect(found.map((event) => [event.tick, ...textOf([event], 6)])).toEqual([
      [0, "A"],
      [3840, "B"],
      [7680, "A"],
    ]);
  });

  test("keeps letters beyond ASCII in its title", () => {
    const walk = chartToScore("Title: Über die Brücke ♭\n| G |", wholeNeckPlan, null);
    expect(textOf(tracksOf(writeMidi(walk))[0] ?? [], 3)).toEqual(["Über die Brücke ♭"]);
  });

  test("declares its bend range and General MIDI programs", () => {
    const bytes = writeMidi(chart("Key: C"));
    const banjo = named(bytes, "Banjo");
    const wire = (name: string) => channelEvents(named(bytes, name), PROGRAM)[0]?.param1;
    // One-based in General MIDI: 106 banjo, 33 acoustic bass, 26 steel guitar.
    expect([wire("Banjo"), wire("Bass"), wire("Chop")]).toEqual([105, 32, 25]);
    const first = channelEvents(banjo, CONTROLLER).filter((event) => event.channel === 0);
    expect(first.map(({ param1, param2 }) => [param1, param2])).toEqual([
      [101, 0],
      [100, 0],
      [6, BEND_RANGE],
      [38, 0],
      [101, 127],
      [100, 127],
    ]);
  });

  test("puts the capo into the pitches", () => {
    const without = channelEvents(named(writeMidi(chart("Key: C")), "Banjo"), NOTE_ON);
    const walk = chart("Key: C  Capo: 2");
    const capoed = channelEvents(named(writeMidi(walk), "Banjo"), NOTE_ON);
    expect(capoed.map((event) => event.param1)).toEqual(walk.score.notes.map((note) => note.midi));
    expect(capoed.map((event) => event.tick)).toEqual(without.map((event) => event.tick));
  });

  test("makes room for a count-in, and strikes clicks and guitar on their own tracks", () => {
    const walk = chart("Tempo: 96.5");
    const hit = (part: Hit["part"], at: number, accent: boolean): Hit => ({
      part,
      tick: tick(at),
      ticks: tick(240),
      pitches: part === "click" ? [] : [midi(52), midi(59)],
      accent,
      level: 3,
    });
    const hits = [hit("click", -480, true), hit("click", 0, false), hit("guitar", 120, false)];
    const bytes = writeMidi(withHits({ ...walk, tempo: bpm(96.5) }, hits));
    const click = channelEvents(named(bytes, "Click"), NOTE_ON);
    // General MIDI percussion: 76 high wood block, 77 low, on the tenth channel.
    expect(click.map((event) => [event.tick, event.channel, event.param1])).toEqual([
      [1440, 9, 76],
      [1920, 9, 77],
    ]);
    const guitar = channelEvents(named(bytes, "Guitar"), NOTE_ON);
    expect(guitar.map((event) => [event.tick, event.param1, event.param2])).toEqual([
      [2040, 59, 127],
      [2040, 52, 127],
    ]);
    expect(named(bytes, "Banjo").find((event) => event.subtype === NOTE_ON)?.tick).toBe(1920);
  });

  test("damps a stroke that the left hand stops at once", () => {
    const walk = chart("Key: C");
    const [note] = walk.score.notes;
    const damped = note ? [{ ...note, damped: true }] : [];
    const bytes = writeMidi({ ...walk, score: { ...walk.score, notes: damped } });
    expect(channelEvents(named(bytes, "Banjo"), NOTE_OFF).map((event) => event.tick)).toEqual([60]);
  });
});
