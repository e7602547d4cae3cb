import { describe, expect, test } from "vitest";
import {
  ownNameOf,
  ownStyle,
  sectionPickingOf,
  sleepsAmong,
  stayPickingAt,
  usesStyle,
  withoutSleeping,
  withoutStay,
  withSection,
  withStay,
  withStyleRenamed,
} from "../../../src-shared/roll/editPicking.ts";
import { type Manner, type Picking, plainPicking } from "../../../src-shared/roll/picking.ts";

const vamp: Manner = { style: "vamp", density: "beats" };
const own: Manner = { style: "own:Tin gate", density: "full" };
const first = { bar: 2, eighth: 4, chord: "Em", time: 0 };
const second = { ...first, time: 1 };

describe("a section", () => {
  test("is played as the song, unsung, until something is set for it", () => {
    expect(sectionPickingOf(plainPicking, "Verse")).toEqual({
      label: "Verse",
      manner: null,
      sung: false,
    });
  });

  test("set back to the song's own manner leaves nothing behind", () => {
    const set = withSection(plainPicking, { label: "Verse", manner: vamp, sung: true });
    expect(sectionPickingOf(set, "Verse").manner).toEqual(vamp);
    const sung = withSection(set, { label: "Verse", manner: null, sung: true });
    expect(sung.sections).toHaveLength(1);
    expect(withSection(sung, { label: "Verse", manner: null, sung: false })).toEqual(plainPicking);
  });
});

describe("a chord by itself", () => {
  test("set for this time leaves the other times alone", () => {
    const set = withStay(plainPicking, first, vamp, false);
    expect(stayPickingAt(set, first)?.manner).toEqual(vamp);
    expect(stayPickingAt(set, second)).toBeNull();
    expect(stayPickingAt(set, { ...first, chord: "C" })).toBeNull();
  });

  test("set for every time takes the place of what single times had", () => {
    const set = withStay(withStay(plainPicking, second, vamp, false), first, own, true);
    expect(set.stays).toHaveLength(1);
    expect([first, second].map((place) => stayPickingAt(set, place)?.manner)).toEqual([own, own]);
  });

  test("set for one time goes before what is set for every time", () => {
    const set = withStay(withStay(plainPicking, first, own, true), second, vamp, false);
    expect([first, second].map((place) => stayPickingAt(set, place)?.manner)).toEqual([own, vamp]);
    expect(stayPickingAt(withoutStay(set, second), second)?.manner).toEqual(own);
  });

  test("of which the place is gone sleeps, and can be cleared", () => {
    const set = withStay(withStay(plainPicking, first, own, true), second, vamp, false);
    expect(set.stays.filter(sleepsAmong([first]))).toEqual([
      { bar: 2, eighth: 4, chord: "Em", time: 1, manner: vamp },
    ]);
    expect(withoutSleeping(set, [first]).stays).toHaveLength(1);
    expect(withoutSleeping(set, []).stays).toEqual([]);
  });
});

test("a pattern named anew is named anew wherever the song uses it", () => {
  const everywhere: Picking = withStay(
    withSection({ ...plainPicking, song: own }, { label: "B", manner: own, sung: false }),
    first,
    own,
    true,
  );
  expect(usesStyle(everywhere, "own:Tin gate")).toBe(true);
  const after = withStyleRenamed(everywhere, "own:Tin gate", "own:Low weir");
  expect(
    [after.song, after.sections[0]?.manner, after.stays[0]?.manner].map((m) => m?.style),
  ).toEqual(["own:Low weir", "own:Low weir", "own:Low weir"]);
  expect(usesStyle(after, "own:Tin gate")).toBe(false);
  expect(withStyleRenamed(everywhere, "vamp", "strum")).toEqual(everywhere);
});

test("a style of the player's own is told by what stands before the name", () => {
  expect(ownStyle("Tin gate")).toBe("own:Tin gate");
  expect([ownNameOf("own:Tin gate"), ownNameOf("own:own:"), ownNameOf("vamp")]).toEqual([
    "Tin gate",
    "own:",
    null,
  ]);
});

test("setting one section leaves the others as they are, in place of what it had", () => {
  const verse = { label: "Verse", manner: vamp, sung: false };
  const bridge = { label: "Bridge", manner: null, sung: true };
  const both = withSection(withSection(plainPicking, verse), bridge);
  expect(both.sections).toEqual([verse, bridge]);
  expect([sectionPickingOf(both, "Verse"), sectionPickingOf(both, "Bridge")]).toEqual([
    verse,
    bridge,
  ]);
  const again = { ...verse, sung: true };
  expect(withSection(both, again).sections).toEqual([bridge, again]);
});

test("what is set for a chord is not set for one in another bar, at another eighth or of another name", () => {
  const set = withStay(plainPicking, first, vamp, true);
  for (const place of [
    { ...first, bar: 3 },
    { ...first, eighth: 0 },
    { ...first, chord: "E" },
  ]) {
    expect(stayPickingAt(set, place)).toBeNull();
    expect(withStay(set, place, own, true).stays).toHaveLength(2);
  }
});

test("setting a chord again for the same time takes the place of what was set", () => {
  const set = withStay(withStay(plainPicking, second, own, false), first, own, false);
  const again = withStay(set, second, vamp, false);
  expect(again.stays).toHaveLength(2);
  expect([first, second].map((place) => stayPickingAt(again, place)?.manner)).toEqual([own, vamp]);
});

test("a style is used where the song, one section or one chord has it", () => {
  const inSection = withSection(plainPicking, { label: "B", manner: own, sung: false });
  const sung = withSection(plainPicking, { label: "C", manner: null, sung: true });
  expect(usesStyle(inSection, "own:Tin gate")).toBe(true);
  expect(usesStyle(withStay(plainPicking, first, own, true), "own:Tin gate")).toBe(true);
  expect(usesStyle(sung, "own:Tin gate")).toBe(false);
  expect(usesStyle(sung, "forward")).toBe(true);
});
