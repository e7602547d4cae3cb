import { hasErrors } from "../../src-shared/diagnostic.ts";
import type { OpenSong } from "./openSong.svelte.ts";

/** Where in the program one is. */
export type Place =
  | { readonly kind: "songbook" }
  | { readonly kind: "jam" }
  | { readonly kind: "progress" }
  | { readonly kind: "chart"; readonly id: string }
  | { readonly kind: "play"; readonly id: string }
  | { readonly kind: "rehearse"; readonly id: string }
  | { readonly kind: "exercises" };

/** The songbook, where one starts. */
export const songbookPlace: Place = { kind: "songbook" };

/** Where changes are called without a song. */
export const jamPlace: Place = { kind: "jam" };

/** Where one practises without a song. */
export const exercisesPlace: Place = { kind: "exercises" };

/** The places of a song, in the order in which they are shown. */
export const songPlaces = ["chart", "play", "rehearse"] as const;
/** Where one sees what was practised. */
export const progressPlace: Place = { kind: "progress" };

/** A place as the address carries it. */
export const hashOf = (place: Place): string =>
  "id" in place ? `#/${place.kind}/${encodeURIComponent(place.id)}` : `#/${place.kind}`;

/** The place an address names; one that names none is the songbook. */
export const placeOf = (hash: string): Place => {
  const found = [jamPlace, progressPlace, exercisesPlace].find((place) => hashOf(place) === hash);
  if (found) return found;
  const [, named, coded] = /^#\/(\w+)\/([^/]+)$/.exec(hash) ?? [];
  const kind = songPlaces.find((each) => each === named);
  if (kind === undefined || coded === undefined) return songbookPlace;
  // Unlike decodeURIComponent, this throws at no address that a hand may have typed.
  const id = new URLSearchParams(`id=${coded}`).get("id");
  return id ? { kind, id } : songbookPlace;
};

/** Where a song that is opened is shown first: Play, unless its chart has to be mended or begun. */
export const bestPlace = ({ id, walk }: OpenSong): Place => ({
  kind: walk.timeline.bars.length > 0 && !hasErrors(walk.notes) ? "play" : "chart",
  id,
});
