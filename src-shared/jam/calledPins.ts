import { chordOnDegree } from "../harmony/degree.ts";
import type { Key } from "../harmony/key.ts";
import type { Neck } from "../neck/neck.ts";
import { type NearestRequest, nearestOf } from "../route/nextPlacement.ts";
import type { Pin } from "../route/pins.ts";
import { allowedVoicings, usualVoicings } from "../route/problem.ts";
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
  const known = new Map<string, readonly Voicing[]>();
  let hand: Voicing | null = null;
  const pins: Pin[] = [];
  for (const { bar, call } of calls) {
    if (call === null) continue;
    const chord = chordOnDegree(call, key);
    const voicings = known.get(chord.name) ?? usualVoicings(allowedVoicings(chord, neck, request));
    known.set(chord.name, voicings);
    const placed: Voicing | null = nearestOf(hand, voicings, request.range);
    if (placed === null) continue;
    hand = placed;
    const place = { bar, eighth: 0, time: null, chord: chord.name };
    pins.push({ kind: "hold", ...place, frets: placed.frets });
  }
  return pins;
};
