import { describe, expect, test } from "vitest";
import { mannerAt, type Spot, sparser } from "../../../src-shared/roll/mannerAt.ts";
import { type Manner, type Picking, plainPicking } from "../../../src-shared/roll/picking.ts";

const spot: Spot = { written: 3, eighth: 4, time: 1, chord: "Em", section: "Verse" };
const vamp: Manner = { style: "vamp", density: "full" };
const backward: Manner = { style: "backward", density: "beats" };
const strum: Manner = { style: "strum", density: "once" };
const at = (picking: Partial<Picking>, where: Partial<Spot> = {}) => {
  const here = { ...spot, ...where };
  return mannerAt({ ...plainPicking, ...picking }, here, here);
};
const stay = { bar: 3, eighth: 4, chord: "Em" };

describe("how a chord is picked", () => {
  test("is the song's way where nothing else is said", () => {
    expect(at({ song: backward })).toEqual({ ...backward, soft: false });
  });

  test("is its section's before the song's, each time the section comes", () => {
    const sections = [{ label: "Verse", manner: vamp, sung: false }];
    expect([0, 1, 5].map((time) => at({ sections }, { time }).style)).toEqual([
      "vamp",
      "vamp",
      "vamp",
    ]);
    expect(at({ sections }, { section: "Break" }).style).toBe("forward");
    expect(at({ sections }, { section: null }).style).toBe("forward");
    expect(
      at({ sections: [{ label: "", manner: vamp, sung: false }] }, { section: null }).style,
    ).toBe("vamp");
  });

  test("is its own before its section's, and this time's before every time's", () => {
    const sections = [{ label: "Verse", manner: vamp, sung: false }];
    const stays = [
      { ...stay, time: null, manner: backward },
      { ...stay, time: 1, manner: strum },
    ];
    expect([0, 1, 2].map((time) => at({ sections, stays }, { time }).style)).toEqual([
      "backward",
      "strum",
      "backward",
    ]);
    expect(at({ sections, stays }, { chord: "G" }).style).toBe("vamp");
    expect(at({ sections, stays }, { written: 2 }).style).toBe("vamp");
    expect(at({ sections, stays }, { eighth: 0 }).style).toBe("vamp");
  });

  test("goes on in the second part of a chord unless something is said for that", () => {
    const second = { ...spot, written: 4, eighth: 0 };
    const stays = [{ ...stay, time: null, manner: vamp }];
    const picking = { ...plainPicking, stays };
    expect(mannerAt(picking, second, spot).style).toBe("vamp");
    const own = { ...stay, bar: 4, eighth: 0, time: null, manner: strum };
    expect(mannerAt({ ...picking, stays: [...stays, own] }, second, spot).style).toBe("strum");
  });

  test("is one step sparser and soft where someone sings", () => {
    const sections = [{ label: "Verse", manner: null, sung: true }];
    expect(at({ sections })).toEqual({ style: "forward", density: "beats", soft: true });
    const stays = [{ ...stay, time: null, manner: vamp }];
    expect(at({ sections, stays })).toEqual({ ...vamp, soft: true });
  });
});

test("the sparsest density has none sparser", () => {
  expect((["full", "beats", "bars", "once"] as const).map(sparser)).toEqual([
    "beats",
    "bars",
    "once",
    "once",
  ]);
});
