import { words } from "../../../src-shared/wordTable.ts";

// Endings and media types: MusicXML 4.0 (W3C); MIDI and text by common practice, from memory.

/** What a song can be saved as. */
export type SongFileKind = "musicxml" | "notation" | "midi" | "tablature" | "chart";

/** A kind of file: what it is called, what is in it, its ending and its media type. */
export type SongFileRow = {
  readonly kind: SongFileKind;
  readonly name: string;
  readonly holds: string;
  readonly ending: string;
  readonly type: string;
};

/** The kinds of file, in the order they are offered. */
export const songFileTable: readonly SongFileRow[] = Object.freeze([
  {
    kind: "musicxml",
    name: words.save.kinds.musicxml.name,
    holds: words.save.kinds.musicxml.says,
    ending: "musicxml",
    type: "application/vnd.recordare.musicxml+xml",
  },
  {
    kind: "notation",
    name: words.save.kinds.notation.name,
    holds: words.save.kinds.notation.says,
    ending: "musicxml",
    type: "application/vnd.recordare.musicxml+xml",
  },
  {
    kind: "midi",
    name: words.save.kinds.midi.name,
    holds: words.save.kinds.midi.says,
    ending: "mid",
    type: "audio/midi",
  },
  {
    kind: "tablature",
    name: words.save.kinds.tablature.name,
    holds: words.save.kinds.tablature.says,
    ending: "txt",
    type: "text/plain;charset=utf-8",
  },
  {
    kind: "chart",
    name: words.save.kinds.chart.name,
    holds: words.save.kinds.chart.says,
    ending: "txt",
    type: "text/plain;charset=utf-8",
  },
]);
