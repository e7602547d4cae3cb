import { banjoWalk, otherRoutesInTurn } from "../../../src-shared/chartToScore.ts";
import type { Route } from "../../../src-shared/route/route.ts";
import { MOST_ROUTES, type RouteFinds, type RouteQuestion } from "./routeQuestion.ts";

const post = (finds: RouteFinds): void => self.postMessage(finds);

// Looks for other routes beside the screen, so that neither picture nor sound waits for it.
self.addEventListener("message", ({ data }: MessageEvent<RouteQuestion>) => {
  const { text, plan, playTempo, picking, patterns, ownHand } = data;
  const walk = banjoWalk(text, plan, playTempo, picking, patterns, ownHand);
  const routes: Route[] = [];
  for (const route of otherRoutesInTurn(walk)) {
    routes.push(route);
    if (routes.length === MOST_ROUTES) break;
    post({ routes, more: true });
  }
  post({ routes, more: false });
});
