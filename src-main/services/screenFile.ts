import { readFile, realpath } from "node:fs/promises";
import { extname, join, sep } from "node:path";
import { isMissing } from "./disk.ts";
import { isSystemError } from "./diskProblem.ts";

/** One file of the built screen. */
export type ScreenFile = {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly cacheControl: string;
};

/** What the screen is made of; nothing else is served. */
const types: ReadonlyMap<string, string> = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
  [".json", "application/json; charset=utf-8"],
  [".woff2", "font/woff2"],
  [".woff", "font/woff"],
  [".svg", "image/svg+xml"],
  [".png", "image/png"],
  [".ico", "image/x-icon"],
]);

/** Names as the build makes them, one or more; none starts with a dot, so none leads upward. */
const PLAIN_PATH = /^(?:\/[A-Za-z0-9_-][A-Za-z0-9_.-]*)+$/u;

const decoded = (path: string): string | null => {
  try {
    return decodeURIComponent(path);
  } catch (error) {
    if (error instanceof URIError) {
      return null;
    }
    throw error;
  }
};

/**
 * The file of the screen that an address' path means ("/" is the page itself); null where there is
 * none, or where it would lead out of the folder.
 */
export const findScreenFile = async (
  folder: string,
  urlPath: string,
): Promise<ScreenFile | null> => {
  const path = urlPath === "/" ? "/index.html" : decoded(urlPath);
  const type = path === null ? undefined : types.get(extname(path));
  if (path === null || type === undefined || !PLAIN_PATH.test(path)) {
    return null;
  }
  try {
    const root = await realpath(folder);
    const file = await realpath(join(root, path));
    if (!file.startsWith(root + sep)) {
      return null;
    }
    return {
      bytes: Uint8Array.from(await readFile(file)),
      type,
      // The build puts a hash of the content into every name under /assets/.
      cacheControl: path.startsWith("/assets/")
        ? "public, max-age=31536000, immutable"
        : "no-cache",
    };
  } catch (error) {
    const isNoFile = isSystemError(error) && (error.code === "ENOTDIR" || error.code === "EISDIR");
    if (isMissing(error) || isNoFile) {
      return null;
    }
    throw error;
  }
};
