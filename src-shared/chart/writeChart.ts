import { keyName } from "../harmony/readKey.ts";
import { cleanValue, type FieldName } from "./fields.ts";
import { eighthsInDot } from "./pulse.ts";
import { plainHeader } from "./readHeader.ts";
import type { Bar, Meter, Section, Song, Stay } from "./song.ts";

const BARS_IN_A_LINE = 4;

/**
 * A time signature as the Time header writes it.
 * @example meterName({ beats: 2, unit: 2 }) // => "2/2"
 */
export const meterName = (meter: Meter): string => `${meter.beats}/${meter.unit}`;

const writeStay = (stay: Stay, dot: 1 | 2): string => {
  if (dot === 1) return `${stay.symbol}${" .".repeat(stay.eighths - 1)}`;
  if (stay.eighths === 1) return `${stay.symbol}'`;
  const more = " .".repeat(stay.eighths / 2 - 1);
  return `${stay.symbol}${more}${stay.eighths % 2 === 1 ? " ," : ""}`;
};

/**
 * The content of a bar, without bar lines.
 * @example writeStays([{ symbol: "G", chord: null, eighths: 6 }, { symbol: "D", chord: null, eighths: 2 }], { beats: 4, unit: 4 }) // => "G . . D"
 * @example writeStays([{ symbol: "G", chord: null, eighths: 4 }, { symbol: "D", chord: null, eighths: 2 }], { beats: 6, unit: 8 }) // => "G . . . D ."
 */
export const writeStays = (stays: readonly Stay[], meter: Meter): string => {
  const dot = eighthsInDot(meter);
  const even = stays.every((stay) => stay.eighths === stays[0]?.eighths);
  return stays.map((stay) => (even ? stay.symbol : writeStay(stay, dot))).join(" ");
};

const lineBetween = (left: Bar | undefined, right: Bar | undefined): string => {
  const closes = ":".repeat((left?.plays ?? 1) - 1);
  const double = left?.endsEnding === true && closes === "" ? "|" : "";
  const opens = right?.opensRepeat === true ? ":" : "";
  const ending = right?.ending == null ? "" : `[${right.ending.join(",")}`;
  return `${closes}|${double}${opens}${ending}`;
};

const writeSection = (section: Section, meter: Meter): string => {
  const { bars } = section;
  const lines: string[] = section.label === null ? [] : [`[${section.label}]`];
  for (let from = 0; from < bars.length; from += BARS_IN_A_LINE) {
    const row = bars.slice(from, from + BARS_IN_A_LINE);
    // A line's first bar line only opens: what closes stands at the end of the line before.
    const written = row.map((bar, at) => {
      const left = lineBetween(at === 0 ? undefined : row[at - 1], bar);
      return `${left} ${writeStays(bar.stays, meter)} `;
    });
    lines.push(`${written.join("")}${lineBetween(row.at(-1), undefined)}`);
  }
  return lines.join("\n");
};

/**
 * A song as canonical chart text: reading it gives an equal song. Only a title, label or form that a
 * chart cannot hold (line breaks, a remark's #) comes back tidied.
 */
export const writeChart = (song: Song): string => {
  const field = (name: FieldName, value: string | number): string =>
    `${name}: ${cleanValue(String(value))}`;
  const header = [
    field("Title", song.title),
    field("Key", keyName(song.key)),
    field("Time", meterName(song.meter)),
    field("Tempo", song.tempo),
    ...(song.capo === plainHeader.capo ? [] : [field("Capo", song.capo)]),
    ...(song.tuning === plainHeader.tuning ? [] : [field("Tuning", song.tuning)]),
    ...(song.form === null ? [] : [field("Form", song.form.join(" "))]),
  ];
  const sections = song.sections.map((section) => writeSection(section, song.meter));
  return `${[header.join("\n"), ...sections].join("\n\n")}\n`;
};
