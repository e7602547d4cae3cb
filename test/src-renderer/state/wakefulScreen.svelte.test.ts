// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { WakefulScreen } from "../../../src-renderer/state/wakefulScreen.svelte.ts";

const settled = () => new Promise((done) => setImmediate(done));

class Lock extends EventTarget {
  released = false;

  release(): Promise<void> {
    this.released = true;
    this.dispatchEvent(new Event("release"));
    return Promise.resolve();
  }
}

/** The Screen Wake Lock API, which lets go by itself when the page is hidden. */
class Locks {
  readonly given: Lock[] = [];
  refuses = false;
  #waiting: (() => void) | null = null;
  slow = false;

  async request(): Promise<Lock> {
    if (this.slow) await new Promise<void>((go) => (this.#waiting = go));
    if (this.refuses) throw new DOMException("Low battery", "NotAllowedError");
    const lock = new Lock();
    this.given.push(lock);
    return lock;
  }

  answer(): void {
    this.#waiting?.();
  }

  get held(): number {
    return this.given.filter(({ released }) => !released).length;
  }
}

class Page extends EventTarget {
  visibilityState: DocumentVisibilityState = "visible";

  become(state: DocumentVisibilityState): void {
    this.visibilityState = state;
    this.dispatchEvent(new Event("visibilitychange"));
  }
}

const set = () => {
  const [locks, page] = [new Locks(), new Page()];
  return { locks, page, screen: new WakefulScreen(locks, page) };
};

test("the screen stays awake while it is asked to, and not longer", async () => {
  const { locks, screen } = set();
  await settled();
  expect(locks.given).toEqual([]);
  screen.keep(true);
  screen.keep(true);
  await settled();
  expect([locks.given.length, locks.held]).toEqual([1, 1]);
  screen.keep(false);
  await settled();
  expect(locks.held).toBe(0);
});

test("it is kept awake again when the page comes back", async () => {
  const { locks, page, screen } = set();
  screen.keep(true);
  await settled();
  page.become("hidden");
  await locks.given[0]?.release();
  await settled();
  expect(locks.held).toBe(0);
  page.become("visible");
  await settled();
  expect([locks.given.length, locks.held]).toEqual([2, 1]);
});

test("nothing is asked for while the page is hidden", async () => {
  const { locks, page, screen } = set();
  page.become("hidden");
  screen.keep(true);
  await settled();
  expect(locks.given).toEqual([]);
});

test("a lock that comes when it is no longer wanted is let go", async () => {
  const { locks, screen } = set();
  locks.slow = true;
  screen.keep(true);
  screen.keep(false);
  locks.answer();
  await settled();
  expect([locks.given.length, locks.held]).toEqual([1, 0]);
});

test("after it is disposed of, the page's coming back changes nothing", async () => {
  const { locks, page, screen } = set();
  screen.keep(true);
  await settled();
  screen.dispose();
  page.become("hidden");
  page.become("visible");
  await settled();
  expect([locks.given.length, locks.held]).toEqual([1, 0]);
});

test("without the API, or refused, it says why the screen may go dark", async () => {
  const without = new WakefulScreen(null, new Page());
  without.keep(true);
  expect(without.trouble).toBe("absent");
  const { locks, screen } = set();
  locks.refuses = true;
  screen.keep(true);
  await settled();
  expect(screen.trouble).toBe("refused");
  screen.keep(false);
  locks.refuses = false;
  screen.keep(true);
  await settled();
  expect([screen.trouble, locks.held]).toEqual([null, 1]);
});
