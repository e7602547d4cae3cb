import type { FoundRow, Progress, SourceFile } from "../../parts/foundSongs.ts";

/** What the reader beside the screen has to say. */
export type ReadingMessage =
  | { readonly kind: "progress"; readonly progress: Progress }
  | { readonly kind: "done"; readonly rows: readonly FoundRow[] };

/** Looks for songs in files; aborted, it ends with the signal's reason. */
export type ReadFiles = (
  files: readonly SourceFile[],
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
) => Promise<readonly FoundRow[]>;
