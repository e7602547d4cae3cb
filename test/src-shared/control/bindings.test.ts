import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { actionNames, actionTable } from "../../../src-shared/control/actionTable.ts";
import {
  actionFor,
  type Rebindings,
  rebind,
  rebindingsSchema,
  triggersFor,
} from "../../../src-shared/control/bindings.ts";
import { keyRefusal, keyTriggers } from "../../../src-shared/control/keyPress.ts";
import { sameTrigger, type Trigger } from "../../../src-shared/control/trigger.ts";
import { sayAction, sayTrigger } from "../../../src-shared/wording/sayAction.ts";

const key = (name: string): Trigger => ({ kind: "key", key: name });
const pedal: Trigger = { kind: "control", channel: 1, number: 64 };

const usualKeys = actionTable.flatMap(({ keys }) => keys);
const anyTrigger: fc.Arbitrary<Trigger> = fc.oneof(
  fc.constantFrom(...usualKeys, "q", "Enter", "ArrowUp").map(key),
  fc.record({
    kind: fc.constantFrom("note" as const, "control" as const, "program" as const),
    channel: fc.integer({ min: 1, max: 3 }),
    number: fc.integer({ min: 0, max: 3 }),
  }),
);
const anyChanges = fc.array(
  fc.tuple(anyTrigger, fc.option(fc.constantFrom(...actionNames), { nil: null })),
  { maxLength: 30 },
);
const ownAfter = (changes: readonly (readonly [Trigger, (typeof actionNames)[number] | null])[]) =>
  changes.reduce<Rebindings>((own, [trigger, action]) => rebind(own, trigger, action), []);

describe("the usual keys", () => {
  test("are each for one action, and none is refused", () => {
    expect(new Set(usualKeys).size).toBe(usualKeys.length);
    expect(usualKeys.filter((name) => keyRefusal(name) !== null)).toEqual([]);
  });

  test("are there for every action, and every action and key has words of its own", () => {
    for (const name of actionNames) expect(triggersFor([], name).length).toBeGreaterThan(0);
    expect(new Set(actionNames.map(sayAction)).size).toBe(actionNames.length);
    expect(new Set(usualKeys.map((name) => sayTrigger(key(name)))).size).toBe(usualKeys.length);
  });
});

describe("a trigger that is given to an action", () => {
  test("does that, and is taken from the one that had it", () => {
    const own = rebind([], key("l"), "stop");
    expect(actionFor(own, key("l"))).toBe("stop");
    expect(triggersFor(own, "loopHere")).toEqual([]);
    expect(triggersFor(own, "stop")).toEqual([key("s"), key("l")]);
  });

  test("leaves nothing to keep when it is given back", () => {
    const own = rebind(rebind([], key("l"), "stop"), key("l"), "loopHere");
    expect(own).toEqual([]);
  });

  test("can be a MIDI switch, and can be taken off again", () => {
    const own = rebind([], pedal, "playPause");
    expect(actionFor(own, pedal)).toBe("playPause");
    expect(rebind(own, pedal, null)).toEqual([]);
  });

  test("stays with one action, whatever was changed before", () => {
    fc.assert(
      fc.property(anyChanges, anyTrigger, (changes, asked) => {
        const own = ownAfter(changes);
        const having = actionNames.filter((name) =>
          triggersFor(own, name).some((trigger) => sameTrigger(trigger, asked)),
        );
        const action = actionFor(own, asked);
        expect(having).toEqual(action === null ? [] : [action]);
      }),
    );
  });

  test("does what was last said of it, and that can be kept and read again", () => {
    fc.assert(
      fc.property(anyChanges, (changes) => {
        const own = ownAfter(changes);
        for (const [trigger] of changes) {
          const last = changes.findLast(([other]) => sameTrigger(other, trigger));
          expect(actionFor(own, trigger)).toBe(last?.[1] ?? null);
        }
        expect(v.parse(rebindingsSchema, JSON.parse(JSON.stringify(own)))).toEqual(own);
      }),
    );
  });
});

test.each([
  { trigger: { kind: "note", channel: 0, number: 5 }, action: "stop" },
  { trigger: { kind: "control", channel: 1, number: 128 }, action: "stop" },
  { trigger: { kind: "key", key: "" }, action: "stop" },
  { trigger: { kind: "key", key: "q" }, action: "dance" },
])("a damaged binding is refused: %j", (damaged) => {
  expect(v.safeParse(rebindingsSchema, [damaged]).success).toBe(false);
});

describe("a key press", () => {
  const press = (name: string, code: string, held = {}) =>
    keyTriggers({ key: name, code, ctrlKey: false, altKey: false, metaKey: false, ...held });

  test("is known by its figure too where Shift or the layout writes something else", () => {
    expect(press("%", "Digit5")).toEqual([key("%"), key("5")]);
    expect(press("&", "Digit1")).toEqual([key("&"), key("1")]);
    expect(press("5", "Digit5")).toEqual([key("5")]);
    expect(press("7", "Numpad7")).toEqual([key("7")]);
  });

  test("on a number pad without its lock is what it says", () => {
    expect(press("Home", "Numpad7")).toEqual([key("Home")]);
  });

  test("with Ctrl, Alt or the command key belongs to the browser", () => {
    for (const held of ["ctrlKey", "altKey", "metaKey"]) {
      expect(press("1", "Digit1", { [held]: true })).toEqual([]);
    }
  });
});
