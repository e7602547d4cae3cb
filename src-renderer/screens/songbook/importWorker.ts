import { words } from "../../../src-shared/wordTable.ts";
import type { FoundRow, SourceFile } from "../../parts/foundSongs.ts";
import { foundRows } from "./foundRow.ts";
import type { ReadingMessage } from "./readingMessage.ts";

const say = (message: ReadingMessage): void => self.postMessage(message);

// Reads files beside the screen: a large or a harmful one holds nothing up, and can be ended.
self.addEventListener("message", ({ data: files }: MessageEvent<readonly SourceFile[]>) => {
  const rows: FoundRow[] = [];
  for (const [index, file] of files.entries()) {
    const at = (done: number, of: number): void => {
      const progress = {
        done: index + done / of,
        of: files.length,
        says: of > 1 ? words.found.tuneOf(file.name, done, of) : file.name,
      };
      say({ kind: "progress", progress });
    };
    at(0, 1);
    rows.push(...foundRows(file, at));
  }
  say({ kind: "done", rows });
});
