import type { Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import { isBefore } from "./choosePath.ts";
import { routeOf } from "./planRoute.ts";
import { type PlanRequest, type Problem, problemOf } from "./problem.ts";
import type { Route } from "./route.ts";
import { type Solution, solve } from "./solve.ts";

/** For each chord, by its place among the song's chords: 1 for every state a solution holds it in. */
type Homes = readonly Uint8Array[];

/** A problem, and which of its chords each slot has. */
type Song = {
  readonly problem: Problem;
  readonly chordOf: readonly number[];
  readonly widths: readonly number[];
};

const songOf = (problem: Problem): Song => {
  const chords = new Map<string, number>();
  const widths: number[] = [];
  const chordOf = problem.slots.map((slot, layer) => {
    const known = chords.get(slot.chord.name);
    if (known !== undefined) {
      return known;
    }
    const fresh = chords.size;
    chords.set(slot.chord.name, fresh);
    widths.push(problem.layers.width(layer));
    return fresh;
  });
  return { problem, chordOf, widths };
};

const homesOf = ({ chordOf, widths }: Song, { path }: Solution): Homes => {
  const homes = widths.map((width) => new Uint8Array(width));
  for (const [layer, state] of path.choice.entries()) {
    const home = homes[chordOf[layer] ?? 0];
    if (home) {
      home[state] = 1;
    }
  }
  return homes;
};

/** Whether some chord is never held in the same voicing by both. */
const reallyDiffer = (a: Homes, b: Homes): boolean =>
  a.some((home, chord) => home.every((held, state) => !(held && b[chord]?.[state])));

/** For each route already found, the chord that must keep away from all of its voicings there. */
type Bans = readonly number[];

type Candidate = { readonly bans: Bans; readonly solution: Solution; readonly homes: Homes };

const underBans = (
  song: Song,
  request: PlanRequest,
  found: readonly Homes[],
  bans: Bans,
): Candidate | null => {
  const { problem, chordOf, widths } = song;
  const allowed = widths.map((width) => new Uint8Array(width).fill(1));
  for (const [route, chord] of bans.entries()) {
    for (const [state, held] of (found[route]?.[chord] ?? new Uint8Array()).entries()) {
      const own = allowed[chord];
      if (held && own) {
        own[state] = 0;
      }
    }
  }
  const open = chordOf.map((chord, layer) =>
    problem.layers.open(layer).map((is, state) => (is && allowed[chord]?.[state] ? 1 : 0)),
  );
  const part: Problem = {
    ...problem,
    layers: { ...problem.layers, open: (layer) => open[layer] ?? new Uint8Array() },
  };
  const solution = solve(part, request);
  return solution && { bans, solution, homes: homesOf(song, solution) };
};

/** The best solution that really differs from all found ones: best first over what to keep away. */
const nextBest = (song: Song, request: PlanRequest, found: readonly Homes[]): Candidate | null => {
  const open: Candidate[] = [];
  const offer = (bans: Bans): void => {
    const candidate = underBans(song, request, found, bans);
    if (candidate) {
      open.push(candidate);
    }
  };
  offer([]);
  while (open.length > 0) {
    const best = open.reduce((least, each) =>
      isBefore(each.solution.path, least.solution.path) ? each : least,
    );
    open.splice(open.indexOf(best), 1);
    if (found.every((homes) => reallyDiffer(homes, best.homes))) {
      return best;
    }
    for (const chord of song.widths.keys()) {
      offer([...best.bans, chord]);
    }
  }
  return null;
};

/**
 * The best routes that really differ, the best one first, at most `count` of them: of any two there
 * is a chord that they never hold in the same voicing, so that a single repeat moved makes no new
 * route. They are the first such ones in the order of all routes by the aim. Empty where there is no
 * route at all.
 */
export const alternatives = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  request: PlanRequest,
  count: number,
): readonly Route[] => {
  const song = songOf(problemOf(timeline, neck, request));
  const found: Candidate[] = [];
  while (found.length < count && song.problem.slots.length > 0) {
    const next = nextBest(
      song,
      request,
      found.map(({ homes }) => homes),
    );
    if (!next) {
      break;
    }
    found.push(next);
  }
  return found.map(({ solution }) => routeOf(song.problem, solution, timeline, neck, request));
};
