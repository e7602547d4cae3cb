import { join } from "node:path";

/** The repository's folder. */
export const root = join(import.meta.dirname, "..", "..");
