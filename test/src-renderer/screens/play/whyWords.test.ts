import { describe, expect, test } from "vitest";
import { pinsChosen } from "../../../../src-renderer/screens/play/placePins.ts";
import { whyWords } from "../../../../src-renderer/screens/play/whyWords.ts";
import { chartToScore, type Walk, whyHere } from "../../../../src-shared/chartToScore.ts";
import type { Pin } from "../../../../src-shared/route/pins.ts";
import { newSongSettings } from "../../../../src-shared/settings.ts";
import { sayMore } from "../../../../src-shared/wording/sayWhy.ts";

const walkOf = (
  pins: readonly Pin[] = [],
  shapes: readonly ("F" | "D" | "barre")[] = ["F", "D", "barre"],
) =>
  chartToScore(
    "Title: Wharf\nKey: G\n| G | C | D |",
    { ...newSongSettings.plan, goesRound: false, pins, shapes },
    null,
  );

const reasons = (walk: Walk, placement: number) =>
  whyWords(walk, placement, whyHere(walk, placement)?.elsewhere ?? []);

describe("the reasons for a placement", () => {
  test("name the chord, both of its changes and every other place with what it costs", () => {
    const walk = walkOf();
    const words = reasons(walk, 1);
    expect(words?.title).toMatch(/^C in bar 2: (F shape|D shape|barre), fret \d+$/);
    expect(words?.changes.map(({ name }) => name)).toEqual(["From G", "On to D"]);
    const why = whyHere(walk, 1);
    expect(words?.elsewhere.map(({ more }) => more)).toEqual(
      why?.elsewhere.map(({ more }) => sayMore(walk.request, more)),
    );
    expect(words?.elsewhere.length).toBeGreaterThan(1);
    expect(words?.about).toContain("60 mm");
  });

  test("have one change only at either end of a song played once", () => {
    const walk = walkOf();
    expect(reasons(walk, 0)?.changes.map(({ name }) => name)).toEqual(["On to C"]);
    expect(reasons(walk, 2)?.changes.map(({ name }) => name)).toEqual(["From C"]);
  });

  test("are the player's own pin, or that there is nothing else", () => {
    const before = walkOf();
    const voicing = before.route?.placements[1]?.voicing;
    if (!voicing) throw new Error("no route");
    const pinned = walkOf(pinsChosen(before, 1, voicing, "this time"));
    expect(reasons(pinned, 1)?.about).toContain("You have pinned it here");
    const barres = walkOf([], ["barre"]);
    expect(reasons(barres, 0)?.about).toContain("leave it no other place");
  });

  test("wait for the other places to be weighed, the changes do not", () => {
    const words = whyWords(walkOf(), 1, null);
    expect(words?.about).toBe("Weighing the other places…");
    expect(words?.changes.length).toBe(2);
    expect(words?.elsewhere).toEqual([]);
  });

  test("are none where there is no placement", () => {
    expect(reasons(walkOf(), -1)).toBeNull();
    expect(reasons(walkOf(), 3)).toBeNull();
  });
});
