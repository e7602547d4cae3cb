import type { IncomingMessage, ServerResponse } from "node:http";
import { findScreenFile } from "../services/screenFile.ts";

/** Answers a reading request with a file of the screen; false where there is no such file. */
export const sendStaticFile = async (
  folder: string,
  path: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<boolean> => {
  const file = await findScreenFile(folder, path);
  if (file === null) {
    return false;
  }
  response.writeHead(200, {
    "Content-Type": file.type,
    "Content-Length": file.bytes.length,
    "Cache-Control": file.cacheControl,
  });
  response.end(request.method === "HEAD" ? undefined : file.bytes);
  return true;
};
