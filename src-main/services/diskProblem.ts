import type { Problem } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";

type SystemError = Error & { readonly code: string; readonly path?: string };

/** Whether an error came from the system (a failed call), and not from our own code. */
export const isSystemError = (error: unknown): error is SystemError =>
  error instanceof Error && "syscall" in error && "code" in error && typeof error.code === "string";

const FREE_SPACE = words.disk.freeSpace;
const LOOK_AT_FOLDER = words.disk.lookAtFolder;

/** A failed system call in words for the player. */
export const diskProblem = (error: SystemError): Problem => {
  const where = error.path === undefined ? words.disk.folder : error.path;
  switch (error.code) {
    case "ENOSPC":
    case "EDQUOT":
      return { code: "disk", says: words.disk.full, try: FREE_SPACE };
    case "EACCES":
    case "EPERM":
      return { code: "disk", says: words.disk.refused(where), try: LOOK_AT_FOLDER };
    case "EROFS":
      return {
        code: "disk",
        says: words.disk.readOnly(where),
        try: words.disk.readOnlyTry,
      };
    case "ENOTDIR":
    case "EEXIST":
    case "EISDIR":
      return { code: "disk", says: words.disk.notAsItShould(where), try: LOOK_AT_FOLDER };
    case "ENOENT":
      return {
        code: "disk",
        says: words.disk.gone(where),
        try: words.disk.goneTry,
      };
    default:
      return {
        code: "disk",
        says: words.disk.failed(where, error.code),
        try: words.disk.failedTry,
      };
  }
};
