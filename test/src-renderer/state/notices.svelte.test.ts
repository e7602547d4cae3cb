// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { NOTICE_MS, Notices } from "../../../src-renderer/state/notices.svelte.ts";
import { HandClock } from "./handClock.ts";
import { diskFull } from "./memoryHost.ts";

const withClock = () => {
  const clock = new HandClock();
  return { clock, notices: new Notices(clock.later) };
};

const words = (notices: Notices) => notices.all.map(({ says }) => says);

test("an offer to undo stays for at least ten seconds, then goes", () => {
  const { clock, notices } = withClock();
  notices.say("Deleted.", { label: "Undo", run: () => undefined });
  clock.turn(10_000);
  expect(words(notices)).toEqual(["Deleted."]);
  clock.turn(NOTICE_MS - 10_000);
  expect(words(notices)).toEqual([]);
});

test("a message that is being read stays until it is let go, and then its time begins anew", () => {
  const { clock, notices } = withClock();
  notices.say("Deleted.");
  const [notice] = notices.all;
  notices.hold(notice?.id ?? 0);
  clock.turn(3 * NOTICE_MS);
  expect(words(notices)).toEqual(["Deleted."]);
  notices.letGo(notice?.id ?? 0);
  clock.turn(NOTICE_MS);
  expect(words(notices)).toEqual([]);
});

test("a problem stays until it is dismissed, and is not said twice", () => {
  const { clock, notices } = withClock();
  notices.complain(diskFull);
  notices.complain(diskFull);
  clock.turn(10 * NOTICE_MS);
  expect(words(notices)).toEqual([`${diskFull.says} ${diskFull.try}`]);
  notices.dismiss(notices.all[0]?.id ?? 0);
  expect(words(notices)).toEqual([]);
});

test("acting on a message does what it offers, once, and takes it away", () => {
  const { notices } = withClock();
  let undone = 0;
  notices.say("Deleted.", {
    label: "Undo",
    run: () => {
      undone += 1;
    },
  });
  const [notice] = notices.all;
  if (notice) notices.act(notice);
  expect([undone, notices.all.length]).toEqual([1, 0]);
});

test("what is said about one thing is taken away without the rest", () => {
  const { notices } = withClock();
  notices.say("The fence is deleted.", null, "ticket 1");
  notices.say("The ferry is deleted.", null, "ticket 2");
  notices.dismissAbout("ticket 1");
  expect(words(notices)).toEqual(["The ferry is deleted."]);
});
