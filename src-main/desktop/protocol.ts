import type { Protocol } from "electron";
import { words } from "../../src-shared/wordTable.ts";
import { findScreenFile } from "../services/screenFile.ts";
import { screenHeaders } from "../services/screenHeaders.ts";
import { appScheme, isOurs } from "./appScheme.ts";

const inWords = (status: number, text: string): Response =>
  new Response(text, {
    status,
    headers: { ...screenHeaders, "Content-Type": "text/plain; charset=utf-8" },
  });

const answer = async (folder: string, request: Request): Promise<Response> => {
  if (request.method !== "GET") {
    return inWords(405, words.host.onlyReading);
  }
  const { pathname } = new URL(request.url);
  const file = isOurs(request.url) ? await findScreenFile(folder, pathname) : null;
  if (file === null) {
    return inWords(404, pathname === "/" ? words.host.notBuilt : words.host.noFile);
  }
  return new Response(file.bytes, {
    headers: { ...screenHeaders, "Content-Type": file.type, "Cache-Control": file.cacheControl },
  });
};

/** Serves the built screen under its own scheme. */
export const serveScreen = (protocol: Pick<Protocol, "handle">, folder: string): void => {
  protocol.handle(appScheme.scheme, (request) => answer(folder, request));
};
