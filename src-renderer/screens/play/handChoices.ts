import type { Walk } from "../../../src-shared/chartToScore.ts";
import { ownNameOf, ownStyle, type PlayedPlace } from "../../../src-shared/roll/editPicking.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { type Picking, type Style, styleNames } from "../../../src-shared/roll/picking.ts";
import { pieceAt } from "../../../src-shared/roll/played.ts";
import { pinPlaceOf } from "../../../src-shared/route/pins.ts";
import { TICKS_PER_EIGHTH } from "../../../src-shared/units.ts";
import { sayStyle } from "../../../src-shared/wording/sayPicking.ts";
import { words } from "../../../src-shared/wordTable.ts";

/** A style that can be chosen. */
export type StyleChoice = { readonly value: Style; readonly name: string; readonly says: string };

const stylesOf = ({ song, sections, stays }: Picking): readonly Style[] =>
  [song, ...sections.map(({ manner }) => manner), ...stays.map(({ manner }) => manner)].flatMap(
    (manner) => (manner ? [manner.style] : []),
  );

/**
 * The styles to choose from: the families, the player's own patterns that can be played, and those
 * that the song names but that are gone or still drafts.
 */
export const styleChoices = (
  picking: Picking,
  all: readonly Pattern[],
  playable: readonly Pattern[],
): readonly StyleChoice[] => {
  const named = [...new Set(stylesOf(picking))].flatMap((style) => ownNameOf(style) ?? []);
  const missing = named.filter((name) => !playable.some((pattern) => pattern.name === name));
  return [
    ...styleNames.map((value) => ({ value, ...sayStyle(value) })),
    ...playable.map(({ name, meter }) => ({
      value: ownStyle(name),
      name,
      says: words.hand.yourOwn(meter),
    })),
    ...missing.map((name) =>
      all.some((pattern) => pattern.name === name)
        ? { value: ownStyle(name), name: words.hand.draft(name), says: words.hand.draftSays }
        : { value: ownStyle(name), name: words.hand.gone(name), says: words.hand.goneSays },
    ),
  ];
};

/**
 * The labels of the song's sections, in the order they are first played; "" is the part before the
 * first label. Empty where nothing has a label.
 */
export const sectionLabels = ({ timeline }: Walk): readonly string[] => {
  const labels = [...new Set(timeline.bars.map(({ section }) => section ?? ""))];
  return labels.some((label) => label !== "") ? labels : [];
};

/** Every chord of the song, where it starts and which time it is played. */
export const playedPlaces = ({ slots }: Walk): readonly PlayedPlace[] =>
  slots
    .filter((slot, index) => slots[index - 1]?.stay !== slot.stay)
    .map((slot) => ({ ...pinPlaceOf(slot, false), time: slot.time }));

/** Where the chord that a placement holds starts; null where there is none. */
export const placeHeld = (walk: Walk, placement: number): PlayedPlace | null => {
  const stay = walk.slots[placement]?.stay;
  const first = walk.slots.find((slot) => slot.stay === stay);
  return stay !== undefined && first ? { ...pinPlaceOf(first, false), time: first.time } : null;
};

/** The name of the pattern that is played at a tick, while a placement is held; null where none is. */
export const patternAt = ({ slots }: Walk, placement: number, tick: number): string | null => {
  const slot = slots[placement];
  if (!slot) return null;
  const eighth = Math.floor((tick - slot.start) / TICKS_PER_EIGHTH);
  return pieceAt(slot.played, Math.max(0, eighth))?.name ?? null;
};
