import type { IpcMain, WebFrameMain } from "electron";
import { type Answer, channelOf, verbNames } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed } from "../services/answer.ts";
import type { OpenHost } from "../services/makeHost.ts";
import { isOurs } from "./appScheme.ts";

/** The calls that the screen has made and that are not answered yet. */
export type Calls = {
  readonly underWay: () => number;
  /** Resolves when none is under way. */
  readonly settled: () => Promise<void>;
};

const refused = (): Answer<never> =>
  failed("refused", words.host.notThisPage, words.host.ownWindow);

/**
 * Answers every verb of the table over IPC. A call counts only from the main frame of our window
 * while that frame shows our screen; `ourFrame` is that frame, or null where there is no window.
 */
export const answerScreen = (
  ipcMain: Pick<IpcMain, "handle">,
  host: OpenHost,
  ourFrame: () => WebFrameMain | null,
): Calls => {
  const open = new Set<Promise<unknown>>();
  const isTrusted = (frame: WebFrameMain | null): boolean =>
    frame !== null && frame === ourFrame() && isOurs(frame.url);

  for (const name of verbNames) {
    ipcMain.handle(channelOf(name), async (event, argument: unknown) => {
      if (!isTrusted(event.senderFrame)) {
        return refused();
      }
      const call = host[name](argument);
      open.add(call);
      try {
        return await call;
      } finally {
        open.delete(call);
      }
    });
  }

  return {
    underWay: () => open.size,
    settled: async () => {
      await Promise.allSettled(open);
    },
  };
};
