import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { alternatives } from "../../../src-shared/route/alternatives.ts";
import { easeMicrometres } from "../../../src-shared/route/cost.ts";
import { problemOf } from "../../../src-shared/route/problem.ts";
import { fret } from "../../../src-shared/units.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { chordByTonal, timelineOf } from "../../laws/anyHeldSong.ts";
import { plainRequest } from "../../laws/plainRequest.ts";

const neck = neckFor(tunings[0], fret(0));
const request = plainRequest(14);
const anySmallSong = fc
  .array(fc.constantFrom("G", "C", "D", "Am", "Em"), { minLength: 1, maxLength: 6 })
  .map((names) =>
    names.map((name) => chordByTonal(name.replace("m", ""), name.endsWith("m") ? "m" : "")),
  );

/** All routes, best first and then in the order of voicings; told without the planner. */
const allInOrder = (layers: readonly (readonly Voicing[])[], goesRound: boolean) => {
  const choices = layers.reduce<readonly (readonly number[])[]>(
    (paths, layer) => paths.flatMap((path) => layer.map((_, state) => [...path, state])),
    [[]],
  );
  return choices
    .map((choice) => {
      const voicings = choice.flatMap((state, layer) => layers[layer]?.[state] ?? []);
      const pairs = voicings.slice(1).map((to, index) => [voicings[index], to] as const);
      const seam =
        goesRound && voicings.length > 1 ? [[voicings.at(-1), voicings[0]] as const] : [];
      const cost = [...pairs, ...seam].reduce(
        (sum, [from, to]) => sum + (from && to ? easeMicrometres(from, to) : 0),
        0,
      );
      return { choice, voicings, cost };
    })
    .toSorted(
      (a, b) =>
        a.cost - b.cost ||
        (a.choice.map((state, index) => state - (b.choice[index] ?? 0)).find((d) => d !== 0) ?? 0),
    );
};

const homes = (names: readonly string[], voicings: readonly Voicing[]) =>
  new Map(
    [...new Set(names)].map((name) => [
      name,
      new Set(
        voicings.filter((_, index) => names[index] === name).map(({ frets }) => frets.join()),
      ),
    ]),
  );

describe("alternative routes", () => {
  test("are the first that really differ in a full enumeration of all routes", () => {
    fc.assert(
      fc.property(anySmallSong, fc.boolean(), (chords, goesRound) => {
        const song = timelineOf(chords);
        const asked = { ...request, goesRound };
        const names = chords.map((chord) => chord.name);
        const { voicings: layers } = problemOf(song, neck, asked);
        const kept: (readonly Voicing[])[] = [];
        for (const { voicings } of allInOrder(layers, goesRound)) {
          const own = homes(names, voicings);
          const differs = kept.every((other) => {
            const others = homes(names, other);
            return [...own].some(
              ([name, grips]) => ![...grips].some((grip) => others.get(name)?.has(grip)),
            );
          });
          if (differs && kept.length < 4) {
            kept.push(voicings);
          }
        }
        const found = alternatives(song, neck, asked, 4).map((route) =>
          route.placements.map(({ voicing }) => voicing.frets),
        );
        expect(found).toEqual(kept.map((voicings) => voicings.map(({ frets }) => frets)));
      }),
      { numRuns: 60 },
    );
  });

  test("of a song without chords are none", () => {
    expect(alternatives(timelineOf([null]), neck, request, 3)).toEqual([]);
  });
});
