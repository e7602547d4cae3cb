// @vitest-environment happy-dom
import fc from "fast-check";
import { expect, test } from "vitest";
import { Navigation } from "../../../src-renderer/state/navigation.svelte.ts";
import { hashOf, jamPlace, placeOf } from "../../../src-renderer/state/place.ts";

test("every place comes back from its address, whatever the song is called", () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: "grapheme" }), (id) => {
      expect(placeOf(hashOf({ kind: "chart", id }))).toEqual({ kind: "chart", id });
      expect(placeOf(hashOf({ kind: "play", id }))).toEqual({ kind: "play", id });
    }),
  );
});

test("the jam comes back from its address", () => {
  expect(placeOf(hashOf(jamPlace))).toEqual(jamPlace);
});

test.each([
  "",
  "#",
  "#/jam/",
  "#/jams",
  "#/chart/",
  "#/mixer/fence",
  "#token=abc",
  "#/songbook/extra",
])("the address %j leads to the songbook", (hash) => {
  expect(placeOf(hash)).toEqual({ kind: "songbook" });
});

test("an address that no browser would write is read without throwing", () => {
  fc.assert(
    fc.property(fc.string(), (tail) => {
      expect(["songbook", "chart", "play"]).toContain(placeOf(`#/play/%ff${tail}`).kind);
    }),
  );
});

test("going somewhere changes the address, and following an address changes the place", () => {
  const written: string[] = [];
  const navigation = new Navigation("#/play/fence", {
    push: (hash) => written.push(hash),
    replace: (hash) => written.push(`instead ${hash}`),
  });
  expect(navigation.place).toEqual({ kind: "play", id: "fence" });
  navigation.go({ kind: "chart", id: "tin roof" });
  expect(written).toEqual(["#/chart/tin%20roof"]);
  navigation.follow("#/songbook");
  expect(navigation.place).toEqual({ kind: "songbook" });
  expect(written).toHaveLength(1);
});

test("an address that names no place is replaced by the songbook's, at the start and later", () => {
  const written: string[] = [];
  const address = {
    push: (hash: string) => written.push(`push ${hash}`),
    replace: (hash: string) => written.push(hash),
  };
  const navigation = new Navigation("#/zzz", address);
  expect(written).toEqual(["#/songbook"]);
  navigation.go({ kind: "chart", id: "fence" });
  navigation.follow("#/mixer");
  expect([navigation.place, written.at(-1)]).toEqual([{ kind: "songbook" }, "#/songbook"]);
});
