import { describe, expect, test } from "vitest";
import { makeBridgeHost } from "../../../src-renderer/hosts/bridgeHost.ts";
import { verbNames } from "../../../src-shared/host.ts";
import { firstPreferences } from "../../../src-shared/settings.ts";

type Bridge = Readonly<Record<string, (argument: unknown) => Promise<unknown>>>;

const bridgeThat = (answers: (name: string, argument: unknown) => Promise<unknown>): Bridge =>
  Object.fromEntries(verbNames.map((name) => [name, (argument) => answers(name, argument)]));

describe("the host of the desktop's page", () => {
  test("hands every verb and its argument over the bridge", async () => {
    const calls: unknown[] = [];
    const host = makeBridgeHost(
      bridgeThat(async (name, argument) => {
        calls.push([name, argument]);
        return { ok: true, value: null };
      }),
    );
    expect(Object.keys(host)).toEqual([...verbNames]);
    expect(await host.writePreferences(firstPreferences)).toEqual({ ok: true, value: null });
    expect(calls).toEqual([["writePreferences", firstPreferences]]);
  });

  test("gives a problem on as it came", async () => {
    const problem = { code: "disk", says: "The disk is full.", try: "Free some space." };
    const host = makeBridgeHost(bridgeThat(async () => ({ ok: false, problem })));
    expect(await host.listSongs(null)).toEqual({ ok: false, problem });
  });

  test.each([undefined, null, "yes", { ok: "yes" }, { ok: true, value: [7] }])(
    "takes %j for no answer",
    async (raw) => {
      const host = makeBridgeHost(bridgeThat(async () => raw));
      expect(await host.listSongs(null)).toMatchObject({ problem: { code: "bug" } });
    },
  );

  test("says in words that the other side is gone", async () => {
    const gone = (): Promise<never> => Promise.reject(new Error("reply was never sent"));
    const host = makeBridgeHost(bridgeThat(gone));
    expect(await host.listSongs(null)).toMatchObject({
      ok: false,
      problem: { code: "unreachable", try: expect.stringContaining("reply was never sent") },
    });
  });
});
