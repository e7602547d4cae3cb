import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Chord } from "../../../src-shared/harmony/chord.ts";
import { hasFlats, noteNameOf, pitchClassOf } from "../../../src-shared/harmony/noteName.ts";
import type { NeckLook } from "../../../src-shared/neck/neckLook.ts";
import { pitchAt } from "../../../src-shared/neck/pitchAt.ts";
import { everyPlace, placesOf } from "../../../src-shared/neck/placesOf.ts";
import type { Placement } from "../../../src-shared/route/route.ts";
import { type Fret, fret, TICKS_PER_EIGHTH } from "../../../src-shared/units.ts";
import type { ComingChange } from "../../geometry/comingChange.ts";
import type { Stop, Travel } from "../../geometry/fingerMoves.ts";
import type { Turn } from "../../geometry/handBlocks.ts";
import { leaveTick } from "../../geometry/laneGeometry.ts";
import type { NeckAids } from "../../geometry/neckAids.ts";
import type { NeckSide } from "../../geometry/neckLayout.ts";

/** Names the note at a place, in the song's key. */
const noteNamer = ({ neck, song }: Walk): ((stop: Stop) => string) => {
  const flat = hasFlats(song.key);
  return ({ string, fret: n }) => noteNameOf(pitchAt(neck, { string, fret: fret(n) }) % 12, flat);
};

const namedPlaces = (walk: Walk, chord: Chord | null): NeckAids["notes"] => {
  const nameOf = noteNamer(walk);
  const tones = new Set(chord?.tones.map(({ pitchClass }) => pitchClass));
  return everyPlace(walk.neck).map((place) => ({
    place,
    name: nameOf(place),
    inChord: tones.has(pitchAt(walk.neck, place) % 12),
  }));
};

/** How the neck lies on the screen. */
export const neckSideOf = ({ nut, seen }: NeckLook): NeckSide => ({
  nutRight: nut === "right",
  fifthOnTop: seen === "listener",
});

/** Every fret that the hand comes to in the song. */
export const fretsUsed = (walk: Walk): readonly Fret[] =>
  (walk.route?.placements ?? []).flatMap(({ voicing }) =>
    voicing.frets.filter((fret) => fret !== null),
  );

/** What a learner has asked to see for a chord; no roots where none is held. */
export const aidsFor = (walk: Walk, chord: Chord | null, look: NeckLook): NeckAids => ({
  roots: look.roots && chord ? placesOf(walk.neck, pitchClassOf(chord.root)) : [],
  notes: look.noteNames ? namedPlaces(walk, chord) : [],
});

/** What stands on a finger: its number, or with note names the name of its note. */
export const fingerSays = (
  walk: Walk,
  look: NeckLook,
): ((stop: Stop, finger: number) => string) => {
  if (!look.noteNames) return (_, finger) => String(finger);
  const nameOf = noteNamer(walk);
  return (stop) => nameOf(stop);
};

const legOf = (change: ComingChange, turn: Turn | null): Turn["leg"] | null =>
  change.leg ?? (change.loopsBack ? (turn?.leg ?? null) : null);

/** The change that a loop's end asks for, where that is what comes. */
const dueFrom = (
  current: Placement,
  change: ComingChange,
  turn: Turn | null,
  walk: Walk,
): number => {
  const leg = legOf(change, turn);
  const timing = { meter: walk.timeline.meter, tempo: walk.tempo };
  return leg
    ? leaveTick(current, change.due, leg, timing)
    : Math.max(current.start, change.due - TICKS_PER_EIGHTH);
};

/** When the hand is on its way to what comes next; null where it rests or stays. */
export const travelOf = (walk: Walk, change: ComingChange, turn: Turn | null): Travel | null => {
  const { current, next, due } = change;
  if (!current || !next) return null;
  const leaves = dueFrom(current, change, turn, walk);
  const rests = !change.loopsBack && current.start + current.length < next.start;
  return { leaves: rests ? Math.max(leaves, current.start + current.length) : leaves, due };
};
