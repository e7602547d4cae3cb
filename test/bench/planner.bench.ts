import { DirectedGraph } from "graphology";
import dijkstra from "graphology-shortest-path/dijkstra.js";
import { test } from "vitest";
import { readChart } from "../../src-shared/chart/readChart.ts";
import { unfold } from "../../src-shared/chart/unfold.ts";
import { chartToScore, otherRoutes } from "../../src-shared/chartToScore.ts";
import { neckFor } from "../../src-shared/neck/neckFor.ts";
import { tunings } from "../../src-shared/neck/tuningTable.ts";
import { plainPicking } from "../../src-shared/roll/picking.ts";
import { handTable } from "../../src-shared/route/handTable.ts";
import { planRoute } from "../../src-shared/route/planRoute.ts";
import { type PlanRequest, problemOf } from "../../src-shared/route/problem.ts";
import { solve } from "../../src-shared/route/solve.ts";
import { aims, wholeNeckPlan } from "../../src-shared/settings.ts";
import { fret, milliseconds } from "../../src-shared/units.ts";
import { type Figure, type Goal, tellFigures } from "./figures.ts";

const neck = neckFor(tunings[0], fret(0));
const request: PlanRequest = {
  aim: "ease",
  shapes: ["F", "D", "barre"],
  range: { low: fret(1), high: fret(22) },
  strings: "3-2-1",
  goesRound: false,
  perChord: 1,
  hand: handTable.default,
  eighth: milliseconds(150),
  alike: false,
  pins: [],
  picking: plainPicking,
  patterns: [],
};

const turn = ["G", "Em", "C", "D7", "G", "G7", "C", "Am", "Bm", "E7", "Am7", "D7"];
const chartOf = (bars: number): string =>
  `| ${Array.from({ length: bars }, (_, bar) => turn[bar % turn.length]).join(" | ")} |`;

/** Chords that come back after one other, as variety looks for. */
const backAndForth = (bars: number): string => {
  const chords = ["G", "C", "G", "D7", "G", "C", "Am", "C", "D7", "G", "D7", "G"];
  return `| ${Array.from({ length: bars }, (_, bar) => chords[bar % chords.length]).join(" | ")} |`;
};

/** The median of several runs, in ms, after one to warm up. */
const median = (runs: number, work: () => unknown): number => {
  work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.toSorted((a, b) => a - b)[Math.floor(runs / 2)] ?? Number.NaN;
};

const FRAME_MS = 1000 / 60;
const FRAME = "a frame of 60 Hz";
const figures: Figure[] = [];
const say = (figure: string, value: number, unit: string, goal: Goal, peer: string) =>
  figures.push({ area: "planner", figure, value, unit, goal, peer });

/** Every aim's five best routes that really differ, from charts that are read already. */
const fiveByEveryAim = (song: string, goesRound: boolean): (() => unknown) => {
  const walks = aims.map((aim) => chartToScore(song, { ...wholeNeckPlan, aim, goesRound }, null));
  return () => walks.map((walk) => otherRoutes(walk, 5));
};

test("planner", () => {
  const song = chartOf(64);
  const all = fiveByEveryAim(song, false);
  const start = performance.now();
  all();
  const atFirst = performance.now() - start;
  for (const aim of aims) {
    const alone = median(7, () => chartToScore(song, { ...wholeNeckPlan, aim }, null));
    const walk = chartToScore(song, { ...wholeNeckPlan, aim }, null);
    const five = median(7, () => otherRoutes(walk, 5));
    say(`64 bars, ${aim}: whole way / frame`, alone / FRAME_MS, "", { below: 1 }, FRAME);
    say(`64 bars, ${aim}: 5 routes / frame`, five / FRAME_MS, "", null, FRAME);
  }
  const frames = (work: () => unknown): number => median(25, work) / FRAME_MS;
  say("64 bars, all aims, 5 routes each / frame", frames(all), "", { below: 1 }, FRAME);
  say("the same, going round", frames(fiveByEveryAim(song, true)), "", null, FRAME);
  say("the same, back and forth", frames(fiveByEveryAim(backAndForth(64), false)), "", null, FRAME);
  say("the same, the very first time", atFirst / FRAME_MS, "", null, FRAME);

  const counts = [2500, 5000, 10_000];
  const times = counts.map((bars) => {
    const timeline = unfold(readChart(chartOf(bars)).value);
    return median(3, () => planRoute(timeline, neck, request));
  });
  const exponent =
    Math.log((times[2] ?? 0) / (times[0] ?? 1)) / Math.log((counts[2] ?? 0) / (counts[0] ?? 1));
  say("10,000 bars: exponent of time over bars", exponent, "", { about: 1 }, "linear growth");

  const timeline = unfold(readChart(chartOf(10_000)).value);
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const plan = planRoute(timeline, neck, request);
  const grown = (process.memoryUsage().heapUsed - before) / 2 ** 20;
  say("10,000 bars: memory taken by planning", grown, "MB", { below: 100 }, "");

  const problem = problemOf(unfold(readChart(chartOf(512)).value), neck, request);
  const costs = problem.criteria[0]?.costs;
  const graph = new DirectedGraph();
  graph.addNode("start");
  graph.addNode("end");
  for (const [layer, voicings] of problem.voicings.entries()) {
    for (const state of voicings.keys()) {
      graph.addNode(`${layer}/${state}`);
    }
  }
  const last = problem.slots.length - 1;
  for (const [layer, voicings] of problem.voicings.entries()) {
    for (const state of voicings.keys()) {
      const node = `${layer}/${state}`;
      if (layer === 0) graph.addEdge("start", node, { weight: 0 });
      if (layer === last) graph.addEdge(node, "end", { weight: 0 });
      else {
        const row = costs?.(layer);
        const width = problem.voicings[layer + 1]?.length ?? 0;
        for (let next = 0; next < width; next += 1) {
          graph.addEdge(node, `${layer + 1}/${next}`, { weight: row?.[state * width + next] });
        }
      }
    }
  }
  const ours = median(9, () => solve(problem, request));
  const theirs = median(5, () => dijkstra.bidirectional(graph, "start", "end", "weight"));
  say(
    "512 bars: general library / ours, time",
    theirs / ours,
    "",
    { atLeast: 20 },
    "graphology's Dijkstra",
  );
  if (plan.kind !== "route") throw new Error("the bench's song has no route");
  tellFigures(figures);
});
