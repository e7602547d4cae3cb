import { beforeAll, describe, expect, test, vi } from "vitest";
import { BRIDGE_NAME, channelOf, FILES_HANDED, verbNames } from "../../../src-shared/host.ts";

type Bridge = Readonly<Record<string, (...args: readonly unknown[]) => Promise<unknown>>>;

const stand = vi.hoisted(() => ({
  exposed: new Map<string, unknown>(),
  invoked: [] as (readonly unknown[])[],
  heard: new Map<string, () => void>(),
}));
vi.mock("electron", () => ({
  contextBridge: {
    exposeInMainWorld: (name: string, value: unknown) => void stand.exposed.set(name, value),
  },
  ipcRenderer: {
    on: (channel: string, hear: () => void) => void stand.heard.set(channel, hear),
    invoke: async (...args: readonly unknown[]) => {
      stand.invoked.push(args);
      return "answered";
    },
  },
}));

describe("the preload", () => {
  beforeAll(async () => {
    await import("../../../src-main/desktop/preload.ts");
  });
  const bridge = (): Bridge => stand.exposed.get(BRIDGE_NAME) as Bridge;

  test("puts one thing on the page's window: the verbs of the table", () => {
    expect([...stand.exposed.keys()]).toEqual([BRIDGE_NAME]);
    expect(Object.keys(bridge())).toEqual([...verbNames]);
  });

  test.each(verbNames)(
    "sends %s on its own channel with one argument and no more",
    async (name) => {
      stand.invoked.length = 0;
      const answer = await bridge()[name]?.({ id: "gate-ten" }, "shortslide:elsewhere");
      expect(answer).toBe("answered");
      expect(stand.invoked).toEqual([[channelOf(name), { id: "gate-ten" }]]);
    },
  );

  test("hears of nothing but files that were handed, and says that without content", () => {
    const page = new EventTarget();
    vi.stubGlobal("window", page);
    const events: Event[] = [];
    page.addEventListener(FILES_HANDED, (event) => events.push(event));
    expect([...stand.heard.keys()]).toEqual([FILES_HANDED]);
    stand.heard.get(FILES_HANDED)?.();
    expect(events.map((event) => event.constructor)).toEqual([Event]);
    vi.unstubAllGlobals();
  });
});
