import { test } from "vitest";
import { printFigures, readFigures } from "./figures.ts";

test("the one table", () => {
  const file = process.env["BENCH_FIGURES"];
  if (file === undefined) throw new Error("npm run bench makes the one table");
  printFigures(readFigures(file));
});
