import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import { exerciseChart, readExercise } from "../../../src-shared/practice/exercises.ts";
import { atTempo } from "../../../src-shared/practice/planned.ts";
import type { Item } from "../../../src-shared/practice/practice.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import type { Tick } from "../../../src-shared/units.ts";
import { sayExercise } from "../../../src-shared/wording/sayPractice.ts";

/** The song that is rehearsed; its walk is null where there is nothing in it to rehearse. */
export type RehearsedSong = { readonly id: string; readonly walk: Walk | null };

/** A song at its own tempo, which is the goal; a song without chords has nothing to rehearse. */
export const songToRehearse = (walk: Walk): Walk | null =>
  walk.route && walk.route.placements.length > 0 ? atTempo(walk, walk.song.tempo) : null;

/** An exercise by its name, as a song; null where the name is none. */
export const exerciseToRehearse = (name: string): Walk | null => {
  const exercise = readExercise(name);
  if (!exercise) return null;
  const { text, shapes } = exerciseChart(exercise, sayExercise(exercise));
  const { plan, picking } = newSongSettings;
  return chartToScore(text, { ...plan, shapes }, null, picking);
};

/** Where in a drill its change has come: the second chord of a change, the middle of all else. */
export const middleOfDrill = ({ route, timeline }: Walk, item: Item): Tick | number => {
  const second = item.kind === "change" ? route?.placements[1]?.start : undefined;
  return second ?? timeline.length / 2;
};
