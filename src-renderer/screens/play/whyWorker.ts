import { chartToScore, whyHere } from "../../../src-shared/chartToScore.ts";
import type { WhyAnswer, WhyQuestion } from "./whyQuestion.ts";

// Weighs other places beside the screen, so that neither picture nor sound waits for it.
self.addEventListener("message", ({ data }: MessageEvent<WhyQuestion>) => {
  const walk = chartToScore(data.text, data.plan, data.playTempo);
  self.postMessage((whyHere(walk, data.placement)?.elsewhere ?? []) satisfies WhyAnswer);
});
