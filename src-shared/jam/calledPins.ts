import { chordOnDegree } from "../harmony/degree.ts";
import type { Key } from "../harmony/key.ts";
import type { Neck } from "../neck/neck.ts";
import { type NearestRequest, nearestPlacement } from "../route/nextPlacement.ts";
import type { Pin } from "../route/pins.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Calls } from "./call.ts";

/**
 * Pins that hold each called chord in the placement nearest to the one before. A hand cannot know
 * what will be called next, and where it has been it stays: a later call moves none of them.
 */
export const calledPins = (
  calls: Calls,
  key: Key,
  neck: Neck,
  request: NearestRequest,
): readonly Pin[] => {
  let hand: Voicing | null = null;
  const pins: Pin[] = [];
  for (const { bar, call } of calls) {
    if (call === null) continue;
    const chord = chordOnDegree(call, key);
    const placed: Voicing | null = nearestPlacement(hand, chord, neck, request);
    if (placed === null) continue;
    hand = placed;
    const place = { bar, eighth: 0, time: null, chord: chord.name };
    pins.push({ kind: "hold", ...place, frets: placed.frets });
  }
  return pins;
};
