import { eighthsIn } from "../chart/pulse.ts";
import { plainHeader } from "../chart/readHeader.ts";
import type { Bar, Meter, Song, Stay } from "../chart/song.ts";
import { chordOnDegree, degreeSymbol } from "../harmony/degree.ts";
import type { Key } from "../harmony/key.ts";
import type { Bpm } from "../units.ts";
import { type Call, type Calls, calledAt } from "./call.ts";

/** What a jam is agreed on before it starts. */
export type JamSetting = {
  readonly key: Key;
  readonly meter: Meter;
  /** Beats of the meter's unit a minute. */
  readonly tempo: Bpm;
};

const stayOf = (call: Call, { key, meter }: JamSetting): Stay => ({
  symbol: call === null ? "N.C." : degreeSymbol(call),
  chord: call === null ? null : chordOnDegree(call, key),
  eighths: eighthsIn(meter),
});

/**
 * The bars from `from` up to `to` (not included) as a song: each holds what was called for it, bars
 * before the first call are silent. Written by degree, so that it can be played in any key.
 */
export const calledSong = (
  calls: Calls,
  setting: JamSetting,
  title: string,
  from: number,
  to: number,
): Song => {
  const bars = Array.from({ length: Math.max(0, to - from) }, (_, index): Bar => {
    const call = calledAt(calls, from + index)?.call ?? null;
    const plain = { opensRepeat: false, plays: 1, ending: null, endsEnding: false };
    return { ...plain, stays: [stayOf(call, setting)] };
  });
  const { capo, tuning } = plainHeader;
  return { title, ...setting, capo, tuning, form: null, sections: [{ label: null, bars }] };
};
