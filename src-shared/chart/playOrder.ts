import { repeatGroup } from "./repeatGroup.ts";
import type { Section, Song } from "./song.ts";

/** A song is cut after this many bars as played. */
export const MAX_BARS = 20_000;

/** One bar in the order of playing. */
export type PlayedBar = {
  readonly section: Section;
  /** 0-based place in its section. */
  readonly bar: number;
  /** 0-based place among all written bars. */
  readonly written: number;
  readonly startsSection: boolean;
};

/** The order of playing, and whether it was cut at MAX_BARS. */
export type PlayOrder = { readonly bars: readonly PlayedBar[]; readonly cut: boolean };

/** A section's bars in the order of playing, repeats and endings played out, at most `limit`. */
const sectionOrder = (section: Section, limit: number): readonly number[] => {
  const { bars } = section;
  const order: number[] = [];
  const play = (from: number, to: number): void => {
    for (let at = from; at < to && order.length < limit; at += 1) order.push(at);
  };
  let at = 0;
  while (at < bars.length && order.length < limit) {
    const group = bars[at]?.opensRepeat === true ? repeatGroup(bars, at) : null;
    if (group === null) {
      order.push(at);
      at += 1;
      continue;
    }
    for (let pass = 1; pass <= group.plays; pass += 1) {
      play(group.from, group.stem);
      const ending = group.endings.find((each) => each.passes.includes(pass));
      if (ending !== undefined) play(ending.from, ending.to);
    }
    at = group.to;
  }
  return order;
};

/**
 * The order in which a song's written bars are played. Labels of the form that no section has are
 * passed over; of two sections with one label the first is meant.
 * @example playOrder({ title: "", key: { tonic: "G", mode: "major" }, meter: { beats: 4, unit: 4 }, tempo: 100, capo: 0, tuning: "open G", form: null, sections: [] }).cut // => false
 */
export const playOrder = (song: Song): PlayOrder => {
  const firstBars: number[] = [];
  let count = 0;
  for (const section of song.sections) {
    firstBars.push(count);
    count += section.bars.length;
  }
  const byLabel = new Map(
    song.sections.map((section, index) => [section.label, index] as const).toReversed(),
  );
  const places =
    song.form === null
      ? song.sections.map((_, index) => index)
      : song.form.map((label) => byLabel.get(label)).filter((index) => index !== undefined);
  const orders = new Map<number, readonly number[]>();
  const bars: PlayedBar[] = [];
  for (const index of places) {
    const section = song.sections[index];
    const first = firstBars[index];
    if (section === undefined || first === undefined) continue;
    const order = orders.get(index) ?? sectionOrder(section, MAX_BARS + 1);
    orders.set(index, order);
    for (const [place, bar] of order.entries()) {
      if (bars.length === MAX_BARS) return { bars, cut: true };
      bars.push({ section, bar, written: first + bar, startsSection: place === 0 });
    }
  }
  return { bars, cut: false };
};
