import { describe, expect, test } from "vitest";
import { eighthsOfMeter } from "../../../src-shared/roll/beats.ts";
import { type FitManner, fitRolls } from "../../../src-shared/roll/fitRolls.ts";
import { type Pattern, patternMeters } from "../../../src-shared/roll/pattern.ts";
import { styleNames } from "../../../src-shared/roll/picking.ts";
import { familyIn } from "../../../src-shared/roll/rollTable.ts";
import type { StayShape } from "../../../src-shared/roll/segments.ts";

const full = (style: FitManner["style"]): FitManner => ({ style, density: "full", soft: false });
const forward = full("forward");

const lettersOf = (pieces: readonly Pattern[]): string =>
  pieces
    .map(({ strokes }) =>
      strokes
        .map(({ picks }) => picks.map(({ finger }) => finger).join("") || "-")
        .map((fingers) => (fingers.length > 1 ? `(${fingers})` : fingers))
        .join(""),
    )
    .join(" ");

const played = (stay: StayShape, manner = forward, own: readonly Pattern[] = []): string =>
  lettersOf(fitRolls(stay, manner, own).pieces);

const in44 = (offset: number, length: number): StayShape => ({ offset, length, meter: "4/4" });

/** A pattern of the player's own: fingers on their home strings, an accent on every third eighth. */
const ownPattern = (name: string, letters: string, meter: Pattern["meter"] = "4/4"): Pattern => ({
  name,
  meter,
  strokes: [...letters].map((finger, eighth) => ({
    picks: [
      { finger: finger as "T" | "I" | "M", on: ({ T: 3, I: 2, M: 1 } as const)[finger as "T"] },
    ],
    accent: eighth % 3 === 0,
    damped: false,
  })),
});

/**
 * The fewest pieces by trying every chain there is. Patterns of whole measures lie from bar line to bar
 * line; a part of a measure holds no bar line but one that is a single eighth from an end of the stay.
 */
const fewestPieces = (
  stay: StayShape,
  wholes: readonly number[],
  parts: readonly number[],
): number => {
  const measure = eighthsOfMeter[stay.meter];
  const isLine = (eighth: number): boolean => (stay.offset + eighth) % measure === 0;
  const mayLie = (from: number, to: number): boolean => {
    if (isLine(from) && wholes.includes(to - from)) return true;
    if (!parts.includes(to - from)) return false;
    const inside = Array.from({ length: to - from - 1 }, (_, index) => from + 1 + index);
    return inside.filter(isLine).every((line) => line === 1 || line === stay.length - 1);
  };
  const lengths = [...new Set([...wholes, ...parts])];
  const from = (start: number): number =>
    start === stay.length
      ? 0
      : Math.min(
          Number.POSITIVE_INFINITY,
          ...lengths
            .map((length) => start + length)
            .filter((end) => end <= stay.length && mayLie(start, end))
            .map((end) => 1 + from(end)),
        );
  return from(0);
};

describe("forward rolls fitted to a stay", () => {
  test("take two measures, then one: three measures are two and one", () => {
    // Common practice, no published source.
    expect(played(in44(0, 16))).toBe("TIMTIMTITIMTIMTM");
    expect(played(in44(0, 8))).toBe("TIMTIMTM");
    expect(played(in44(0, 24))).toBe("TIMTIMTITIMTIMTM TIMTIMTM");
  });

  test("give half a measure a pattern of its own, on either half", () => {
    expect(played(in44(0, 4))).toBe("TITM");
    expect(played(in44(4, 4))).toBe("TITM");
  });

  test("fill a waltz measure with one forward roll", () => {
    expect(played({ offset: 0, length: 12, meter: "3/4" })).toBe("TIMTIM TIMTIM");
  });

  test("start afresh on the bar line after a pick-up, and after a tie over it", () => {
    expect(played(in44(5, 11))).toBe("TIM TIMTIMTM");
    expect(played(in44(4, 8))).toBe("TITM TITM");
  });

  test("pinch what is too short to roll, and say so", () => {
    const { pieces, remarks } = fitRolls(in44(3, 1), forward, []);
    expect([lettersOf(pieces), remarks]).toEqual(["(TIM)", ["too-short"]]);
  });

  test("join a single eighth before a bar line to the measure after it", () => {
    expect(played(in44(7, 9))).toBe("TIMTIMTIM");
  });

  test("take in a single eighth on either side of one measure (found by the law, seed 1431833551)", () => {
    expect(played(in44(7, 10))).toBe("TIMTIMTITM");
  });

  test("have the accents of the meter, wherever the stay starts", () => {
    const accents = (stay: StayShape): readonly number[] =>
      fitRolls(stay, forward, [])
        .pieces.flatMap(({ strokes }) => strokes)
        .flatMap(({ accent }, eighth) => (accent ? [eighth] : []));
    expect(accents(in44(0, 8))).toEqual([0, 4]);
    expect(accents(in44(6, 10))).toEqual([2, 6]);
    expect(accents({ offset: 2, length: 10, meter: "6/8" })).toEqual([1, 4, 7]);
  });

  test("refuse a stay of no length", () => {
    expect(() => played(in44(0, 0))).toThrow("at least 1");
  });
});

describe("the fewest joints", () => {
  test("are what an exhaustive search finds, for every roll, meter, offset and stay to 26 eighths", () => {
    const wrong: string[] = [];
    let tried = 0;
    for (const style of styleNames.filter((name) => name !== "vamp" && name !== "strum")) {
      for (const meter of patternMeters) {
        const { wholes, parts } = familyIn(style, meter);
        const measures = wholes.map(({ strokes }) => strokes.length);
        const cells = typeof parts === "string" ? [] : [...parts.keys()];
        for (let offset = 0; offset < eighthsOfMeter[meter]; offset += 1) {
          for (let length = 2; length <= 26; length += 1) {
            const stay = { offset, length, meter };
            const count = fitRolls(stay, full(style), []).pieces.length;
            const fewest = fewestPieces(stay, measures, cells);
            tried += 1;
            if (count !== fewest) wrong.push(`${style} ${meter} ${offset} ${length}`);
          }
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(tried).toBe(4 * (8 + 6 + 4 + 6 + 9) * 25);
  });
});

describe("vamps and strums", () => {
  test("keep thumb and pinch on their beats, wherever the stay starts", () => {
    expect(played(in44(0, 4), full("vamp"))).toBe("T-(TIM)-");
    expect(played(in44(2, 6), full("vamp"))).toBe("(TIM)-T-(TIM)-");
    expect(played(in44(0, 3), full("vamp"))).toBe("T-(IM)");
    expect(played({ offset: 0, length: 6, meter: "3/4" }, full("vamp"))).toBe("T-(TIM)-(TIM)-");
  });

  test("let the thumb go where it would strike twice running", () => {
    expect(played(in44(7, 9), full("vamp"))).toBe("T--(TIM)-T-(TIM)-");
    expect(played(in44(1, 3), full("vamp"))).toBe("T(IM)-");
    expect(played(in44(7, 5), full("strum"))).toBe("(TTTT)----");
  });

  test("strum once on each strong beat", () => {
    expect(played(in44(0, 8), full("strum"))).toBe("(TTTT)---(TTTT)---");
  });
});

describe("density", () => {
  const at = (density: FitManner["density"], stay: StayShape): string =>
    played(stay, { ...forward, density });

  test("on the beats keeps what the roll has there, and where the stay starts", () => {
    expect(at("beats", in44(0, 8))).toBe("T-M-I-T-");
    expect(at("beats", in44(3, 5))).toBe("TI-T-");
    expect(at("beats", { offset: 0, length: 6, meter: "6/8" })).toBe("T--T--");
    expect(at("beats", { offset: 0, length: 9, meter: "9/8" })).toBe("T--T--T--");
  });

  test("by bars is a pinch at the start and on each bar line, and once is one pinch", () => {
    expect(at("bars", in44(4, 12))).toBe("(TIM)--- (TIM)-------");
    expect(at("bars", in44(7, 9))).toBe("(TIM)--------");
    expect(at("once", in44(4, 12))).toBe("(TIM)-----------");
  });

  test("does not change the accents, but softness takes them away", () => {
    const accents = (manner: FitManner): number =>
      fitRolls(in44(0, 16), manner, [])
        .pieces.flatMap(({ strokes }) => strokes)
        .filter(({ accent }) => accent).length;
    expect(accents({ ...forward, density: "beats" })).toBe(4);
    expect(accents({ ...forward, density: "bars" })).toBe(2);
    expect(accents({ ...forward, soft: true })).toBe(0);
  });
});

describe("a pattern of the player's own", () => {
  const measure = ownPattern("Hopper", "TMTIMITM");
  const half = ownPattern("Hopper", "TMIM");
  const own = full("own:Hopper");

  test("is taken wherever its meter and length fit, a forward roll elsewhere", () => {
    expect(played(in44(4, 20), own, [measure])).toBe("TITM TMTIMITM TMTIMITM");
    expect(played(in44(4, 20), own, [half])).toBe("TMIM TMIM TMIM TMIM TMIM");
    expect(played(in44(4, 20), own, [measure, half])).toBe("TMIM TMTIMITM TMTIMITM");
  });

  test("of two measures leaves a third to the forward roll", () => {
    const two = ownPattern("Long", "TMTIMITMTMTIMITM");
    expect(played(in44(0, 24), full("own:Long"), [two])).toBe("TMTIMITMTMTIMITM TIMTIMTM");
  });

  test("keeps its own accents", () => {
    const { pieces } = fitRolls(in44(0, 8), own, [measure]);
    expect(pieces).toEqual([measure]);
  });

  test("that cannot be used is named, and a forward roll stands in", () => {
    const remarksOn = (stay: StayShape, style: FitManner["style"], patterns: readonly Pattern[]) =>
      fitRolls(stay, full(style), patterns).remarks;
    expect(remarksOn(in44(0, 8), "own:Gone", [measure])).toEqual(["pattern-gone"]);
    expect(remarksOn({ offset: 0, length: 6, meter: "3/4" }, "own:Hopper", [measure])).toEqual([
      "other-meter",
    ]);
    expect(remarksOn(in44(0, 6), "own:Hopper", [measure])).toEqual(["no-fit"]);
    expect(played(in44(0, 6), own, [measure])).toBe("TIMTIM");
  });
});

describe("several patterns of one name", () => {
  const own: FitManner = { style: "own:Gravel", density: "full", soft: false };
  const gravel = (letters: string, meter: Pattern["meter"] = "4/4"): Pattern =>
    ownPattern("Gravel", letters, meter);
  const remarksOn = (stay: StayShape, patterns: readonly Pattern[]) =>
    fitRolls(stay, own, patterns).remarks;

  test("fills a part by the longest that goes into it evenly", () => {
    expect(played(in44(0, 6), own, [gravel("TI"), gravel("TIM")])).toBe("TIM TIM");
    expect(played(in44(0, 6), own, [gravel("TIM"), gravel("TI")])).toBe("TIM TIM");
  });

  test("fills measures by the longest, before forward rolls stand in for the rest", () => {
    const one = gravel("TITITIMI");
    const two = gravel("TIMTIMTITIMTIMTI");
    expect(played(in44(0, 24), own, [one, two])).toBe("TIMTIMTITIMTIMTI TITITIMI");
    expect(fitRolls(in44(0, 16), own, [two]).pieces).toEqual([two]);
  });

  test("keeps its own accents, and forward rolls beside it take the meter's", () => {
    const [part, measure] = fitRolls(in44(4, 12), own, [gravel("TITITIMI")]).pieces;
    expect(measure?.strokes.map(({ accent }) => accent)).toEqual(
      gravel("TITITIMI").strokes.map(({ accent }) => accent),
    );
    expect(part?.strokes.map(({ accent }) => accent)).toEqual([true, false, false, false]);
  });

  test("is missed in words where it is gone, in another meter, or fits nowhere", () => {
    expect(remarksOn(in44(0, 8), [])).toEqual(["pattern-gone"]);
    expect(remarksOn(in44(0, 8), [ownPattern("Other", "TITITIMI")])).toEqual(["pattern-gone"]);
    expect(remarksOn(in44(0, 8), [gravel("TIM", "3/4")])).toEqual(["other-meter"]);
    expect(remarksOn(in44(0, 8), [gravel("TIMTI")])).toEqual(["no-fit"]);
    expect(remarksOn(in44(0, 8), [gravel("TITITIMI")])).toEqual([]);
    expect(remarksOn(in44(0, 12), [gravel("TITITIMI")])).toEqual([]);
  });
});

describe("the density", () => {
  const lasting = in44(4, 24);

  test("on the beats leaves every beat of every piece standing, and only those and the first", () => {
    const all = fitRolls(lasting, forward, []);
    const some = fitRolls(lasting, { ...forward, density: "beats" }, []);
    expect(some.pieces.map(({ name }) => name)).toEqual(
      all.pieces.map(({ name }) => `${name}, on the beats`),
    );
    const strokesOf = (pieces: readonly Pattern[]) => pieces.flatMap(({ strokes }) => strokes);
    const thinned = strokesOf(some.pieces);
    expect(thinned).toEqual(
      strokesOf(all.pieces).map((stroke, eighth) =>
        eighth % 2 === 0 ? stroke : { picks: [], accent: false, damped: false },
      ),
    );
  });

  test("of one pinch has it at the start alone, of bars at each bar line too", () => {
    const struckAt = (density: FitManner["density"]) =>
      fitRolls(lasting, { ...forward, density }, [])
        .pieces.flatMap(({ strokes }) => strokes)
        .flatMap(({ picks }, eighth) => (picks.length > 0 ? [eighth] : []));
    expect(struckAt("once")).toEqual([0]);
    expect(struckAt("bars")).toEqual([0, 4, 12, 20]);
    const [pinch] = fitRolls(lasting, { ...forward, density: "once" }, []).pieces;
    expect(pinch).toMatchObject({ name: "pinch", meter: "4/4" });
    expect(pinch?.strokes).toHaveLength(24);
    expect(fitRolls(lasting, { ...forward, density: "bars" }, []).remarks).toEqual([]);
  });

  test("where someone sings takes the accents and leaves picks and damping", () => {
    const loud = fitRolls(in44(0, 8), full("vamp"), []).pieces.flatMap(({ strokes }) => strokes);
    const soft = fitRolls(in44(0, 8), { ...full("vamp"), soft: true }, []).pieces;
    expect(soft.flatMap(({ strokes }) => strokes)).toEqual(
      loud.map((stroke) => ({ ...stroke, accent: false })),
    );
    expect(loud.some(({ damped }) => damped)).toBe(true);
  });
});
