import { diffArrays } from "diff";
import { type BarText, readChart } from "../chart/readChart.ts";
import type { Song } from "../chart/song.ts";
import { songToPlay } from "../chart/songToPlay.ts";
import { movePins, type Pin } from "./pins.ts";

/** A chart's text, where its written bars stand in it, and the song as it is played. */
export type PlayedChart = {
  readonly text: string;
  readonly bars: readonly BarText[];
  readonly song: Song;
};

/** A chart as pins see it; `playKey` as in the settings. */
export const playedChart = (text: string, playKey: string | null): PlayedChart => {
  const { value, bars } = readChart(text);
  return { text, bars, song: songToPlay(value, playKey) };
};

const textsOf = ({ text, bars }: PlayedChart): string[] =>
  bars.map(({ start, end }) => text.slice(start, end).replace(/\s+/g, " "));

/**
 * For each old bar the new ones that it may have become, the likeliest first; none where it is gone.
 * Bars of the same text are the same bar, matched in order. Of bars that were written over, each
 * became the one that stands in its place, or else another of those written there.
 */
export const barsAfter = (
  before: readonly string[],
  after: readonly string[],
): readonly (readonly number[])[] => {
  const became: (readonly number[])[] = [];
  let at = 0;
  const changes = diffArrays([...before], [...after]);
  for (const [index, change] of changes.entries()) {
    if (change.added) {
      if (!changes[index - 1]?.removed) {
        at += change.count;
      }
    } else if (change.removed) {
      const written = changes[index + 1]?.added ? (changes[index + 1]?.count ?? 0) : 0;
      const places = Array.from({ length: written }, (_, place) => at + place);
      for (let place = 0; place < change.count; place += 1) {
        const own = places[Math.min(place, written - 1)];
        became.push(own === undefined ? [] : [own, ...places.filter((other) => other !== own)]);
      }
      at += written;
    } else {
      for (let place = 0; place < change.count; place += 1) {
        became.push([at + place]);
      }
      at += change.count;
    }
  }
  return became;
};

/** Where chords start: "bar eighth chord". */
const chordStarts = ({ sections }: Song): ReadonlySet<string> => {
  const starts = new Set<string>();
  for (const [bar, { stays }] of sections.flatMap((section) => section.bars).entries()) {
    let eighth = 0;
    for (const stay of stays) {
      starts.add(`${bar} ${eighth} ${stay.chord?.name}`);
      eighth += stay.eighths;
    }
  }
  return starts;
};

/**
 * The pins, or whatever else is said of chords, after an edit of the chart, each on its own bar
 * wherever that is now; those on bars that are gone are dropped. Gives the same list where nothing
 * moves.
 */
export const pinsAfterEdit = <Said extends Pick<Pin, "bar" | "eighth" | "chord">>(
  pins: readonly Said[],
  before: PlayedChart,
  after: PlayedChart,
): readonly Said[] => {
  const became = barsAfter(textsOf(before), textsOf(after));
  const starts = chordStarts(after.song);
  const moved = pins.flatMap((pin) => {
    const places = became[pin.bar] ?? [];
    const awake = places.find((bar) => starts.has(`${bar} ${pin.eighth} ${pin.chord}`));
    return movePins(
      [pin],
      became.map((_, bar) => (bar === pin.bar ? (awake ?? places[0] ?? null) : null)),
    );
  });
  const same = moved.length === pins.length && moved.every(({ bar }, k) => bar === pins[k]?.bar);
  return same ? pins : moved;
};
