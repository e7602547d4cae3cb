import type { Meter, TimedBar, TimedStay, Timeline } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import { pitchClassOf } from "../harmony/noteName.ts";
import { type Midi, midi, TICKS_PER_QUARTER, type Tick, tick } from "../units.ts";
import type { Hit } from "./score.ts";
import { ticksPerBeat } from "./tempo.ts";

/** The bass plays within this octave: E1, the lowest string of a double bass, to D#2. */
const BASS_LOW = 28;
/** The chop's lowest tone lies within the octave from G3 on, as on a mandolin's lower strings. */
const CHOP_LOW = 55;

const atOrAbove = (low: number, pitchClass: number): number =>
  low + ((pitchClass - (low % 12) + 12) % 12);

const bassOf = (chord: Chord, role: "root" | "fifth"): Midi => {
  const root = chord.tones[0]?.pitchClass ?? 0;
  const fifth = chord.tones.find((tone) => tone.role === "fifth")?.pitchClass ?? root;
  const lowest = chord.bass === null ? root : pitchClassOf(chord.bass);
  return midi(atOrAbove(BASS_LOW, role === "root" ? lowest : fifth));
};

const chopOf = (chord: Chord): readonly Midi[] =>
  chord.tones.map((tone) => midi(atOrAbove(CHOP_LOW, tone.pitchClass))).toSorted((a, b) => a - b);

/** Beats (0-based) of the bar on which the bass and the chop play. */
const groove = (
  beats: number,
): { readonly bass: readonly number[]; readonly chop: readonly number[] } =>
  beats === 3
    ? { bass: [0], chop: [1, 2] }
    : {
        bass: [0, 2].filter((beat) => beat < beats),
        chop: [1, 3].filter((beat) => beat < beats),
      };

/** What the rhythm section counts: quarters, in 2/2 too; dotted quarters in 6/8. */
const stepOf = (meter: Meter): Tick =>
  meter.unit === 8 ? ticksPerBeat(meter) : tick(TICKS_PER_QUARTER);

const stayAt = (stays: readonly TimedStay[], from: number, at: number): number => {
  let index = from;
  while ((stays[index + 1]?.start ?? Number.POSITIVE_INFINITY) <= at) {
    index += 1;
  }
  return index;
};

/**
 * Bass and chop for the whole song. In 4/4 and 2/2 the bass plays on 1 and 3, the chop on 2 and 4;
 * in 2/4 on 1 and on 2; in 3/4 bass on 1, chop on 2 and 3; in 6/8 bass on the first dotted quarter, chop
 * on the second. The bass plays a chord's root (or the
 * tone after its slash) first, then its fifth and root in turn. N.C. is silent. Common practice, no
 * published source.
 */
export const rhythmSection = (timeline: Timeline): readonly Hit[] => {
  const hits: Hit[] = [];
  const step = stepOf(timeline.meter);
  let current = 0;
  let heard = -1;
  let onRoot = true;
  const playBar = (bar: TimedBar): void => {
    const beats = bar.length / step;
    const { bass, chop } = groove(beats);
    for (let beat = 0; beat < beats; beat += 1) {
      const at = tick(bar.start + beat * step);
      current = stayAt(timeline.stays, current, at);
      const chord = timeline.stays[current]?.chord;
      if (!chord) {
        continue;
      }
      if (bass.includes(beat)) {
        onRoot = heard === current ? !onRoot : true;
        heard = current;
        hits.push({
          part: "bass",
          tick: at,
          ticks: tick(step),
          pitches: [bassOf(chord, onRoot ? "root" : "fifth")],
          accent: beat === 0,
          level: 1,
        });
      }
      if (chop.includes(beat)) {
        hits.push({
          part: "chop",
          tick: at,
          ticks: tick(TICKS_PER_QUARTER / 4),
          pitches: chopOf(chord),
          accent: false,
          level: 1,
        });
      }
    }
  };
  for (const bar of timeline.bars) {
    playBar(bar);
  }
  return hits;
};
