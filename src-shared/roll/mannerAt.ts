import type { FitManner } from "./fitRolls.ts";
import { type Density, densities, type Picking, type StayPicking } from "./picking.ts";

/** A chord's place, as a pin tells it, and the label of its section. */
export type Spot = {
  /** 0-based written bar in which it starts, and where in it, in eighth notes. */
  readonly written: number;
  readonly eighth: number;
  /** Which time that bar is played, from 0. */
  readonly time: number;
  /** The chord's name as it sounds. */
  readonly chord: string;
  /** null where the chart starts without a label. */
  readonly section: string | null;
};

/**
 * One step sparser; the sparsest stays.
 * @example sparser("full") // => "beats"
 */
export const sparser = (density: Density): Density =>
  densities[densities.indexOf(density) + 1] ?? density;

/** Whether a chord's own picking speaks of a spot. */
export const pickingIsFor = (own: Omit<StayPicking, "manner">, spot: Spot): boolean =>
  own.bar === spot.written &&
  own.eighth === spot.eighth &&
  own.chord === spot.chord &&
  (own.time === null || own.time === spot.time);

/** What is said for the chord at a spot itself: this time before every time; null where nothing is. */
const ownAt = ({ stays }: Picking, spot: Spot): StayPicking | null => {
  const own = stays.filter((each) => pickingIsFor(each, spot));
  return own.find(({ time }) => time !== null) ?? own[0] ?? null;
};

/**
 * How the right hand plays a chord: as is said for it, else for its section, else for the song. A
 * second part of a chord (`first` is where the chord starts) is played as the first unless something
 * is said for it. Where someone sings it is soft, and one step sparser unless the chord has a manner
 * of its own. The label "" is the section without one.
 */
export const mannerAt = (picking: Picking, spot: Spot, first: Spot): FitManner => {
  const own = ownAt(picking, spot) ?? ownAt(picking, first);
  const section = picking.sections.find(({ label }) => label === (spot.section ?? ""));
  const soft = section?.sung ?? false;
  if (own) {
    return { ...own.manner, soft };
  }
  const { style, density } = section?.manner ?? picking.song;
  return { style, density: soft ? sparser(density) : density, soft };
};
