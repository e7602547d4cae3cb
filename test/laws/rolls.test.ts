import { describe, expect, test } from "vitest";
import { eighthsOfMeter, isBeat } from "../../src-shared/roll/beats.ts";
import { type FitManner, fitRolls } from "../../src-shared/roll/fitRolls.ts";
import { inTurn } from "../../src-shared/roll/inTurn.ts";
import { type PatternStroke, patternMeters } from "../../src-shared/roll/pattern.ts";
import { densities, fifthUses, styleNames } from "../../src-shared/roll/picking.ts";
import { type Played, playedOn } from "../../src-shared/roll/played.ts";
import { breachesOf, fingersTwice } from "../../src-shared/roll/rollRules.ts";
import type { StayShape } from "../../src-shared/roll/segments.ts";
import { exitsOf } from "../../src-shared/route/change.ts";

/** Every stay of 1 to 64 eighths, from every eighth of a bar, in every meter. */
const stays: readonly StayShape[] = patternMeters.flatMap((meter) =>
  Array.from({ length: eighthsOfMeter[meter] }, (_, offset) =>
    Array.from({ length: 64 }, (__, before): StayShape => ({ offset, length: before + 1, meter })),
  ).flat(),
);

const manners: readonly FitManner[] = styleNames.flatMap((style) =>
  densities.map((density): FitManner => ({ style, density, soft: false })),
);

type Case = { readonly stay: StayShape; readonly manner: FitManner };
const cases: readonly Case[] = manners.flatMap((manner) => stays.map((stay) => ({ stay, manner })));

const said = ({ stay, manner }: Case): string =>
  `${manner.style} ${manner.density}, ${stay.meter} from ${stay.offset} for ${stay.length}`;

/** The cases for which something does not hold. */
const failing = (
  some: readonly Case[],
  holds: (strokes: readonly PatternStroke[], of: Case) => boolean,
): readonly string[] =>
  some
    .filter((each) => {
      const { pieces } = fitRolls(each.stay, each.manner, []);
      return !holds(
        pieces.flatMap(({ strokes }) => strokes),
        each,
      );
    })
    .map(said);

const usesThumb = (stroke: PatternStroke | undefined): boolean =>
  stroke?.picks.some(({ finger }) => finger === "T") ?? false;

const rolledCases = cases.filter(({ stay }) => stay.length > 1);

describe("any stay of 1 to 64 eighths, in any meter and style, at any density", () => {
  test("is filled exactly: its strokes and rests last as long as it does", () => {
    expect(cases).toHaveLength(6 * 4 * (8 + 6 + 4 + 6 + 9) * 64);
    expect(failing(cases, (strokes, { stay }) => strokes.length === stay.length)).toEqual([]);
  });

  test("starts on the thumb, and leaves it free for whatever comes next", () => {
    expect(
      failing(rolledCases, (strokes) => usesThumb(strokes[0]) && !usesThumb(strokes.at(-1))),
    ).toEqual([]);
  });

  test("breaks no rule of the hand from end to end, over every joint", () => {
    expect(
      failing(rolledCases, (strokes, { stay }) =>
        breachesOf({ name: "whole stay", meter: stay.meter, strokes }).every(
          ({ rule }) => rule === "wrong-length",
        ),
      ),
    ).toEqual([]);
  });

  test("has the thumb on every bar line that lies more than an eighth from its ends", () => {
    const dense = rolledCases.filter(({ manner }) => manner.density !== "once");
    expect(
      failing(dense, (strokes, { stay }) =>
        strokes.every((stroke, eighth) => {
          const isLine = (stay.offset + eighth) % eighthsOfMeter[stay.meter] === 0;
          const atAnEnd = eighth < 2 || eighth > strokes.length - 2;
          return !isLine || atAnEnd || usesThumb(stroke);
        }),
      ),
    ).toEqual([]);
  });

  test("is struck on every eighth by a full roll, on beats alone by a thinned one", () => {
    const rolls = cases.filter(({ manner }) => !["vamp", "strum"].includes(manner.style));
    const at = (density: FitManner["density"]) =>
      rolls.filter(({ manner }) => manner.density === density);
    expect(
      failing(at("full"), (strokes) => strokes.every(({ picks }) => picks.length > 0)),
    ).toEqual([]);
    expect(
      failing(at("beats"), (strokes, { stay }) =>
        strokes.every(
          ({ picks }, eighth) =>
            picks.length > 0 ===
            (eighth === 0 ||
              isBeat(stay.meter, (stay.offset + eighth) % eighthsOfMeter[stay.meter])),
        ),
      ),
    ).toEqual([]);
  });

  test("joins to any other, also over chords of a single eighth: no finger strikes twice running", () => {
    const kinds = new Map<string, Played>();
    for (const { stay, manner } of rolledCases) {
      const played = playedOn(stay, manner, [], "never");
      const kind = JSON.stringify([played.strokes[0], played.strokes.at(-1)]);
      const known = kinds.get(kind);
      if (!known || known.strokes.length > played.strokes.length) {
        kinds.set(kind, played);
      }
    }
    // Thumb, pinches and a strum start; rests, index, middle and both of them end.
    expect(kinds.size).toBeGreaterThan(12);
    const single = playedOn(
      { offset: 3, length: 1, meter: "4/4" },
      { style: "forward", density: "full", soft: false },
      [],
      "never",
    );
    const wrong: string[] = [];
    for (const before of kinds.values()) {
      for (const after of kinds.values()) {
        for (let singles = 0; singles <= 4; singles += 1) {
          const between = Array.from({ length: singles }, () => single);
          const run = inTurn([before, ...between, after, ...between]);
          const strokes = run.flatMap((played) => played.strokes);
          const asPieces = run.flatMap(({ pieces }) => pieces.flatMap((piece) => piece.strokes));
          const sounds = run.every(({ strokes: own }) => (own[0]?.picks.length ?? 0) > 0);
          const onThumb = usesThumb(run[singles + 1]?.strokes[0]);
          const fine = fingersTwice(strokes).length === 0 && sounds && onThumb;
          if (!fine || JSON.stringify(strokes) !== JSON.stringify(asPieces)) {
            wrong.push(`${singles}: ${JSON.stringify(strokes)}`);
          }
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  test("comes out the same each time", () => {
    for (const { stay, manner } of cases.filter((_, index) => index % 97 === 0)) {
      expect(fitRolls(stay, manner, [])).toEqual(fitRolls(stay, manner, []));
    }
  });
});

describe("the ways to leave any stay", () => {
  test("each free the hand for longer than the one before, and for no longer than the stay", () => {
    const wrong: string[] = [];
    for (const fifth of fifthUses) {
      for (const { stay, manner } of cases) {
        const free = exitsOf(playedOn(stay, manner, [], fifth)).map(({ eighths }) => eighths);
        const rising = free.every((eighths, index) => eighths > (free[index - 1] ?? 0));
        if (free.length === 0 || !rising || (free.at(-1) ?? 0) > stay.length) {
          wrong.push(`${fifth}: ${said({ stay, manner })}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  test("are one, two and three eighths of a full roll on the closed strings, as far as it lasts", () => {
    // Common practice, no published source.
    const rolls = cases.filter(
      ({ manner: { style, density } }) =>
        density === "full" && style !== "vamp" && style !== "strum",
    );
    const wrong = rolls.filter(({ stay, manner }) => {
      const exits = exitsOf(playedOn(stay, manner, [], "never"));
      const usual = [
        { way: "keep", eighths: 1 },
        { way: "let-one", eighths: 2 },
        { way: "let-two", eighths: 3 },
      ].slice(0, stay.length);
      return JSON.stringify(exits) !== JSON.stringify(usual);
    });
    expect(wrong.map(said)).toEqual([]);
  });

  test("never leave less time where the open fifth string may cover, or sounds anyway", () => {
    const longest = (each: Case, fifth: "never" | "cover" | "always"): number =>
      exitsOf(playedOn(each.stay, each.manner, [], fifth)).at(-1)?.eighths ?? 0;
    const wrong = cases.filter((each) => {
      const plain = longest(each, "never");
      return longest(each, "cover") < plain || longest(each, "always") < plain;
    });
    expect(wrong.map(said)).toEqual([]);
  });
});
