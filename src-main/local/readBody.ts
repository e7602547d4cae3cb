import type { IncomingMessage } from "node:http";

/** A request's body as text; why not, where it is too long or not UTF-8. */
export type Body =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "too-long" }
  | { readonly kind: "not-text" };

/**
 * Reads a request's body, of at most `limit` bytes. A longer one is read to its end but not kept:
 * a browser that is cut off while it sends never sees the answer. The server's time-out bounds it.
 */
export const readBody = async (request: IncomingMessage, limit: number): Promise<Body> => {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Uint8Array>) {
    length += chunk.length;
    if (length > limit) {
      chunks.length = 0;
    } else {
      chunks.push(chunk);
    }
  }
  if (length > limit) {
    return { kind: "too-long" };
  }
  try {
    return {
      kind: "text",
      text: new TextDecoder("utf-8", { fatal: true }).decode(Buffer.concat(chunks)),
    };
  } catch (error) {
    if (error instanceof TypeError) {
      return { kind: "not-text" };
    }
    throw error;
  }
};
