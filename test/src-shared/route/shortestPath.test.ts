import { DirectedGraph } from "graphology";
import dijkstra from "graphology-shortest-path/dijkstra.js";
import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { demoSongTable } from "../../../src-shared/demo/demoSongTable.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tuningNamed, tunings } from "../../../src-shared/neck/tuningTable.ts";
import { problemOf } from "../../../src-shared/route/problem.ts";
import { solve } from "../../../src-shared/route/solve.ts";
import { plainRequest } from "../../laws/plainRequest.ts";

const request = plainRequest(22);

describe("a route through a whole song", () => {
  // graphology-shortest-path: Dijkstra's algorithm on a general graph.
  for (const demo of demoSongTable) {
    for (const aim of ["ease", "travel"] as const) {
      test(`of ${demo.id} by ${aim} costs what a general shortest-path library finds`, () => {
        const song = readChart(demo.text).value;
        const neck = neckFor(tuningNamed(song.tuning) ?? tunings[0], song.capo);
        const problem = problemOf(unfold(song), neck, { ...request, aim });
        const graph = new DirectedGraph();
        graph.addNode("start");
        graph.addNode("end");
        for (const [layer, voicings] of problem.voicings.entries()) {
          for (const state of voicings.keys()) {
            if (problem.layers.open(layer)[state]) {
              graph.addNode(`${layer}/${state}`);
            }
          }
        }
        const costs = problem.criteria[0]?.costs;
        const last = problem.slots.length - 1;
        for (const node of graph.nodes()) {
          const [layer = 0, state = 0] = node.split("/").map(Number);
          if (layer === 0 && node.includes("/")) {
            graph.addEdge("start", node, { weight: 0 });
          }
          if (layer === last && node.includes("/")) {
            graph.addEdge(node, "end", { weight: 0 });
          }
          if (node.includes("/") && layer < last) {
            const row = costs?.(layer);
            const width = problem.voicings[layer + 1]?.length ?? 0;
            for (let next = 0; next < width; next += 1) {
              if (graph.hasNode(`${layer + 1}/${next}`)) {
                graph.addEdge(node, `${layer + 1}/${next}`, {
                  weight: row?.[state * width + next],
                });
              }
            }
          }
        }
        const path = dijkstra.bidirectional(graph, "start", "end", "weight");
        const cost = path
          .slice(1)
          .reduce(
            (sum: number, node: string, index: number) =>
              sum + Number(graph.getEdgeAttribute(path[index], node, "weight")),
            0,
          );
        expect(solve(problem, { aim, alike: false })?.path.costs).toEqual([cost]);
      });
    }
  }
});
