import type { IpcMain, IpcMainInvokeEvent, WebFrameMain } from "electron";

type Handler = Parameters<IpcMain["handle"]>[1];

/** A frame as Electron tells of it; only its address matters to us. */
export const frameAt = (url: string): WebFrameMain => ({ url }) as WebFrameMain;

/** Stands in for Electron's ipcMain: keeps the handlers and calls them as a frame would. */
export class IpcLine implements Pick<IpcMain, "handle"> {
  readonly handlers: Map<string, Handler> = new Map();

  handle(channel: string, handler: Handler): void {
    this.handlers.set(channel, handler);
  }

  async invoke(
    senderFrame: WebFrameMain | null,
    channel: string,
    argument: unknown,
  ): Promise<unknown> {
    const handler = this.handlers.get(channel);
    if (handler === undefined) {
      throw new Error(`nothing answers ${channel}`);
    }
    const answer: unknown = await handler({ senderFrame } as IpcMainInvokeEvent, argument);
    // Electron copies what crosses the line; what cannot be copied fails here as it does there.
    return structuredClone(answer);
  }
}
