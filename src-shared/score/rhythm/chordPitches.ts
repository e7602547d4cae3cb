import type { Chord } from "../../harmony/chord.ts";
import { pitchClassOf } from "../../harmony/noteName.ts";
import { type Midi, midi } from "../../units.ts";

/** The bass plays within this octave: E1, the lowest string of a double bass, to D#2. */
export const BASS_LOW = 28;
/** The chop's lowest tone lies within the octave from G3 on, as on a mandolin's lower strings. */
const CHOP_LOW = 55;
/** The guitar strums from its D string, D3, on. */
const STRUM_LOW = 50;

const atOrAbove = (low: number, pitchClass: number): number =>
  low + ((pitchClass - (low % 12) + 12) % 12);

const upFrom = (low: number, chord: Chord): readonly Midi[] =>
  chord.tones.map((tone) => midi(atOrAbove(low, tone.pitchClass))).toSorted((a, b) => a - b);

const rootClassOf = (chord: Chord): number => chord.tones[0]?.pitchClass ?? 0;

/** The bass's first note of a chord: its root, or the tone after its slash. */
export const bassRoot = (chord: Chord): Midi =>
  midi(atOrAbove(BASS_LOW, chord.bass === null ? rootClassOf(chord) : pitchClassOf(chord.bass)));

/** The bass's other note of a chord: its fifth; the root where the bass stands on the fifth. */
export const bassFifth = (chord: Chord): Midi => {
  const root = midi(atOrAbove(BASS_LOW, rootClassOf(chord)));
  const fifth = chord.tones.find((tone) => tone.role === "fifth")?.pitchClass;
  const pitch = fifth === undefined ? root : midi(atOrAbove(BASS_LOW, fifth));
  return pitch === bassRoot(chord) ? root : pitch;
};

/** The chop's pitches: every tone of the chord once, from G3 up. */
export const chopPitches = (chord: Chord): readonly Midi[] => upFrom(CHOP_LOW, chord);

/** The pitches of a strum: every tone from D3 up, the lowest one again an octave above. */
export const strumPitches = (chord: Chord): readonly Midi[] => {
  const tones = upFrom(STRUM_LOW, chord);
  return [...tones, ...tones.slice(0, 1).map((pitch) => midi(pitch + 12))];
};
