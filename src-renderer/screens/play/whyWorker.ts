import { banjoWalk, whyHere } from "../../../src-shared/chartToScore.ts";
import type { WhyAnswer, WhyQuestion } from "./whyQuestion.ts";

// Weighs other places beside the screen, so that neither picture nor sound waits for it.
self.addEventListener("message", ({ data }: MessageEvent<WhyQuestion>) => {
  const { text, plan, playTempo, picking, patterns, ownHand } = data;
  const walk = banjoWalk(text, plan, playTempo, picking, patterns, ownHand);
  self.postMessage((whyHere(walk, data.placement)?.elsewhere ?? []) satisfies WhyAnswer);
});
