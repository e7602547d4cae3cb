import { describe, expect, test } from "vitest";
import { levelOf, peakOf, pitchAt, type Sound } from "../../../e2e/sound/analysis.ts";
import { midiToHz } from "../../../src-renderer/sound/midiToHz.ts";
import { pluckedString, type Timbre } from "../../../src-renderer/sound/pluckedString.ts";
import { banjoTimbre, bassTimbre, chopTimbre } from "../../../src-renderer/sound/timbreTable.ts";
import { midi } from "../../../src-shared/units.ts";

const soundOf = (pitch: number, sampleRate: number, timbre: Timbre): Sound => ({
  start: 0,
  sampleRate,
  samples: pluckedString(midiToHz(midi(pitch)), sampleRate, timbre),
});

const centsOff = (
  pitch: number,
  sampleRate: number,
  timbre: Timbre,
  from: number,
  length: number,
): number => Math.abs(100 * (pitchAt(soundOf(pitch, sampleRate, timbre), from, length) - pitch));

const rates = [44_100, 48_000] as const;
const timbres = Object.entries({ banjo: banjoTimbre, bass: bassTimbre, chop: chopTimbre });

// Open G, strings 1 to 5, and the number of frets on each; the fifth string starts at fret 5.
const strings = [
  { string: 1, open: 62, frets: 22 },
  { string: 2, open: 59, frets: 22 },
  { string: 3, open: 55, frets: 22 },
  { string: 4, open: 50, frets: 22 },
  { string: 5, open: 67, frets: 17 },
];

describe("a plucked string's pitch, heard by YIN (de Cheveigne and Kawahara, JASA 111(4), 2002)", () => {
  for (const sampleRate of rates) {
    test.each(strings)(
      `is within 3 cents on every fret of string $string at ${sampleRate} Hz`,
      ({ open, frets }) => {
        const cents = Array.from({ length: frets + 1 }, (_, fret) =>
          centsOff(open + fret, sampleRate, banjoTimbre, 0.05, 0.06),
        );
        expect(cents.every(Number.isFinite)).toBe(true);
        expect(Math.max(...cents)).toBeLessThan(3);
      },
    );

    test(`is within 10 cents on every note of the bass's octave at ${sampleRate} Hz`, () => {
      const cents = Array.from({ length: 12 }, (_, step) =>
        centsOff(28 + step, sampleRate, bassTimbre, 0.1, 0.2),
      );
      expect(Math.max(...cents)).toBeLessThan(10);
    });
  }

  // Equal temperament (ISO 16): A4 is 440 Hz, C4 261.63 Hz, E1 41.20 Hz.
  test("is taken from A4 = 440 Hz", () => {
    expect(midiToHz(midi(69))).toBe(440);
    expect(midiToHz(midi(60))).toBeCloseTo(261.63, 2);
    expect(midiToHz(midi(28))).toBeCloseTo(41.2, 2);
  });
});

describe.each(timbres)("the %s's string", (name, timbre) => {
  const pitches = name === "bass" ? [28, 33, 39] : [50, 62, 71, 84];

  test.each(pitches)("sounds from its first sample at pitch %d", (pitch) => {
    expect(soundOf(pitch, 48_000, timbre).samples[0]).not.toBe(0);
  });

  test.each(pitches)("is the same each time at pitch %d", (pitch) => {
    expect(soundOf(pitch, 44_100, timbre)).toEqual(soundOf(pitch, 44_100, timbre));
  });

  test.each(pitches)("is as loud as its neighbours and below full scale at pitch %d", (pitch) => {
    const sound = soundOf(pitch, 48_000, timbre);
    expect(levelOf(sound, 0, 0.1)).toBeCloseTo(-20, 0);
    expect(peakOf(sound, 0, 2)).toBeLessThan(1);
  });

  test.each(pitches)("only gets softer, and ends in nothing, at pitch %d", (pitch) => {
    const sound = soundOf(pitch, 48_000, timbre);
    const step = timbre.length / 8;
    const levels = Array.from({ length: 8 }, (_, index) =>
      levelOf(sound, index * step, (index + 1) * step),
    );
    expect(levels).toEqual(levels.toSorted((a, b) => b - a));
    expect(Math.abs(sound.samples.at(-1) ?? 1)).toBeLessThan(1e-4);
  });

  test.each(pitches)("does not drift off the middle at pitch %d", (pitch) => {
    const { samples } = soundOf(pitch, 48_000, timbre);
    const mean = samples.reduce((sum, x) => sum + x, 0) / samples.length;
    expect(Math.abs(mean)).toBeLessThan(1e-3);
  });
});

describe("a banjo string", () => {
  test("dies away in the time its table gives: 60 dB in 1.5 s is 20 dB in half a second", () => {
    const sound = soundOf(62, 48_000, banjoTimbre);
    expect(levelOf(sound, 0.5, 0.6) - levelOf(sound, 1, 1.1)).toBeGreaterThan(18);
    expect(levelOf(sound, 0.5, 0.6) - levelOf(sound, 1, 1.1)).toBeLessThan(24);
  });

  test.each([5, 9000, Number.NaN])("of %d Hz is refused", (hz) => {
    expect(() => pluckedString(hz, 48_000, banjoTimbre)).toThrow(RangeError);
  });
});
