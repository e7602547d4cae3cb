import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fontTable } from "../../src-shared/sheet/fontTable.ts";
import type { FontFile } from "../../src-shared/sheet/typefaces.ts";

/** The bundled fonts, from the packages that have them. */
export const readFonts = (): readonly FontFile[] => {
  const { resolve } = createRequire(import.meta.url);
  return fontTable.map(({ name, file }) => ({ name, bytes: readFileSync(resolve(file)) }));
};
