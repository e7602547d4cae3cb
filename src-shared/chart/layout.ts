import type { Diagnostic } from "../diagnostic.ts";
import { words as wordTable } from "../wordTable.ts";
import { readPasses } from "./readEndings.ts";
import { errorAt, type Spot } from "./spot.ts";
import type { BarLine, EndingToken, LabelToken, StrayToken, Token, WordToken } from "./tokens.ts";

/** A written bar's words, not yet read. */
export type BarWords = {
  /** At least one. */
  readonly words: readonly WordToken[];
  /** The bar line that ends it, or its last word where the line ends it. */
  readonly end: Spot;
  readonly ending: { readonly passes: readonly number[]; readonly spot: Spot } | null;
};

/** What stands between two bars: all their bar lines taken together. */
export type Boundary = Pick<BarLine, "closes" | "opens" | "double"> & { readonly spot: Spot };

/** A section as laid out. `boundaries` has one more than `bars`: left of each, and the last's right. */
export type SectionLayout = {
  readonly label: { readonly name: string; readonly spot: Spot } | null;
  readonly bars: readonly BarWords[];
  readonly boundaries: readonly Boundary[];
};

type OpenSection = {
  readonly label: SectionLayout["label"];
  readonly bars: BarWords[];
  readonly boundaries: Boundary[];
};

const MAX_LABEL = 32;

const bare = ({ offset, length, line, column }: Spot): Spot => ({ offset, length, line, column });

const plainAt = (spot: Spot): Boundary => ({ closes: 1, opens: 1, double: false, spot });

const isPlain = (one: Pick<BarLine, "closes" | "opens" | "double">): boolean =>
  one.closes === 1 && one.opens === 1 && !one.double;

const joined = (known: Boundary, token: BarLine): Boundary => ({
  closes: Math.max(known.closes, token.closes),
  opens: Math.max(known.opens, token.opens),
  double: known.double || token.double,
  spot: isPlain(known) ? bare(token) : known.spot,
});

const labelOf = (
  token: LabelToken,
): { readonly name: string; readonly note: Diagnostic | null } => {
  const name = token.name
    .replace(/[^\p{L}\d]+/gu, "-")
    .slice(0, MAX_LABEL)
    .replace(/-$/, "");
  const advice = wordTable.notes.label.try(name);
  if (!token.closed) {
    const says = wordTable.notes.label.open;
    return { name, note: errorAt(token, "bad-label", says, advice) };
  }
  // White space within a label is taken for a hyphen, as many would write "Verse 1".
  if (name === token.name.replace(/\s+/g, "-")) return { name, note: null };
  const says = wordTable.notes.label.says(MAX_LABEL);
  return { name, note: errorAt(token, "bad-label", says, advice) };
};

const noteStray = (token: StrayToken): Diagnostic =>
  errorAt(
    token,
    "stray-mark",
    wordTable.notes.stray.says(token.text),
    token.text === ":" ? wordTable.notes.stray.repeat : wordTable.notes.stray.bracket,
  );

/** Lays tokens out as sections and bars. A section without a label comes first where there is one. */
export const layOut = (
  tokens: readonly Token[],
): { readonly sections: readonly SectionLayout[]; readonly notes: readonly Diagnostic[] } => {
  const notes: Diagnostic[] = [];
  let section: OpenSection = { label: null, bars: [], boundaries: [] };
  const sections: OpenSection[] = [section];
  let words: WordToken[] = [];
  let ending: BarWords["ending"] = null;
  let boundary: Boundary | null = null;
  /** The token before, where that is a bar line of the same line. */
  let lineBefore: BarLine | null = null;

  const closeBar = (end: Spot): void => {
    const first = words[0];
    const last = words.at(-1);
    if (first === undefined || last === undefined) return;
    section.boundaries.push(boundary ?? plainAt(bare(first)));
    section.bars.push({ words, ending, end: bare(end.length > 0 ? end : last) });
    words = [];
    ending = null;
    boundary = null;
  };
  const dropEnding = (): void => {
    if (ending === null) return;
    const says = wordTable.notes.ending.empty;
    notes.push(errorAt(ending.spot, "bad-ending", says, wordTable.notes.ending.emptyTry));
    ending = null;
  };
  const checkEmpty = (token: BarLine): void => {
    if (lineBefore === null || !isPlain(token) || !isPlain(lineBefore)) return;
    const length = token.offset + token.length - lineBefore.offset;
    notes.push(
      errorAt(
        { ...lineBefore, length },
        "empty-bar",
        wordTable.notes.emptyBar.says,
        wordTable.notes.emptyBar.try,
      ),
    );
  };
  const takeBarLine = (token: BarLine): void => {
    checkEmpty(token);
    closeBar(token);
    dropEnding();
    boundary = joined(boundary ?? plainAt(bare(token)), token);
  };
  const closeSection = (spot: Spot): void => {
    closeBar(spot);
    dropEnding();
    section.boundaries.push(boundary ?? plainAt(bare(spot)));
    boundary = null;
  };
  const takeLabel = (token: LabelToken): void => {
    closeSection(token);
    const { name, note } = labelOf(token);
    if (note !== null) notes.push(note);
    section = { label: { name, spot: bare(token) }, bars: [], boundaries: [] };
    sections.push(section);
  };
  const takeEnding = (token: EndingToken): void => {
    if (words.length > 0) {
      const says = wordTable.notes.ending.place;
      notes.push(
        errorAt(token, "bad-ending", says, wordTable.notes.ending.placeTry(token.text.slice(0, 8))),
      );
    }
    closeBar(token);
    dropEnding();
    const reading = readPasses(token);
    notes.push(...reading.notes);
    ending = { passes: reading.passes, spot: bare(token) };
  };

  let end: Spot = { offset: 0, length: 0, line: 1, column: 1 };
  for (const token of tokens) {
    end = token;
    if (token.kind === "word") words.push(token);
    else if (token.kind === "barLine") takeBarLine(token);
    else if (token.kind === "ending") takeEnding(token);
    else if (token.kind === "label") takeLabel(token);
    else if (token.kind === "stray") notes.push(noteStray(token));
    else closeBar(token);
    lineBefore = token.kind === "barLine" ? token : null;
  }
  closeSection(end);
  return {
    sections: sections.filter(({ label, bars }) => label !== null || bars.length > 0),
    notes,
  };
};
