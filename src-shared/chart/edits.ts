import { chordName } from "../harmony/chord.ts";
import type { Key } from "../harmony/key.ts";
import { readChord } from "../harmony/readChord.ts";
import { keyName, keyOn } from "../harmony/readKey.ts";
import { transposeChord } from "../harmony/transpose.ts";
import { chartLine, cleanValue, type FieldName, fieldsOf } from "./fields.ts";
import { readChart } from "./readChart.ts";
import { textLines } from "./spot.ts";

/** A stretch of text, in characters from its start, and what is to stand there. */
type Change = { readonly start: number; readonly end: number; readonly put: string };

const apply = (text: string, changes: readonly Change[]): string => {
  const parts: string[] = [];
  let from = 0;
  for (const { start, end, put } of changes) {
    parts.push(text.slice(from, start), put);
    from = end;
  }
  return [...parts, text.slice(from)].join("");
};

/**
 * The chart with a header field set: replaced where it stands, else put behind the header's last
 * line (or at the top). Everything else stays as it is.
 * @example setHeader("Key: G\n| G |", "Key", "A") // => "Key: A\n| G |"
 * @example setHeader("| G |", "Tempo", "120") // => "Tempo: 120\n| G |"
 */
export const setHeader = (text: string, name: FieldName, value: string): string => {
  const put = cleanValue(value);
  const lines = textLines(text).map(chartLine);
  const headers = lines.filter((each) => each.kind === "fields").map(({ line }) => line);
  const field = headers.flatMap(fieldsOf).find((each) => each.name === name);
  if (field !== undefined) {
    const start = field.word.offset + field.word.length + 1;
    const gap = field.value.length > 0 ? text.slice(start, field.value.offset) : " ";
    const end = field.value.offset + field.value.length;
    return apply(text, [{ start, end, put: `${gap === "" ? " " : gap}${put}` }]);
  }
  const firstBody = lines.findIndex(({ kind, line }) => kind === "body" && line.text.trim() !== "");
  const above = headers.filter((line) => firstBody < 0 || line.line <= firstBody).at(-1);
  const lineBreak = /\r\n|\n|\r/.exec(text)?.[0] ?? "\n";
  if (above === undefined) return `${name}: ${put}${lineBreak}${text}`;
  const rest = /[^\r\n]*/.exec(text.slice(above.offset))?.[0].length ?? 0;
  const end = above.offset + rest;
  return apply(text, [{ start: end, end, put: `${lineBreak}${name}: ${put}` }]);
};

/**
 * The chart in another key: letter chords are replaced where they stand, degrees stay, the Key
 * header changes. Only the tonic of `key` counts: a minor chart stays minor.
 * @example transposeChart("Key: G\n| G  5 | Em |", { tonic: "A", mode: "major" }) // => "Key: A\n| A  5 | F#m |"
 */
export const transposeChart = (text: string, key: Key): string => {
  const { value: song, symbols } = readChart(text);
  const to = keyOn(key.tonic, song.key.mode);
  const changes = symbols.flatMap(({ offset, length, kind }): readonly Change[] => {
    const reading = kind === "letter" ? readChord(text.slice(offset, offset + length)) : null;
    if (reading === null || !reading.ok) return [];
    const put = chordName(transposeChord(reading.chord, song.key, to));
    return [{ start: offset, end: offset + length, put }];
  });
  return setHeader(apply(text, changes), "Key", keyName(to));
};

/**
 * The chart with one written bar's content (0-based over all sections) replaced; an empty content
 * becomes N.C. A bar that the chart has not is a bug and throws.
 * @example replaceBar("| G | C |", 1, "D . . G") // => "| G | D . . G |"
 */
export const replaceBar = (text: string, bar: number, content: string): string => {
  const { bars } = readChart(text);
  const place = bars[bar];
  if (place === undefined) throw new RangeError(`no bar ${bar} in a chart of ${bars.length}`);
  const put = content.trim() === "" ? "N.C." : content.trim();
  return apply(text, [{ start: place.start, end: place.end, put }]);
};
