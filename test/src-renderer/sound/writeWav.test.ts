import { describe, expect, test } from "vitest";
import wavefile from "wavefile";
import type { Onlooker } from "../../../src-renderer/sound/onlooker.ts";
import { type Planar, writeWav } from "../../../src-renderer/sound/writeWav.ts";

const { WaveFile } = wavefile;

/** The file read back by another package, which knows nothing of the one that wrote it. */
const readBack = (bytes: ArrayBuffer) => {
  const wav = new WaveFile();
  wav.fromBuffer(new Uint8Array(bytes));
  const samples = Array.from(wav.getSamples(true, Float64Array));
  return { wav, sides: [0, 1].map((side) => samples.filter((_, index) => index % 2 === side)) };
};

const quiet: Onlooker = { progress: () => undefined, signal: null };

/** Two and a half seconds: a sine of 440 Hz on the left, one of 330 Hz on the right. */
const sines = (sampleRate: number, level: number): Planar => ({
  sampleRate,
  channels: [440, 330].map((hz) =>
    Float32Array.from(
      { length: 2.5 * sampleRate },
      (_, frame) => level * Math.sin((2 * Math.PI * hz * frame) / sampleRate),
    ),
  ),
});

describe("a WAV file, read back by the package wavefile", () => {
  test.each([
    [16, 44_100],
    [16, 48_000],
    [24, 44_100],
    [24, 48_000],
  ] as const)("of %d bits at %d Hz has every sample on its side", async (bits, sampleRate) => {
    const sound = sines(sampleRate, 0.9);
    const { wav, sides } = readBack(await writeWav(sound, bits, quiet));
    expect(wav.bitDepth).toBe(String(bits));
    expect(wav.fmt).toMatchObject({ numChannels: 2, sampleRate, audioFormat: 1 });
    const full = 2 ** (bits - 1);
    // Rounding is half a step at most, and two dice of a step add one.
    const steps = bits === 16 ? 1.5 : 0.5;
    sound.channels.forEach((channel, side) => {
      expect(sides[side]).toHaveLength(channel.length);
      const worst = channel.reduce(
        (most, x, frame) => Math.max(most, Math.abs((sides[side]?.[frame] ?? 0) - x * full)),
        0,
      );
      expect(worst).toBeLessThanOrEqual(steps + 1e-3);
    });
  });

  test("of 16 bits keeps a sine that is softer than half a step, which plain rounding loses", async () => {
    const sampleRate = 48_000;
    const { sides } = readBack(await writeWav(sines(sampleRate, 0.4 * 2 ** -15), 16, quiet));
    const sine = (sides[0] ?? []).map((_, frame) =>
      Math.sin((2 * Math.PI * 440 * frame) / sampleRate),
    );
    const level = (2 / sine.length) * sine.reduce((sum, x, i) => sum + x * (sides[0]?.[i] ?? 0), 0);
    expect(level).toBeGreaterThan(0.36);
    expect(level).toBeLessThan(0.44);
  });

  test("never wraps round where a sample is beyond full scale", async () => {
    const loud = {
      sampleRate: 48_000,
      channels: [Float32Array.of(1, -1, 1.5), Float32Array.of(1, -1, -1.5)],
    };
    const { sides } = readBack(await writeWav(loud, 24, quiet));
    expect(sides[0]).toEqual([8_388_607, -8_388_608, 8_388_607]);
    expect(sides[1]).toEqual([8_388_607, -8_388_608, -8_388_608]);
  });
});

describe("writing a WAV file", () => {
  test("tells how far it is, from 0 to 1, and only ever more", async () => {
    const shares: number[] = [];
    await writeWav(sines(44_100, 0.1), 16, { ...quiet, progress: (share) => shares.push(share) });
    expect([shares[0], shares.at(-1)]).toEqual([0, 1]);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });

  test("stops when it is told to, with the reason given", async () => {
    const stop = new AbortController();
    const told: number[] = [];
    const progress = (share: number): void => {
      told.push(share);
      stop.abort(new Error("the player changed their mind"));
    };
    const writing = writeWav(sines(44_100, 0.1), 16, { progress, signal: stop.signal });
    await expect(writing).rejects.toThrow("changed their mind");
    expect(told).toHaveLength(1);
  });
});
