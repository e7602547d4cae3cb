import { expect, test } from "vitest";
import { CameFrom } from "../../../src-renderer/state/cameFrom.ts";

const store = (text: string | null = null) => {
  let kept = text;
  return {
    getItem: () => kept,
    setItem: (_name: string, value: string) => {
      kept = value;
    },
  };
};

test("a page that is loaded again knows the bar one was at in this song and in no other", () => {
  const tab = store();
  new CameFrom(tab).note("gate-ten", 17);
  expect(new CameFrom(tab).barIn("gate-ten")).toBe(17);
  expect(new CameFrom(tab).barIn("ferry")).toBeNull();
});

test.each([null, "", "{", "7", '{"id":"gate-ten","bar":-1}', '{"id":"gate-ten","bar":"2"}'])(
  "a tab that keeps %j knows of no bar",
  (text) => {
    expect(new CameFrom(store(text)).barIn("gate-ten")).toBeNull();
  },
);

test("the bar goes with a song that gets another id, and not with another song", () => {
  const tab = store();
  const cameFrom = new CameFrom(tab);
  cameFrom.note("new-song", 23);
  cameFrom.moved("ferry", "old-ferry");
  expect(cameFrom.barIn("new-song")).toBe(23);
  cameFrom.moved("new-song", "gate-ten");
  expect(cameFrom.barIn("gate-ten")).toBe(23);
});
