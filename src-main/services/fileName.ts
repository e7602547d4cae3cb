import { Buffer } from "node:buffer";
import { join } from "node:path";

const MAX_CHARACTERS = 120;
/** Most file systems allow 255 bytes; what is left is for endings. */
const MAX_BYTES = 200;
const SLUG_CHARACTERS = 60;

/**
 * Names that Windows keeps for devices, with or without an ending.
 * Source: Microsoft Learn, "Naming Files, Paths, and Namespaces".
 */
const RESERVED = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/iu;
const UNSAFE_CHARACTER = /[\p{Cc}\p{Cs}/\\<>:"|?*]/u;

/** Whether a name is one plain file name on every system, with no way to another folder. */
export const isBareName = (name: string): boolean =>
  name.length > 0 &&
  name.length <= MAX_CHARACTERS &&
  Buffer.byteLength(name) <= MAX_BYTES &&
  !UNSAFE_CHARACTER.test(name) &&
  !/^[. ]|[. ]$/u.test(name) &&
  !RESERVED.test(name);

/** The path of a bare name in a folder; null where the name is not bare. */
export const pathIn = (folder: string, name: string, ending: string): string | null =>
  isBareName(name) ? join(folder, `${name}${ending}`) : null;

/** A bare name in plain letters, figures and hyphens that reminds of a title. */
export const bareNameFrom = (title: string): string => {
  const slug = title
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['’]/gu, "")
    .replace(/[^a-z0-9]+/gu, "-")
    .replace(/^-+/u, "")
    .slice(0, SLUG_CHARACTERS)
    .replace(/-+$/u, "");
  if (slug === "") {
    return "song";
  }
  return isBareName(slug) ? slug : `song-${slug}`;
};
