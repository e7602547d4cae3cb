import { diffLines } from "diff";

/** A stretch of lines that is the same in both texts, or in one only. */
export type LineChange = {
  readonly kind: "same" | "back" | "away";
  readonly lines: readonly string[];
};

/** Two texts are compared line by line; further apart than this they are taken for wholly different. */
const MOST_CHANGES = 4_000;

const linesOf = (text: string): readonly string[] => text.replace(/\n$/u, "").split("\n");

/** What comes back and what goes away, line by line, when `now` becomes `then`. */
export const lineChanges = (now: string, then: string): readonly LineChange[] => {
  const parts = diffLines(now, then, { maxEditLength: MOST_CHANGES }) ?? [
    { added: false, removed: true, value: now },
    { added: true, removed: false, value: then },
  ];
  return parts
    .filter(({ value }) => value !== "")
    .map(({ added, removed, value }) => ({
      kind: added ? "back" : removed ? "away" : "same",
      lines: linesOf(value),
    }));
};

/** How many lines come back and how many go away. */
export const countChanges = (
  changes: readonly LineChange[],
): { readonly back: number; readonly away: number } => {
  const count = (kind: LineChange["kind"]): number =>
    changes.reduce((sum, change) => sum + (change.kind === kind ? change.lines.length : 0), 0);
  return { back: count("back"), away: count("away") };
};
