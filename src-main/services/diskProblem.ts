import type { Problem } from "../../src-shared/host.ts";

type SystemError = Error & { readonly code: string; readonly path?: string };

/** Whether an error came from the system (a failed call), and not from our own code. */
export const isSystemError = (error: unknown): error is SystemError =>
  error instanceof Error && "syscall" in error && "code" in error && typeof error.code === "string";

const FREE_SPACE = "Free some space, then try again. What was saved before is still there.";
const LOOK_AT_FOLDER = "See who may write there, or whether something else is in its place.";

/** A failed system call in words for the player. */
export const diskProblem = (error: SystemError): Problem => {
  const where = error.path === undefined ? "the songbook's folder" : error.path;
  switch (error.code) {
    case "ENOSPC":
    case "EDQUOT":
      return { code: "disk", says: "The disk is full.", try: FREE_SPACE };
    case "EACCES":
    case "EPERM":
      return { code: "disk", says: `The system refuses access to ${where}.`, try: LOOK_AT_FOLDER };
    case "EROFS":
      return {
        code: "disk",
        says: `${where} can only be read.`,
        try: "Make it writable, then try again.",
      };
    case "ENOTDIR":
    case "EEXIST":
    case "EISDIR":
      return { code: "disk", says: `${where} is not what it should be.`, try: LOOK_AT_FOLDER };
    case "ENOENT":
      return {
        code: "disk",
        says: `${where} is gone.`,
        try: "Something outside Shortslide moved it. Put it back, or try again.",
      };
    default:
      return {
        code: "disk",
        says: `The disk failed on ${where} (${error.code}).`,
        try: "Try again. If it stays, copy your charts to another disk.",
      };
  }
};
