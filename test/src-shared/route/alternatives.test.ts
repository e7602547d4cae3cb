import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Timeline } from "../../../src-shared/chart/song.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { alternatives, routesInTurn } from "../../../src-shared/route/alternatives.ts";
import { type PlanRequest, problemOf } from "../../../src-shared/route/problem.ts";
import { aims } from "../../../src-shared/settings.ts";
import { fret } from "../../../src-shared/units.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { chordByTonal, timelineOf } from "../../laws/anyHeldSong.ts";
import { anyRequest, chordNamed, plainRequest } from "../../laws/plainRequest.ts";
import { everyChoice, isLess, worthIn } from "../../laws/worth.ts";

const neck = neckFor(tunings[0], fret(0));
const request = plainRequest(14);
const anySmallSong = fc
  .array(fc.constantFrom("G", "C", "D", "Am", "Em"), { minLength: 1, maxLength: 6 })
  .map((names) =>
    names.map((name) => chordByTonal(name.replace("m", ""), name.endsWith("m") ? "m" : "")),
  );

const homes = (names: readonly string[], voicings: readonly Voicing[]) =>
  new Map(
    [...new Set(names)].map((name) => [
      name,
      new Set(
        voicings.filter((_, index) => names[index] === name).map(({ frets }) => frets.join()),
      ),
    ]),
  );

/** The first routes that really differ among all there are, told without the planner. */
const firstDifferent = (
  names: readonly string[],
  layers: readonly (readonly Voicing[])[],
  worthOf: (voicings: readonly Voicing[]) => readonly number[],
  count: number,
) => {
  // every choice comes in the order of voicings, and sorting keeps that among equals
  const all = everyChoice(layers)
    .map((voicings) => ({ voicings, worth: worthOf(voicings), homes: homes(names, voicings) }))
    .toSorted((a, b) => (isLess(a.worth, b.worth) ? -1 : isLess(b.worth, a.worth) ? 1 : 0));
  const kept: typeof all = [];
  for (const route of all) {
    const differs = kept.every((other) =>
      [...route.homes].some(
        ([name, grips]) => ![...grips].some((grip) => other.homes.get(name)?.has(grip)),
      ),
    );
    if (differs && kept.length < count) {
      kept.push(route);
    }
  }
  return kept.map(({ voicings, worth }) => ({ frets: voicings.map(({ frets }) => frets), worth }));
};

const found = (song: Timeline, asked: PlanRequest, count: number) =>
  alternatives(song, neck, asked, count).map(({ placements, costs }) => ({
    frets: placements.map(({ voicing }) => voicing.frets),
    worth: costs,
  }));

describe("alternative routes", () => {
  test("are the first that really differ in a full enumeration of all routes", () => {
    fc.assert(
      fc.property(anySmallSong, fc.boolean(), (chords, goesRound) => {
        const song = timelineOf(chords);
        const asked = { ...request, goesRound };
        const names = chords.map((chord) => chord.name);
        const { voicings: layers } = problemOf(song, neck, asked);
        expect(found(song, asked, 4)).toEqual(
          firstDifferent(names, layers, worthIn(song, neck, asked), 4),
        );
      }),
      { numRuns: 60 },
    );
  });

  for (const aim of aims) {
    test(`by ${aim} are those of a full enumeration, for any shapes, range and tempo`, () => {
      fc.assert(
        fc.property(anySmallSong, anyRequest, (chords, drawn) => {
          const song = timelineOf(chords);
          const asked = { ...drawn, aim };
          const names = chords.map((chord) => chord.name);
          const { voicings: layers } = problemOf(song, neck, asked);
          fc.pre(layers.reduce((paths, layer) => paths * layer.length, 1) <= 3000);
          expect(found(song, asked, 5)).toEqual(
            firstDifferent(names, layers, worthIn(song, neck, asked), 5),
          );
        }),
        { numRuns: 60 },
      );
    });
  }

  test("asked for one after the other are those asked for together, and then end", () => {
    const song = timelineOf(["G", "C"].map(chordNamed));
    const asked = plainRequest(10);
    const inTurn = [...routesInTurn(song, neck, asked)];
    expect(inTurn.length).toBeGreaterThan(2);
    expect(alternatives(song, neck, asked, 2)).toEqual(inTurn.slice(0, 2));
    expect(alternatives(song, neck, asked, 99)).toEqual(inTurn);
    expect(alternatives(song, neck, asked, 0)).toEqual([]);
  });

  test("of a song without chords are none", () => {
    expect(alternatives(timelineOf([null]), neck, request, 3)).toEqual([]);
  });
});
