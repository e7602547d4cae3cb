import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import { changeOf, changePlaces } from "../../../src-shared/practice/changePlaces.ts";
import { atTempo } from "../../../src-shared/practice/planned.ts";
import type { Change } from "../../../src-shared/practice/practice.ts";
import { shiftOf } from "../../../src-shared/practice/shiftOf.ts";
import { stageOf } from "../../../src-shared/practice/stages.ts";
import { stages } from "../../../src-shared/practice/standing.ts";
import { newSongSettings, wholeNeckPlan } from "../../../src-shared/settings.ts";
import { bpm } from "../../../src-shared/units.ts";
import { anyPlanned } from "../../laws/anyPlanned.ts";

const plan = { ...newSongSettings.plan, shapes: ["F"] as const };
const tune = "Key: G  Time: 4/4  Tempo: 180\n| G | G | C | G | D | D | G | G |";
const walk = chartToScore(tune, plan, null);

const changeTo = (from: string, to: string): Change => {
  const place = changePlaces(walk).find(
    (each) => each.from.chord.name === from && each.to.chord.name === to,
  );
  if (!place) throw new Error(`the tune has no change from ${from} to ${to}`);
  return changeOf(place);
};

const drill = (...args: Parameters<typeof stageOf<Walk>>): Walk => {
  const found = stageOf(...args);
  if (!found) throw new Error("no drill");
  return found;
};

const chordsOf = (of: Walk): readonly (string | null)[] =>
  of.timeline.stays.map(({ chord }) => chord?.name ?? null);

describe("the bare slide", () => {
  const bare = drill(walk, changeTo("G", "C"), "slide", bpm(90));

  test("is one bar of each chord, struck once on the beat, with a click on every beat", () => {
    expect(chordsOf(bare)).toEqual(["G", "C"]);
    expect([...new Set(bare.score.notes.map((note) => note.tick))]).toEqual([0, 1920]);
    expect(bare.score.hits.map((hit) => hit.tick)).toEqual([
      0, 480, 960, 1440, 1920, 2400, 2880, 3360,
    ]);
    expect(bare.score.hits.every((hit) => hit.part === "click")).toBe(true);
  });

  test("lets the ringing strings glide from the one grip into the other", () => {
    const glides = bare.score.notes.flatMap(({ glide, tick }) =>
      glide && tick === 0 ? [glide] : [],
    );
    expect(glides.map(({ end }) => end)).toEqual([1920, 1920, 1920]);
    const held = bare.route?.placements[1]?.voicing.frets.filter((fret) => fret !== null);
    expect(glides.map(({ toFret }) => toFret).toSorted()).toEqual(held?.toSorted());
  });
});

describe("a change with its roll", () => {
  test("plays the strokes that the song has around it, and nothing of other chords", () => {
    const slow = drill(walk, changeTo("C", "G"), "slow", bpm(90));
    // C stands in bar 3 and G follows in bar 4: ticks 3840 to 7680 of the song.
    const inSong = atTempo(walk, bpm(90)).score.notes.filter(
      ({ tick }) => tick >= 3840 && tick < 7680,
    );
    const asPlayed = ({ tick, string, fret, finger }: (typeof inSong)[number], from: number) => ({
      at: tick - from,
      string,
      fret,
      finger,
    });
    expect(slow.score.notes.map((note) => asPlayed(note, 0))).toEqual(
      inSong.map((note) => asPlayed(note, 3840)),
    );
    expect(chordsOf(slow)).toEqual(["C", "G"]);
  });

  test("has a bar of the song before it and after it in the last stage", () => {
    const inSong = drill(walk, changeTo("C", "G"), "song", bpm(180));
    expect(chordsOf(inSong)).toEqual(["G", "C", "G", "D"]);
    expect(inSong.timeline.bars.map(({ written }) => written)).toEqual([1, 2, 3, 4]);
  });

  test("takes the change that goes round with the song's end and its start", () => {
    const text = "Key: G  Time: 3/4  Tempo: 120\n| G | C | D | A |";
    const round = chartToScore(text, { ...wholeNeckPlan, goesRound: true }, null);
    const seam = changePlaces(round).find(({ leg }) => leg.seam);
    if (!seam) throw new Error("nothing moves where the song goes round");
    const slow = drill(round, changeOf(seam), "slow", bpm(60));
    expect(chordsOf(slow)).toEqual(["A", "G"]);
    expect(slow.timeline.bars.map(({ written }) => written)).toEqual([3, 0]);
  });

  test("rests where its bars have another chord", () => {
    const halves = chartToScore(
      "Key: G  Time: 4/4  Tempo: 120\n| G C | D G |",
      { ...wholeNeckPlan, shapes: ["F"] },
      null,
    );
    const place = changePlaces(halves).find(({ to }) => to.chord.name === "D");
    if (!place) throw new Error("no change to D");
    expect(chordsOf(drill(halves, changeOf(place), "slow", bpm(60)))).toEqual([
      null,
      "C",
      "D",
      null,
    ]);
  });
});

describe("every stage of every change of any song", () => {
  test("holds the planned grips, on whole bars, at its tempo, and strikes within its length", () => {
    fc.assert(
      fc.property(anyPlanned, fc.constantFrom(...stages), fc.nat(), (song, stage, pick) => {
        const places = changePlaces(song);
        const place = places[pick % Math.max(1, places.length)];
        if (!place) return;
        const made = drill(song, changeOf(place), stage, bpm(50));
        const bar = song.timeline.bars[0]?.length ?? 0;
        expect(made.tempo).toBe(50);
        expect(made.timeline.length).toBe(made.timeline.bars.length * bar);
        const grips = new Set(song.route?.placements.map(({ voicing }) => voicing.frets.join()));
        for (const { voicing } of made.route?.placements ?? []) {
          expect(grips.has(voicing.frets.join())).toBe(true);
        }
        const { notes, length } = made.score;
        expect(notes.length).toBeGreaterThan(0);
        expect(notes.every(({ tick }) => tick >= 0 && tick < length)).toBe(true);
        expect(notes.every((note, index) => note.tick >= (notes[index - 1]?.tick ?? 0))).toBe(true);
        const stays = made.timeline.stays.reduce((sum, stay) => sum + stay.length, 0);
        expect(stays).toBe(length);
        // The change itself is in it, with the same need as in the song.
        const legs = made.route?.legs ?? [];
        expect(
          legs.some(({ need, frets }) => need === place.leg.need && frets === place.leg.frets),
        ).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  test("strikes no finger twice running from one round of a change to the next", () => {
    fc.assert(
      fc.property(anyPlanned, fc.nat(), (song, pick) => {
        const places = changePlaces(song);
        const place = places[pick % Math.max(1, places.length)];
        if (!place) return;
        const made = drill(song, changeOf(place), "slow", bpm(50));
        const strokes = made.slots.flatMap((slot) => slot.played.strokes);
        const joined = made.slots.every(
          ({ start, length }, index) =>
            start + length === (made.slots[index + 1]?.start ?? made.timeline.length),
        );
        const [last, first] = [strokes.at(-1), strokes[0]];
        if (!joined || made.slots[0]?.start !== 0 || !last || !first) return;
        const again = last.picks.filter(({ finger }) =>
          first.picks.some((pick) => pick.finger === finger),
        );
        expect(again).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("lets a pinch of one eighth make way where the drill goes round, as was found at seed 943560475", () => {
    const text = "Time: 9/8  Tempo: 40\n| C7 C . . . . . . . | C | C |";
    const short = chartToScore(text, { ...wholeNeckPlan, goesRound: true }, null);
    const drills = changePlaces(short).map((place) =>
      drill(short, changeOf(place), "slow", bpm(50)).slots.flatMap(({ played }) => played.strokes),
    );
    expect(drills.length).toBeGreaterThan(0);
    for (const strokes of drills) {
      const last = strokes.at(-1)?.picks.map(({ finger }) => finger);
      const first = strokes[0]?.picks.map(({ finger }) => finger);
      expect(last?.filter((finger) => first?.includes(finger))).toEqual([]);
    }
  });

  test("is none where the song makes the change no more", () => {
    const gone: Change = {
      ...changeTo("G", "C"),
      to: { chord: "Bb", frets: [3, 3, 3, null, null] },
    };
    expect(stageOf(walk, gone, "slow", bpm(90))).toBeNull();
  });
});

describe("a passage and the whole song", () => {
  test("of some bars is just these, of all bars the song itself at another tempo", () => {
    const passage = drill(walk, { kind: "passage", firstBar: 3, lastBar: 4 }, "tempo", bpm(120));
    expect(chordsOf(passage)).toEqual(["G", "D"]);
    const song = drill(walk, { kind: "song" }, "song", bpm(120));
    expect(song.timeline).toEqual(walk.timeline);
    const planned = chartToScore(tune, plan, 120);
    expect(song.score).toEqual(planned.score);
  });

  test("outside the song is none", () => {
    expect(stageOf(walk, { kind: "passage", firstBar: 6, lastBar: 8 }, "song", bpm(90))).toBeNull();
  });
});

describe("what a drill asks of the left hand", () => {
  test("leaves it the longer the slower it is played, and asks the same of it", () => {
    const change = changeTo("G", "C");
    const [slow, fast] = [60, 120].map((tempo) =>
      shiftOf(drill(walk, change, "tempo", bpm(tempo)), change, "tempo"),
    );
    // Two notes let go of a full roll leave three eighths: at 60 quarters a minute 1500 ms.
    expect(slow?.window).toBeCloseTo(1500, 6);
    expect(fast?.window).toBeCloseTo(750, 6);
    expect(slow?.bits).toBe(fast?.bits);
    expect(slow?.reformed).toBe(0);
  });

  test("is not told in the song, where several changes come", () => {
    const change = changeTo("G", "C");
    expect(shiftOf(drill(walk, change, "song", bpm(60)), change, "song")).toBeNull();
  });
});
