import * as v from "valibot";
import type { Host } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { hostOver } from "./hostOver.ts";
import { unreachable } from "./unreachable.ts";

type BridgeVerb = (argument: unknown) => Promise<unknown>;

const bridgeSchema = v.record(
  v.string(),
  v.custom<BridgeVerb>((value) => typeof value === "function"),
);

/** The host over the object that the window's preload puts there. */
export const makeBridgeHost = (bridge: unknown): Host => {
  const verbs = v.parse(bridgeSchema, bridge);
  return hostOver(async (name, argument) => {
    try {
      return await verbs[name]?.(argument);
    } catch (error) {
      return unreachable(
        words.host.closeAndStart(error instanceof Error ? error.message : String(error)),
      );
    }
  });
};
