import type { Host } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { hostOver } from "./hostOver.ts";
import { unreachable } from "./unreachable.ts";

/** What the host over the local server needs: where it is, the secret, and how to ask. */
export type WebLine = {
  /** The page's own origin, as `location.origin` has it. */
  readonly origin: string;
  readonly token: string;
  readonly fetch: typeof globalThis.fetch;
};

/** The Fetch standard lets 64 KiB in all be under way after a page has gone: room for three. */
const KEEPALIVE_BYTES = 20_000;

/** The host over the local server. */
export const makeWebHost = ({ origin, token, fetch }: WebLine): Host =>
  hostOver(async (name, argument) => {
    const body = new TextEncoder().encode(JSON.stringify({ argument }));
    try {
      const response = await fetch(`${origin}/call/${name}`, {
        method: "POST",
        headers: { "Content-Type": "application/json", Authorization: `Bearer ${token}` },
        // A last save goes through although the page is being left.
        keepalive: body.length <= KEEPALIVE_BYTES,
        body,
      });
      const answer: unknown = await response.json();
      return answer;
    } catch (error) {
      // fetch rejects with a TypeError, json with a SyntaxError where something else answers.
      if (error instanceof TypeError || error instanceof SyntaxError) {
        return unreachable(words.host.seeTerminal);
      }
      throw error;
    }
  });
