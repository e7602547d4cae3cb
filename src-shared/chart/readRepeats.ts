import type { Diagnostic } from "../diagnostic.ts";
import { words } from "../wordTable.ts";
import type { Boundary, SectionLayout } from "./layout.ts";
import type { DraftSection } from "./readBody.ts";
import { MAX_PLAYS } from "./readEndings.ts";
import { type RepeatGroup, repeatGroup } from "./repeatGroup.ts";
import type { Bar } from "./song.ts";
import { errorAt } from "./spot.ts";

type OpenBar = { -readonly [Name in keyof Bar]: Bar[Name] };

const capped = (plays: number): number => Math.min(plays, MAX_PLAYS);

const checkEndings = (section: SectionLayout, group: RepeatGroup): readonly Diagnostic[] => {
  const notes: Diagnostic[] = [];
  const taken = new Set<number>();
  for (const { passes, from } of group.endings) {
    const spot = section.bars[from]?.ending?.spot;
    const twice = passes.find((pass) => taken.has(pass));
    if (twice !== undefined && spot !== undefined) {
      notes.push(
        errorAt(
          spot,
          "bad-ending",
          words.notes.ending.twice(twice),
          words.notes.ending.twiceTry(Math.max(...taken) + 1),
        ),
      );
    }
    for (const pass of passes) taken.add(pass);
  }
  const missing = Array.from({ length: group.plays }, (_, at) => at + 1).find(
    (pass) => !taken.has(pass),
  );
  const last = section.bars[group.endings.at(-1)?.from ?? -1]?.ending?.spot;
  if (missing !== undefined && last !== undefined) {
    notes.push(
      errorAt(
        last,
        "bad-ending",
        words.notes.ending.missing(missing),
        words.notes.ending.missingTry(missing),
      ),
    );
  }
  return notes;
};

/** Repeats that nothing closes, endings that belong to no repeat, passes without an ending. */
const checkGroups = (section: SectionLayout, bars: readonly Bar[]): readonly Diagnostic[] => {
  const notes: Diagnostic[] = [];
  let reached = 0;
  for (const [at, bar] of bars.entries()) {
    const group = bar.opensRepeat ? repeatGroup(bars, at) : null;
    const opened = section.boundaries[at];
    if (group !== null) {
      reached = group.to;
      for (const note of checkEndings(section, group)) notes.push(note);
    } else if (bar.opensRepeat && opened !== undefined) {
      notes.push(
        errorAt(opened.spot, "open-repeat", words.notes.repeat.open, words.notes.repeat.openTry),
      );
    }
    const spot = section.bars[at]?.ending?.spot;
    if (spot !== undefined && at >= reached) {
      notes.push(
        errorAt(spot, "bad-ending", words.notes.ending.alone, words.notes.ending.aloneTry),
      );
    }
  }
  return notes;
};

/**
 * Settles a section's repeats. ":|" without a start goes back to the last repeat end or double bar,
 * else to the section's start; the bar it goes back to then opens the repeat. An ending stops at a
 * repeat end, a double bar or the next repeat's start.
 */
export const readRepeats = ({
  layout: section,
  stays,
}: DraftSection): { readonly bars: readonly Bar[]; readonly notes: readonly Diagnostic[] } => {
  const notes: Diagnostic[] = [];
  const bars: OpenBar[] = section.bars.map((bar, at) => ({
    stays: stays[at] ?? [],
    opensRepeat: false,
    plays: 1,
    ending: bar.ending?.passes ?? null,
    endsEnding: false,
  }));
  let open: { readonly at: number; readonly plays: number } | null = null;
  /** Where ":|" goes back to when nothing is open. */
  let back = 0;
  let inEnding = false;

  const checkPlays = (boundary: Boundary): void => {
    if (Math.max(boundary.closes, boundary.opens) <= MAX_PLAYS) return;
    notes.push(
      errorAt(
        boundary.spot,
        "too-many-plays",
        words.notes.repeat.plays(MAX_PLAYS),
        words.notes.repeat.playsTry,
      ),
    );
  };
  const stopEnding = (at: number): void => {
    const last = bars[at - 1];
    if (inEnding && last !== undefined) last.endsEnding = true;
    inEnding = false;
  };
  const closeRepeat = (boundary: Boundary, at: number): void => {
    const last = bars[at - 1];
    if (last === undefined) {
      notes.push(
        errorAt(boundary.spot, "no-repeat", words.notes.repeat.first, words.notes.repeat.firstTry),
      );
      return;
    }
    const start = bars[open?.at ?? back];
    if (start !== undefined) start.opensRepeat = true;
    last.plays = capped(Math.max(boundary.closes, open?.plays ?? 1));
    const goesOn = inEnding && boundary.opens === 1 && (bars[at]?.ending ?? null) !== null;
    inEnding = false;
    if (goesOn) return;
    open = null;
    back = at;
  };

  for (const [at, boundary] of section.boundaries.entries()) {
    checkPlays(boundary);
    if (boundary.closes > 1) closeRepeat(boundary, at);
    const bar = bars[at];
    if (boundary.opens > 1 || (boundary.double && boundary.closes === 1)) {
      const wasInEnding: boolean = inEnding;
      stopEnding(at);
      const endingFollows = bar?.ending != null && boundary.opens === 1;
      if (wasInEnding && !endingFollows) {
        open = null;
        back = at;
      }
      if (open === null && boundary.opens === 1 && !endingFollows) back = at;
    }
    if (boundary.opens > 1) {
      open = { at, plays: capped(boundary.opens) };
      if (bar !== undefined) bar.opensRepeat = true;
      else {
        notes.push(
          errorAt(
            boundary.spot,
            "open-repeat",
            words.notes.repeat.late,
            words.notes.repeat.lateTry,
          ),
        );
      }
    }
    if (bar !== undefined && bar.ending !== null) {
      stopEnding(at);
      inEnding = true;
    }
  }
  return { bars, notes: [...notes, ...checkGroups(section, bars)] };
};
