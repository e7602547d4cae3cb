// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { listKey } from "../../../../src-renderer/parts/songList.ts";
import { Choice } from "../../../../src-renderer/screens/songbook/choice.svelte.ts";

const order = ["a", "b", "c", "d", "e"];
const chosen = (choice: Choice) => [...choice.ids].toSorted().join("");

describe("choosing songs", () => {
  test("goes from the last one that was pressed to the one with Shift, up or down", () => {
    const choice = new Choice();
    choice.toggle("d");
    choice.through("b", order);
    expect(chosen(choice)).toBe("bcd");
    choice.through("e", order);
    expect(chosen(choice)).toBe("bcde");
  });

  test("takes one alone where no range has begun, and begins it there", () => {
    const choice = new Choice();
    choice.through("b", order);
    choice.through("d", order);
    expect(chosen(choice)).toBe("bcd");
  });

  test("by keys begins at the row one comes from", () => {
    const choice = new Choice();
    choice.beginAt("a");
    choice.through("b", order);
    choice.beginAt("b");
    choice.through("c", order);
    expect(chosen(choice)).toBe("abc");
  });

  test("lets go what is no longer in the list, and all at once", () => {
    const choice = new Choice();
    choice.all(order);
    choice.toggle("c");
    choice.keep(new Set(["a", "c"]));
    expect(chosen(choice)).toBe("a");
    choice.none();
    expect(chosen(choice)).toBe("");
  });
});

describe("a key in the list", () => {
  const press = (
    key: string,
    held: Partial<Record<"shiftKey" | "ctrlKey" | "altKey", true>> = {},
  ) => ({
    key,
    shiftKey: false,
    ctrlKey: false,
    metaKey: false,
    altKey: false,
    defaultPrevented: false,
    ...held,
  });

  test.each([
    [press("ArrowDown"), { kind: "go", by: 1, choosing: false }],
    [press("ArrowUp", { shiftKey: true }), { kind: "go", by: -1, choosing: true }],
    [press("a", { ctrlKey: true }), { kind: "all" }],
    [press("Escape"), { kind: "none" }],
    [press("Delete"), { kind: "delete" }],
    [press("a"), null],
    [press("ArrowDown", { altKey: true }), null],
    [press("ArrowDown", { ctrlKey: true }), null],
  ])("%o asks for %o", (event, asked) => {
    expect(listKey(event)).toEqual(asked);
  });
});
