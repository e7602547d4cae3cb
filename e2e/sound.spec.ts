import { expect } from "@playwright/test";
import wavefile from "wavefile";
import { chartToScore } from "../src-shared/chartToScore.ts";
import { demoSongTable } from "../src-shared/demo/demoSongTable.ts";
import { perform } from "../src-shared/score/perform.ts";
import { ticksToSeconds } from "../src-shared/score/tempo.ts";
import { firstPreferences, newSongSettings, type Preferences } from "../src-shared/settings.ts";
import { bpm, midi, tick } from "../src-shared/units.ts";
import {
  edgeOf,
  levelOf,
  onsetsOf,
  peakOf,
  pitchAt,
  powerAt,
  type Sound,
} from "./sound/analysis.ts";
import { handMadeScore, type Pluck, pitchOf, rhythm, roll } from "./sound/handMadeScore.ts";
import {
  EIGHTH,
  eighthsOf,
  errors,
  LEAD_IN,
  mixOf,
  only,
  PARTS,
  received,
  render,
  renderBoth,
  SAMPLE_RATE,
  TEMPO,
  tell,
  test,
  worst,
} from "./sound/soundPage.ts";

test("every instrument is silent before its stroke, sounds from its first sample, and lets go of all", async ({
  page,
}) => {
  for (const part of PARTS) {
    const { sound, voices } = await page.evaluate(
      ([name, rate]) => window.harness.instrumentAlone(name, rate),
      [part, SAMPLE_RATE] as const,
    );
    const alone = received(sound, SAMPLE_RATE);
    const first = alone.samples.findIndex((x) => x !== 0);
    expect(first, part).toBe(0.25 * SAMPLE_RATE);
    expect(peakOf(alone, 0.25, 0.28), part).toBeGreaterThan(0.05);
    expect(peakOf(alone, 0.31, 1), part).toBe(0);
    const [during, over, disposed] = voices;
    expect(during, part).toBeGreaterThan(1);
    expect([over, disposed], part).toEqual([0, 0]);
  }
});

test("the banjo sounds at the score's times, and a score that is late by 5 ms is found out", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  const late = {
    ...score,
    notes: score.notes.map((note) => ({ ...note, tick: tick(note.tick + 8) })),
  };
  const onsets = onsetsOf(await render(page, score, only("banjo")));
  const lateOnsets = onsetsOf(await render(page, late, only("banjo")));
  const found = worst(errors(onsets, eighthsOf(score)));
  tell("onsets heard / written", `${onsets.length} / ${score.notes.length}`);
  tell("worst onset error, samples", (found * SAMPLE_RATE).toFixed(3));
  expect(found * SAMPLE_RATE).toBeLessThan(1.001);
  expect(worst(errors(lateOnsets, eighthsOf(score)))).toBeGreaterThan(0.004);
});

test("at tempi whose eighths are no whole samples, up to 320 quarters a minute, no onset is a sample off", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  for (const [tempo, sampleRate] of [
    [133, 44_100],
    [67, 48_000],
    [160, 44_100],
    [159, 48_000],
  ] as const) {
    const sound = await render(page, score, only("banjo"), { tempo: bpm(tempo), sampleRate });
    const due = score.notes.map((note) => (note.tick / 960) * (60 / tempo));
    const found = worst(errors(onsetsOf(sound), due)) * sampleRate;
    tell(`worst onset error at ${tempo} and ${sampleRate} Hz, samples`, found.toFixed(3));
    expect(found).toBeLessThan(1.001);
  }
});

test("every fret of every string is within 3 cents of equal temperament from A4 = 440 Hz (ISO 16)", async ({
  page,
}) => {
  const places = ([1, 2, 3, 4, 5] as const).flatMap((string) =>
    Array.from({ length: 23 }, (_, place) => ({ string, place })).filter(
      ({ place }) => string !== 5 || place === 0 || place > 5,
    ),
  );
  const plucks = places.map(
    ({ string, place }, index): Pluck => ({ at: index * 2, string, fret: place, lasts: 1.9 }),
  );
  const score = handMadeScore(Math.ceil(plucks.length / 4), plucks);
  for (const sampleRate of [44_100, 48_000]) {
    const sound = await render(page, score, only("banjo"), { sampleRate });
    const cents = places.map(({ string, place }, index) => {
      const heard = pitchAt(sound, index * 2 * EIGHTH + 0.05, 0.15);
      return 100 * (heard - pitchOf(string, place));
    });
    tell(
      `worst pitch error of ${places.length} places at ${sampleRate} Hz, cents`,
      worst(cents).toFixed(2),
    );
    expect(cents.every(Number.isFinite)).toBe(true);
    expect(worst(cents)).toBeLessThan(3);
  }
});

test("a sliding note leaves its fret on time, passes every fret between, and has arrived on time", async ({
  page,
}) => {
  const slides = [
    { from: 5, toFret: 10, arrives: 4 },
    { from: 12, toFret: 7, arrives: 4 },
    { from: 2, toFret: 9, arrives: 7 },
  ];
  for (const { from, toFret, arrives } of slides) {
    const pluck: Pluck = {
      at: 0,
      string: 2,
      fret: from,
      lasts: 8,
      glide: { from: 2, to: arrives, toFret },
    };
    const sound = await render(page, handMadeScore(1, [pluck]), only("banjo"));
    const near = (pitch: number, fret: number): number => 100 * (pitch - pitchOf(2, fret));
    const before = pitchAt(sound, 2 * EIGHTH - 0.06, 0.06);
    const after = pitchAt(sound, arrives * EIGHTH, 0.06);
    tell(
      `slide ${from} to ${toFret}, cents off before and after`,
      `${near(before, from).toFixed(2)} ${near(after, toFret).toFixed(2)}`,
    );
    expect(Math.abs(near(before, from))).toBeLessThan(3);
    expect(Math.abs(near(after, toFret))).toBeLessThan(3);
    if (Math.abs(toFret - from) < 8) {
      // In a longer slide the last frets go by faster than a pitch can be told.
      const early = pitchAt(sound, arrives * EIGHTH - 0.03, 0.024);
      expect(Math.abs(near(early, toFret - Math.sign(toFret - from)))).toBeLessThan(25);
    }
    const way = Array.from({ length: 20 * (arrives - 2) }, (_, index) =>
      pitchAt(sound, 2 * EIGHTH - 0.02 + index * 0.0075, 0.024),
    );
    expect(way.every(Number.isFinite)).toBe(true);
    const backward = way.map(
      (pitch, index) => Math.sign(from - toFret) * (pitch - (way[index - 1] ?? pitch)),
    );
    tell("most backward step on the way, cents", (100 * Math.max(...backward)).toFixed(2));
    expect(100 * Math.max(...backward)).toBeLessThan(3);
  }
});

test("a note that is slid into sets in softer, and no later", async ({ page }) => {
  const plain = handMadeScore(1, [{ at: 0, string: 2, fret: 9, lasts: 4 }]);
  const slid = { ...plain, notes: plain.notes.map((note) => ({ ...note, slideInto: true })) };
  const [hard, soft] = [
    await render(page, plain, only("banjo")),
    await render(page, slid, only("banjo")),
  ];
  const drop = levelOf(hard, 0, 0.004) - levelOf(soft, 0, 0.004);
  tell("a slid note's attack is softer by, dB", drop.toFixed(1));
  expect(drop).toBeGreaterThan(3);
  expect(drop).toBeLessThan(9);
  expect(levelOf(hard, 0.1, 0.3)).toBeCloseTo(levelOf(soft, 0.1, 0.3), 1);
  expect(onsetsOf(soft)).toEqual([0]);
});

test("a note stops where the score stops it", async ({ page }) => {
  const sound = await render(
    page,
    handMadeScore(1, [{ at: 0, string: 3, fret: 5, lasts: 2 }]),
    only("banjo"),
  );
  const drop = levelOf(sound, 0.27, 0.3) - levelOf(sound, 0.31, 0.315);
  tell("fall within 10 ms of the end, dB", drop.toFixed(1));
  expect(drop).toBeGreaterThan(30);
  expect(peakOf(sound, 0.325, 1)).toBe(0);
});

test("a string that is picked again lets go of what it sounded, whatever its length says", async ({
  page,
}) => {
  const twice = (lasts: number) =>
    handMadeScore(1, [
      { at: 0, string: 1, fret: 3, lasts },
      { at: 3, string: 1, fret: 8, lasts: 3 },
    ]);
  const exact = await render(page, twice(3), only("banjo"));
  const long = await render(page, twice(7), only("banjo"));
  expect(peakOf(long, 3 * EIGHTH, 6 * EIGHTH)).toBeGreaterThan(0.1);
  expect(Buffer.from(long.samples.buffer).equals(Buffer.from(exact.samples.buffer))).toBe(true);
});

test("nothing reaches full scale with every part at full, and each part is heard alone and silent when muted", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 12), rhythm(4));
  const end = 4 * 8 * EIGHTH;
  const all = await render(page, score, only(...PARTS));
  const peak = peakOf(all, -LEAD_IN, end + 0.4);
  tell("peak with every part at full", peak.toFixed(3));
  expect(peak).toBeLessThan(1);
  expect(peak).toBeGreaterThan(0.3);
  for (const part of PARTS) {
    const alone = await render(page, score, only(part));
    tell(
      `${part} alone at full, peak and RMS dB`,
      `${peakOf(alone, 0, end).toFixed(3)} ${levelOf(alone, 0, end).toFixed(1)}`,
    );
    expect(levelOf(alone, 0, end)).toBeGreaterThan(-45);
  }
  const none = await render(page, score, only());
  expect(peakOf(none, 0, end)).toBe(0);
  const usual = await render(page, score, firstPreferences.mix);
  tell(
    "usual mix, peak and RMS dB",
    `${peakOf(usual, 0, end).toFixed(3)} ${levelOf(usual, 0, end).toFixed(1)}`,
  );
  for (const part of PARTS) {
    const mix = { ...only(), [part]: firstPreferences.mix[part] };
    const alone = await render(page, score, mix);
    tell(
      `${part} in the usual mix, peak and RMS dB`,
      `${peakOf(alone, 0, end).toFixed(3)} ${levelOf(alone, 0, end).toFixed(1)}`,
    );
  }
});

test("an accent is 3 dB louder and brighter, a damped stroke is over at once", async ({ page }) => {
  const plain = handMadeScore(1, [{ at: 0, string: 2, fret: 5, lasts: 4 }]);
  const each = (change: object) => ({
    ...plain,
    notes: plain.notes.map((note) => ({ ...note, ...change })),
  });
  const sound = await render(page, plain, only("banjo"));
  const accent = await render(page, each({ accent: true }), only("banjo"));
  const damped = await render(page, each({ damped: true }), only("banjo"));
  const louder = levelOf(accent, 0, 0.1) - levelOf(sound, 0, 0.1);
  const brighter = edgeOf(accent, 0, 0.02) - edgeOf(sound, 0, 0.02);
  tell(
    "an accent is louder and, beyond that, brighter by, dB",
    `${louder.toFixed(1)} ${(brighter - louder).toFixed(1)}`,
  );
  expect(louder).toBeGreaterThan(2.5);
  expect(louder).toBeLessThan(3.5);
  expect(brighter - louder).toBeGreaterThan(1);
  expect(peakOf(damped, 0, 0.02)).toBeGreaterThan(0.1);
  expect(peakOf(damped, 0.08, 1)).toBe(0);
});

test("a part that plays alone is all that is heard, but for the count-in; a part that is muted stays so", async ({
  page,
}) => {
  const score = handMadeScore(2, roll(2, 7), rhythm(2));
  // Chromium adds up the voices in any order, so the last bit of a float is not always the same.
  const apart = (one: Sound, other: Sound): number =>
    worst([...one.samples].map((x, frame) => x - (other.samples[frame] ?? Number.NaN)));
  for (const part of PARTS) {
    const alone = await render(
      page,
      score,
      mixOf((each) => ({ solo: each === part })),
    );
    expect(apart(alone, await render(page, score, only(part))), part).toBeLessThan(1e-6);
  }
  const mutedAndAlone = mixOf((each) => ({ solo: each === "bass", muted: each === "bass" }));
  expect(peakOf(await render(page, score, mutedAndAlone), 0, 2.4)).toBe(0);
  const banjo = mixOf((each) => ({ solo: each === "banjo" }));
  const counted = await render(page, score, banjo, { countInBars: 1 });
  expect(peakOf(counted, 0, 0.1)).toBeGreaterThan(0.1);
  expect(onsetsOf(counted)[0]).toBeCloseTo(0, 3);
});

test("a part that is put to one side is not heard on the other, and all together stay below full scale there too", async ({
  page,
}) => {
  const score = handMadeScore(2, roll(2, 12), rhythm(2));
  for (const [pan, silent] of [
    [-1, 1],
    [1, 0],
  ] as const) {
    const mix = mixOf(() => ({ pan }));
    const sides = await renderBoth(page, score, mix);
    const peaks = sides.map((side) => peakOf(side, -LEAD_IN, 3));
    tell(`peaks with everything at full and at ${pan}`, peaks.map((x) => x.toFixed(3)).join(" "));
    expect(peaks[silent]).toBeLessThan(1e-6);
    expect(peaks[1 - silent]).toBeGreaterThan(0.5);
    expect(peaks[1 - silent]).toBeLessThan(1);
  }
});

test("in the usual mix nothing comes near the ceiling, and each part sits where it is set", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7), rhythm(4));
  const end = 4 * 8 * EIGHTH;
  const { mix } = firstPreferences;
  const levels = new Map<string, number>();
  for (const part of PARTS) {
    const alone = await render(page, score, {
      ...only(),
      [part]: mix[part],
    });
    levels.set(part, levelOf(alone, 0, end));
  }
  const level = (part: string): number => levels.get(part) ?? Number.NaN;
  const all = await render(page, score, { ...mix, click: { ...mix.click, muted: true } });
  tell("usual mix, peak", peakOf(all, 0, end).toFixed(3));
  // KNEE of src-renderer/sound/mixer.ts: below it the ceiling changes nothing.
  expect(peakOf(all, 0, end)).toBeLessThan(0.8);
  expect(peakOf(all, 0, end)).toBeGreaterThan(0.4);
  expect(Math.abs(level("banjo") - level("bass"))).toBeLessThan(3);
  for (const part of ["guitar", "chop"]) {
    expect(level("banjo") - level(part)).toBeGreaterThan(6);
    expect(level("banjo") - level(part)).toBeLessThan(13);
  }
});

test("in the usual mix of an arranged song every part is heard beside the banjo, and the ceiling changes nothing", async ({
  page,
}) => {
  for (const id of ["ostlebeck-landing", "quillow-weir-waltz"]) {
    const demo = demoSongTable.find((song) => song.id === id);
    const { plan, picking, feel } = newSongSettings;
    const walk = chartToScore(demo?.text ?? "", plan, null, picking);
    const score = perform(walk.score, { feel, practice: { mix: "all" } });
    const end = ticksToSeconds(score.length, score.meter, walk.tempo);
    const { mix } = firstPreferences;
    const heard = (levels: Preferences["mix"]): Promise<Sound> =>
      render(page, score, levels, { tempo: walk.tempo });
    const levels = new Map<string, number>();
    for (const part of ["banjo", "bass", "guitar", "chop"] as const) {
      const alone = await heard({ ...only(), [part]: mix[part] });
      levels.set(part, levelOf(alone, 0, end));
      tell(
        `${id}, ${part}: peak and RMS dB`,
        `${peakOf(alone, 0, end).toFixed(3)} ${levelOf(alone, 0, end).toFixed(1)}`,
      );
    }
    const all = await heard(mix);
    tell(
      `${id}, all: peak and RMS dB`,
      `${peakOf(all, 0, end).toFixed(3)} ${levelOf(all, 0, end).toFixed(1)}`,
    );
    // KNEE of src-renderer/sound/mixer.ts.
    expect(peakOf(all, -LEAD_IN, end + 0.4)).toBeLessThan(0.8);
    const below = (part: string): number =>
      (levels.get("banjo") ?? Number.NaN) - (levels.get(part) ?? Number.NaN);
    expect(below("bass")).toBeGreaterThan(-3);
    expect(below("bass")).toBeLessThan(6);
    for (const part of ["guitar", "chop"]) {
      expect(below(part)).toBeGreaterThan(2);
      expect(below(part)).toBeLessThan(12);
    }
  }
});

test("the bass is heard on a small speaker: most of its energy is above its fundamental, E1 to D#2", async ({
  page,
}) => {
  for (const pitch of [28, 31, 35, 39]) {
    const [hit] = rhythm(1);
    const score = handMadeScore(
      1,
      [],
      hit ? [{ ...hit, ticks: tick(960), pitches: [midi(pitch)] }] : [],
    );
    const sound = await render(page, score, only("bass"));
    const hz = 440 * 2 ** ((pitch - 69) / 12);
    const parts = [1, 2, 3, 4, 5, 6].map((harmonic) => powerAt(sound, 0.02, 0.3, harmonic * hz));
    const [fundamental = 0, ...above] = parts.map((power) => 10 * Math.log10(power));
    tell(
      `bass ${pitch}: harmonics 2 to 6 beside the fundamental, dB`,
      above.map((db) => (db - fundamental).toFixed(0)).join(" "),
    );
    expect(Math.max(...above.map((db) => db - fundamental))).toBeGreaterThan(0);
    expect(100 * (pitchAt(sound, 0.1, 0.2) - pitch)).toBeLessThan(5);
  }
});

test("a guitar's strum goes over the strings from the lowest within some milliseconds, and ends with its length", async ({
  page,
}) => {
  const hit = rhythm(1).find(({ part }) => part === "guitar");
  const strum = hit ? [{ ...hit, tick: tick(0), ticks: tick(480) }] : [];
  const sound = await render(page, handMadeScore(1, [], strum), only("guitar"));
  const [low, high] = [55, 67].map((pitch) => 440 * 2 ** ((pitch - 69) / 12));
  expect(peakOf(sound, -LEAD_IN, 0)).toBe(0);
  // The highest of four strings comes 18 ms after the lowest.
  const rise = (hz: number): number =>
    powerAt(sound, 0.02, 0.06, hz) / powerAt(sound, 0, 0.017, hz);
  expect(rise(high ?? 0)).toBeGreaterThan(4 * rise(low ?? 0));
  expect(peakOf(sound, 0.25, 0.3)).toBeGreaterThan(0.02);
  expect(peakOf(sound, 0.33, 1)).toBe(0);
});

test("a stretch with a count-in has its clicks on the beat, the notes of the stretch, and no others", async ({
  page,
}) => {
  const score = handMadeScore(4, roll(4, 7));
  const range = { start: tick(1920), end: tick(3840) };
  const sound = await render(
    page,
    score,
    mixOf(() => ({})),
    { range, countInBars: 1 },
  );
  const due = [0, 4, ...Array.from({ length: 8 }, (_, eighth) => 8 + eighth)].map(
    (eighth) => eighth * EIGHTH,
  );
  const found = worst(errors(onsetsOf(sound), due)) * SAMPLE_RATE;
  expect(found).toBeLessThan(1.001);
  expect(sound.samples).toHaveLength(Math.ceil((LEAD_IN + 16 * EIGHTH + 0.5) * SAMPLE_RATE));
});

test("a WAV file holds what was rendered; one of 16 bits is a third shorter than one of 24", async ({
  page,
}) => {
  const score = handMadeScore(2, roll(2, 7), rhythm(2));
  const range = { start: tick(0), end: score.length };
  const rendering = {
    score,
    tempo: bpm(TEMPO),
    mix: firstPreferences.mix,
    range,
    countInBars: 1,
    sampleRate: 44_100,
  };
  const file = async (bits: 16 | 24) => {
    const { base64, shares } = await page.evaluate(([what, how]) => window.harness.wav(what, how), [
      rendering,
      bits,
    ] as const);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect([shares[0], shares.at(-1)]).toEqual([0, 1]);
    return Buffer.from(base64, "base64");
  };
  const bytes = await file(24);
  const wav = new wavefile.WaveFile();
  wav.fromBuffer(bytes);
  expect(wav.bitDepth).toBe("24");
  const samples = wav.getSamples(true, Float64Array);
  const [left] = await renderBoth(page, score, firstPreferences.mix, rendering);
  expect(samples).toHaveLength(2 * left.samples.length);
  const off = left.samples.reduce(
    (most, x, frame) => Math.max(most, Math.abs(x * 2 ** 23 - (samples[2 * frame] ?? 0))),
    0,
  );
  // In steps of 24 bits: Chromium adds up the voices of two renderings in any order.
  expect(off).toBeLessThan(10);
  const short = await file(16);
  expect(short.length - 44).toBe(((bytes.length - 44) * 2) / 3);
});

test("a rendering that is cancelled ends with its reason, and the next one is whole", async ({
  page,
}) => {
  const score = handMadeScore(60, roll(60, 7), rhythm(60));
  const range = { start: tick(0), end: score.length };
  const mix = firstPreferences.mix;
  const rendering = { score, tempo: bpm(TEMPO), mix, range, countInBars: 0, sampleRate: 48_000 };
  const said = await page.evaluate((what) => window.harness.cancelled(what), rendering);
  expect(said.reason).toBe("enough");
  expect(said.share).toBeLessThan(0.2);
  const sound = await render(page, handMadeScore(2, roll(2, 7)), only("banjo"));
  expect(onsetsOf(sound)).toHaveLength(16);
});

test("however long a song is, only what sounds has nodes", async ({ page }) => {
  const most = async (bars: number): Promise<number> =>
    page.evaluate(([score, mix]) => window.harness.mostVoices(score, mix), [
      handMadeScore(bars, roll(bars, 7), rhythm(bars)),
      firstPreferences.mix,
    ] as const);
  const [short, long] = [await most(16), await most(160)];
  tell("most voices at a time in 16 and in 160 bars", `${short} ${long}`);
  expect(long).toBeLessThanOrEqual(short + 8);
});
