import { chartToScore, otherRoutes } from "../../../src-shared/chartToScore.ts";
import { MOST_ROUTES, type RouteFinds, type RouteQuestion } from "./routeQuestion.ts";

// Looks for other routes beside the screen, so that neither picture nor sound waits for it.
self.addEventListener("message", ({ data }: MessageEvent<RouteQuestion>) => {
  const { text, plan, playTempo, picking, patterns } = data;
  const walk = chartToScore(text, plan, playTempo, picking, patterns);
  // One more each time: the first are there long before the last.
  for (let count = 2; count <= MOST_ROUTES; count += 1) {
    const routes = otherRoutes(walk, count);
    const more = count < MOST_ROUTES && routes.length === count;
    self.postMessage({ routes, more } satisfies RouteFinds);
    if (!more) break;
  }
});
