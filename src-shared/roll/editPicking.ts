import type { Manner, Picking, SectionPicking, StayPicking, Style } from "./picking.ts";

/** What stands before the name in a style of the player's own. */
const OWN = "own:";

/**
 * The name of the player's own pattern that a style is; null for a family.
 * @example ownNameOf("own:Tin gate") // => "Tin gate"
 */
export const ownNameOf = (style: Style): string | null =>
  style.startsWith(OWN) ? style.slice(OWN.length) : null;

/**
 * The style that is a pattern of the player's own.
 * @example ownStyle("Tin gate") // => "own:Tin gate"
 */
export const ownStyle = (name: string): Style => `own:${name}`;

/** How a section is played; the song's own manner, unsung, where nothing is set for it. */
export const sectionPickingOf = (picking: Picking, label: string): SectionPicking =>
  picking.sections.find((section) => section.label === label) ?? {
    label,
    manner: null,
    sung: false,
  };

/** The picking with a section played so; one played as the song is needs no entry. */
export const withSection = (picking: Picking, section: SectionPicking): Picking => {
  const others = picking.sections.filter(({ label }) => label !== section.label);
  const plain = section.manner === null && !section.sung;
  return { ...picking, sections: plain ? others : [...others, section] };
};

/** Where a chord starts, without which time it is played. */
export type StayPlace = Pick<StayPicking, "bar" | "eighth" | "chord">;

/** A chord's place and which time it is played, from 0. */
export type PlayedPlace = StayPlace & { readonly time: number };

const isAt = (stay: StayPicking, place: StayPlace): boolean =>
  stay.bar === place.bar && stay.eighth === place.eighth && stay.chord === place.chord;

/** What is set for a chord by itself: for this time first, else for every time; null where nothing is. */
export const stayPickingAt = (picking: Picking, place: PlayedPlace): StayPicking | null => {
  const own = picking.stays.filter((stay) => isAt(stay, place));
  return (
    own.find(({ time }) => time === place.time) ?? own.find(({ time }) => time === null) ?? null
  );
};

/**
 * The picking with a chord played in a manner of its own: this time, or every time, which takes the
 * place of what was set for single times.
 */
export const withStay = (
  picking: Picking,
  place: PlayedPlace,
  manner: Manner,
  every: boolean,
): Picking => {
  const { bar, eighth, chord } = place;
  const others = picking.stays.filter(
    (stay) => !isAt(stay, place) || !(every || stay.time === place.time),
  );
  const stay: StayPicking = { bar, eighth, time: every ? null : place.time, chord, manner };
  return { ...picking, stays: [...others, stay] };
};

/** The picking without what counts for a chord this time; set for every time, that is gone each time. */
export const withoutStay = (picking: Picking, place: PlayedPlace): Picking => {
  const own = stayPickingAt(picking, place);
  return { ...picking, stays: picking.stays.filter((stay) => stay !== own) };
};

/** The picking without the chords set by themselves that are not among these any more. */
export const withoutSleeping = (picking: Picking, places: readonly PlayedPlace[]): Picking => ({
  ...picking,
  stays: picking.stays.filter((stay) => !sleepsAmong(places)(stay)),
});

/** Whether what is set for a chord by itself speaks of none of these. */
export const sleepsAmong =
  (places: readonly PlayedPlace[]) =>
  (stay: StayPicking): boolean =>
    !places.some((place) => isAt(stay, place) && (stay.time === null || stay.time === place.time));

/** The picking with each style of one name under another, after a pattern has been named anew. */
export const withStyleRenamed = (picking: Picking, from: Style, to: Style): Picking => {
  const renamed = (manner: Manner): Manner =>
    manner.style === from ? { ...manner, style: to } : manner;
  return {
    ...picking,
    song: renamed(picking.song),
    sections: picking.sections.map((section) => ({
      ...section,
      manner: section.manner && renamed(section.manner),
    })),
    stays: picking.stays.map((stay) => ({ ...stay, manner: renamed(stay.manner) })),
  };
};

/** Whether the song uses a style anywhere. */
export const usesStyle = (picking: Picking, style: Style): boolean =>
  [
    picking.song,
    ...picking.sections.map(({ manner }) => manner),
    ...picking.stays.map(({ manner }) => manner),
  ].some((manner) => manner?.style === style);
