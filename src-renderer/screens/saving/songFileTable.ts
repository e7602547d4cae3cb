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
    name: "MusicXML",
    holds: "Tablature with fingers and slides",
    ending: "musicxml",
    type: "application/vnd.recordare.musicxml+xml",
  },
  {
    kind: "notation",
    name: "MusicXML with notation",
    holds: "A staff in notation above the tablature",
    ending: "musicxml",
    type: "application/vnd.recordare.musicxml+xml",
  },
  {
    kind: "midi",
    name: "MIDI",
    holds: "Banjo, bass and chop",
    ending: "mid",
    type: "audio/midi",
  },
  {
    kind: "tablature",
    name: "Text tablature",
    holds: "To print, or to send in a letter",
    ending: "txt",
    type: "text/plain;charset=utf-8",
  },
  {
    kind: "chart",
    name: "Chart text",
    holds: "The changes as you wrote them",
    ending: "txt",
    type: "text/plain;charset=utf-8",
  },
]);
