import { BRIDGE_NAME, type Host } from "../../src-shared/host.ts";
import { makeBridgeHost } from "./bridgeHost.ts";
import { type TokenPlaces, takeToken } from "./takeToken.ts";
import { makeWebHost } from "./webHost.ts";

/** What of the window tells who carries the calls. */
export type HostWindow = Omit<TokenPlaces, "location"> & {
  readonly location: TokenPlaces["location"] & Pick<Location, "origin">;
  readonly fetch: typeof globalThis.fetch;
};

/** The host of this page: the desktop's bridge where there is one, else the local server. */
export const pickHost = (page: HostWindow): Host =>
  BRIDGE_NAME in page
    ? makeBridgeHost(page[BRIDGE_NAME])
    : makeWebHost({
        origin: page.location.origin,
        token: takeToken(page),
        fetch: (input, init) => page.fetch(input, init),
      });
