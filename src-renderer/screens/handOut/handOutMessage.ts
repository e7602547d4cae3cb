import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import type { Hand } from "../../../src-shared/route/movement.ts";
import type { SongSettings } from "../../../src-shared/settings.ts";
import type { HandOutOptions } from "../../../src-shared/sheet/handOut.ts";
import type { Book } from "../../../src-shared/sheet/page.ts";
import type { FontFile } from "../../../src-shared/sheet/typefaces.ts";

/** A song to hand out: its chart and what is kept with it. */
export type HandOutSource = {
  readonly text: string;
  readonly settings: SongSettings;
  readonly patterns: readonly Pattern[];
  /** The hand that the player has accepted as theirs, or null. */
  readonly ownHand: Hand | null;
};

/** What the pages are made of. */
export type HandOutRequest = {
  readonly songs: readonly HandOutSource[];
  readonly options: HandOutOptions;
  /** Of the list of contents, where there are several songs. */
  readonly title: string;
};

/** What the worker is asked. */
export type HandOutQuestion = HandOutRequest & {
  readonly want: "pages" | "pdf";
  readonly fonts: readonly FontFile[];
  /** When it is made, in ms since 1970 (UTC). */
  readonly nowMs: number;
};

/** What the worker says. */
export type HandOutMessage =
  | { readonly kind: "pages"; readonly book: Book; readonly missing: readonly string[] }
  | { readonly kind: "progress"; readonly share: number }
  | { readonly kind: "pdf"; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: "failed"; readonly reason: string };
