import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writeLogCsv } from "../../../src-shared/wording/writeLogCsv.ts";
import { loggedRound } from "../../laws/loggedRound.ts";

const iso = (atMs: number): string => new Date(atMs).toISOString();
// An independent reader, strict about RFC 4180: CRLF between records, quotes doubled.
const read = (csv: string): string[][] => parse(csv, { record_delimiter: "\r\n" });

describe("the log as a table", () => {
  test("has a line of headings and one for each round", () => {
    expect(read(writeLogCsv([loggedRound("one")], iso))).toEqual([
      ["When (UTC)", "Song", "What", "Stage", "Tempo", "Tempo counts", "Mark", "Seconds"],
      [
        "2026-05-11T18:30:00.000Z",
        "Ferry Gäte “№ 7” 🪕",
        "G at 3 to C♯m at 9",
        "Up to tempo",
        "92",
        "half notes",
        "Clean",
        "10.5",
      ],
    ]);
  });

  test.each(["=1+1", "+1", "-1", "@x", "\tx"])(
    "gives a spreadsheet no formula to run: %j",
    (title) => {
      const csv = writeLogCsv([loggedRound("one", {}, { id: "x", title })], iso);
      expect(read(csv)[1]?.[1]).toBe(`'${title}`);
    },
  );

  test("keeps every title as it is, whatever stands in it", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "binary" }), { minLength: 1 }), (titles) => {
        const log = titles.map((title, id) => loggedRound(`${id}`, {}, { id: "x", title }));
        const rows = read(writeLogCsv(log, iso));
        const kept = rows.slice(1).map((row) => (row[1] ?? "").replace(/^'(?=[=+\-@\t\r])/, ""));
        expect(kept).toEqual(titles);
      }),
    );
  });
});
