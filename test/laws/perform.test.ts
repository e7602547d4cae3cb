import fc from "fast-check";
import { Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import { chartToScore, withFeel } from "../../src-shared/chartToScore.ts";
import { scaleOf } from "../../src-shared/harmony/scale.ts";
import { practiceMixes } from "../../src-shared/score/band.ts";
import { LOOSEST_TICKS } from "../../src-shared/score/looseness.ts";
import { type Performance, perform } from "../../src-shared/score/perform.ts";
import type { Hit, Note as Played, Score } from "../../src-shared/score/score.ts";
import { withSilentBars } from "../../src-shared/score/silentBars.ts";
import { indexAt } from "../../src-shared/score/window.ts";
import { wholeNeckPlan } from "../../src-shared/settings.ts";

const chord = fc
  .tuple(
    fc.constantFrom("C", "D", "Eb", "F#", "G", "A", "Bb"),
    fc.constantFrom("", "m", "7", "m7", "maj7", "dim", "sus4", "m7b5"),
    fc.constantFrom("", "", "", "/B", "/F#"),
  )
  .map((parts) => parts.join(""));

/** A chart of one or two sections, with silences among the chords. */
const anyBand = fc
  .record({
    time: fc.constantFrom("4/4", "3/4", "2/4", "2/2", "6/8", "9/8"),
    parts: fc.array(
      fc.array(
        fc.oneof({ weight: 9, arbitrary: chord }, { weight: 1, arbitrary: fc.constant("N.C.") }),
        {
          minLength: 1,
          maxLength: 7,
        },
      ),
      { minLength: 1, maxLength: 3 },
    ),
    feel: fc.record({ dynamics: fc.boolean(), walkUps: fc.boolean(), fills: fc.boolean() }),
    goesRound: fc.boolean(),
  })
  .map(({ time, parts, feel, goesRound }) => {
    const sections = parts.map(
      (bars, at) => `[${["Verse", "Chorus", "Tag"][at]}]\n| ${bars.join(" | ")} |`,
    );
    const text = `Key: G  Time: ${time}  Tempo: 100\n${sections.join("\n")}`;
    return {
      time,
      walk: withFeel(chartToScore(text, { ...wholeNeckPlan, goesRound }, null), feel),
    };
  });

const anyPerformance: fc.Arbitrary<Performance> = fc.record({
  feel: fc.record({
    bounce: fc.double({ min: 0, max: 1, noNaN: true }),
    human: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  practice: fc.record({
    mix: fc.constantFrom(...practiceMixes),
  }),
});

const asWritten: Performance = {
  feel: { bounce: 0, human: 0 },
  practice: { mix: "all" },
};

/** Farthest that bounce and looseness together move a stroke: 80 ticks and 12. */
const FARTHEST = 80 + LOOSEST_TICKS;

const strokesOf = (score: Score): readonly (Played | Hit)[] => [...score.notes, ...score.hits];
const isInOrder = (strokes: readonly { readonly tick: number }[]) =>
  strokes.every(({ tick }, index) => tick >= (strokes[index - 1]?.tick ?? 0));

describe("every performance", () => {
  test("is the score itself with even eighths, exact timing, and everyone", () => {
    fc.assert(
      fc.property(anyBand, ({ walk }) => {
        expect(perform(walk.score, asWritten)).toEqual(walk.score);
      }),
      { numRuns: 60 },
    );
    expect.hasAssertions();
  });

  test("is the same on every run, and keeps meter, bars and length", () => {
    fc.assert(
      fc.property(anyBand, anyPerformance, ({ walk }, performance) => {
        const { score } = walk;
        const once = perform(score, performance);
        expect(perform(score, performance)).toEqual(once);
        expect([once.meter, once.bars, once.length]).toEqual([
          score.meter,
          score.bars,
          score.length,
        ]);
      }),
      { numRuns: 40 },
    );
    expect.hasAssertions();
  });

  test("moves no stroke far, none out of its bar, and keeps both lists in order", () => {
    fc.assert(
      fc.property(anyBand, anyPerformance, ({ walk }, { feel }) => {
        const performance = {
          feel,
          practice: { mix: "all" },
        } as const;
        const { score } = walk;
        const heard = perform(score, performance);
        expect(isInOrder(heard.notes) && isInOrder(heard.hits)).toBe(true);
        const pairs = heard.notes.map((note, index) => [score.notes[index], note] as const);
        for (const [written, note] of pairs) {
          expect(written?.string).toBe(note.string);
          expect(Math.abs(note.tick - (written?.tick ?? 0))).toBeLessThanOrEqual(FARTHEST);
          expect(indexAt(score.bars, note.tick)).toBe(
            indexAt(score.bars, written?.tick ?? note.tick),
          );
        }
        for (const bar of score.bars) {
          const within = (hits: readonly Hit[]) =>
            hits.filter(({ tick }) => tick >= bar.start && tick < bar.start + bar.length).length;
          expect(within(heard.hits)).toBe(within(score.hits));
        }
      }),
      { numRuns: 60 },
    );
  });

  test("sounds no stroke backwards, none past its end, and no string twice at once", () => {
    fc.assert(
      fc.property(anyBand, anyPerformance, ({ walk }, performance) => {
        const heard = perform(walk.score, performance);
        const struckAgain = new Map<number, number>();
        for (const note of heard.notes.toReversed()) {
          expect(note.until).toBeGreaterThan(note.tick);
          expect(note.until).toBeLessThanOrEqual(struckAgain.get(note.string) ?? heard.length);
          expect(note.glide === null || note.glide.start > note.tick).toBe(true);
          expect(note.glide === null || note.glide.end > note.glide.start).toBe(true);
          struckAgain.set(note.string, note.tick);
        }
        for (const hit of heard.hits) {
          expect(hit.ticks).toBeGreaterThan(0);
          expect(hit.level).toBeGreaterThan(0);
          expect(hit.tick + hit.ticks).toBeLessThanOrEqual(heard.length);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("has nobody strike or ring in a silent bar, and is as it was in the others", () => {
    fc.assert(
      fc.property(
        anyBand,
        anyPerformance,
        fc.record({ play: fc.integer({ min: 1, max: 4 }), rest: fc.integer({ min: 1, max: 3 }) }),
        fc.nat(5),
        ({ walk }, { feel, practice }, silentBars, first) => {
          const without = perform(walk.score, { feel, practice });
          const resting = withSilentBars(without, silentBars, first);
          // By hand: the bars from `first` on are numbered round `play + rest`.
          const silent = walk.score.bars.filter(({ index }) => {
            const from = index - first + 100 * (silentBars.play + silentBars.rest);
            return from % (silentBars.play + silentBars.rest) >= silentBars.play;
          });
          const isSilent = (tick: number) =>
            silent.some(({ start, length }) => tick >= start && tick < start + length);
          const ticks = (score: Score) => strokesOf(score).map(({ tick }) => tick);
          expect(ticks(resting)).toEqual(ticks(without).filter((tick) => !isSilent(tick)));
          for (const { start } of silent) {
            const rings = (from: number, until: number) => from < start && until > start;
            expect(resting.notes.some((note) => rings(note.tick, note.until))).toBe(false);
            expect(resting.hits.some((hit) => rings(hit.tick, hit.tick + hit.ticks))).toBe(false);
          }
        },
      ),
      { numRuns: 60 },
    );
    expect.hasAssertions();
  });

  test("is not shaken by what happens in another bar", () => {
    const human = { feel: { bounce: 0, human: 1 }, practice: asWritten.practice };
    const bassIn = (text: string) =>
      perform(
        withFeel(chartToScore(text, wholeNeckPlan, null), {
          dynamics: false,
          walkUps: false,
          fills: false,
        }).score,
        human,
      )
        .hits.filter(({ part, tick }) => part === "bass" && tick >= 1920)
        .map(({ tick, level }) => [tick, level]);
    expect(bassIn("| G | C | D | G |")).toEqual(bassIn("| Em A7 | C | D | G |"));
  });
});

describe("every practice mix", () => {
  test("has those in it that it names, and a click on each beat only beside the bass", () => {
    fc.assert(
      fc.property(anyBand, ({ walk, time }) => {
        const partsIn = (mix: (typeof practiceMixes)[number]) => {
          const heard = perform(walk.score, { ...asWritten, practice: { mix } });
          return { heard, parts: [...new Set(heard.hits.map(({ part }) => part))].toSorted() };
        };
        const full = partsIn("all");
        expect(full.parts.includes("click")).toBe(false);
        expect(partsIn("without-banjo")).toMatchObject({
          heard: { notes: [], hits: full.heard.hits },
        });
        expect(partsIn("banjo-only")).toMatchObject({
          heard: { notes: full.heard.notes, hits: [] },
        });
        const { heard, parts } = partsIn("bass-and-click");
        expect(heard.notes).toEqual([]);
        expect(parts.every((part) => part === "bass" || part === "click")).toBe(true);
        const clicks = heard.hits.filter(({ part }) => part === "click");
        // Beats of a bar as a foot taps them: two in 6/8, three in 9/8.
        const beats = Number(time[0]) / (time.endsWith("/8") ? 3 : 1);
        expect(clicks).toHaveLength(beats * walk.score.bars.length);
        expect(clicks.filter(({ accent }) => accent).map(({ tick }) => tick)).toEqual(
          walk.score.bars.map(({ start }) => start),
        );
      }),
      { numRuns: 30 },
    );
    expect.hasAssertions();
  });
});

describe("every band", () => {
  test("plays tones that tonal finds in the chord of the moment, or the bass steps of a run", () => {
    fc.assert(
      fc.property(anyBand, ({ walk }) => {
        const { stays } = walk.timeline;
        const scale = scaleOf(walk.song.key);
        const bass = walk.score.hits.filter(({ part }) => part === "bass");
        for (const hit of walk.score.hits) {
          const here = stays[indexAt(stays, hit.tick)]?.chord;
          const name = here?.name ?? "";
          const tones = TonalChord.get(name).notes.map((each) => Note.chroma(each));
          const slash = name.includes("/") ? [Note.chroma(name.split("/")[1] ?? "")] : [];
          expect(here, `${hit.tick}`).not.toBeNull();
          for (const pitch of hit.pitches) {
            const chroma = pitch % 12;
            const inChord = tones.includes(chroma) || slash.includes(chroma);
            const next = bass.find(({ tick }) => tick > hit.tick) ?? bass[0];
            const leads = Math.abs(((pitch - (next?.pitches[0] ?? 0) + 18) % 12) - 6) <= 3;
            const runs = hit.part === "bass" || (hit.part === "guitar" && hit.pitches.length === 1);
            expect(
              inChord || (runs && leads) || (runs && scale.includes(chroma)),
              `${name} ${pitch}`,
            ).toBe(true);
          }
        }
      }),
      { numRuns: 80 },
    );
  });

  test("has one bass note at a time, within its octave, and strikes on the grid of eighths", () => {
    fc.assert(
      fc.property(anyBand, ({ walk }) => {
        const bass = walk.score.hits.filter(({ part }) => part === "bass");
        for (const [index, hit] of bass.entries()) {
          expect(hit.pitches).toHaveLength(1);
          // E1, a double bass's lowest string (MIDI 28), to a fifth above the octave's end.
          expect(hit.pitches[0]).toBeGreaterThanOrEqual(28);
          expect(hit.pitches[0]).toBeLessThanOrEqual(46);
          expect(hit.tick % 240).toBe(0);
          expect(hit.tick + hit.ticks).toBeLessThanOrEqual(
            bass[index + 1]?.tick ?? walk.score.length,
          );
        }
      }),
      { numRuns: 60 },
    );
    expect.hasAssertions();
  });
});
