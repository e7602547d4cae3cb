import { strToU8 } from "fflate";

/** Chords of bars in a hand-made score, each different, so that an order of bars can be read. */
export const chordOfBar: readonly string[] = ["A", "B", "C", "D", "E", "F", "G"];

/** A measure with what stands before and behind its whole note, its chord told by its place. */
export type HandMeasure = { readonly before?: string; readonly after?: string };

export const sound = (attributes: string, words = ""): string =>
  `<direction><direction-type><words>${words || "x"}</words></direction-type><sound ${attributes}/></direction>`;

/** A sign with the sound that it stands for. */
export const sounded = (name: "segno" | "coda", attributes: string): string =>
  `<direction><direction-type><${name}/></direction-type><sound ${attributes}/></direction>`;

export const words = (text: string): string =>
  `<direction><direction-type><words>${text}</words></direction-type></direction>`;

export const sign = (name: "segno" | "coda", text = ""): string =>
  `<direction>${text === "" ? "" : `<direction-type><words>${text}</words></direction-type>`}<direction-type><${name}/></direction-type></direction>`;

export const forward = '<barline location="left"><repeat direction="forward"/></barline>';
export const backward = '<barline location="right"><repeat direction="backward"/></barline>';
export const startsEnding = (number: number): string =>
  `<barline location="left"><ending number="${number}" type="start"/></barline>`;
export const stopsEnding = (number: number, repeats: boolean): string =>
  `<barline location="right"><ending number="${number}" type="stop"/>${repeats ? '<repeat direction="backward"/>' : ""}</barline>`;

/** A score of 4/4 in MusicXML 4.0, one whole note to a measure. */
export const scoreText = (measures: readonly HandMeasure[]): string => {
  const start =
    "<attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef></attributes>";
  const written = measures.map(({ before = "", after = "" }, index) => {
    const [lefts = "", rest = before] = /^(<barline.*?<\/barline>)(.*)$/s
      .exec(before)
      ?.slice(1) ?? ["", before];
    const chord = `<harmony><root><root-step>${chordOfBar[index]}</root-step></root><kind>major</kind></harmony>`;
    const note = `<note><pitch><step>${chordOfBar[index]}</step><octave>4</octave></pitch><duration>4</duration><voice>1</voice><type>whole</type></note>`;
    return `<measure number="${index + 1}">${lefts}${index === 0 ? start : ""}${rest}${chord}${note}${after}</measure>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?><score-partwise version="4.0"><movement-title>Tin Gate</movement-title><part-list><score-part id="P1"><part-name>Banjo</part-name></score-part></part-list><part id="P1">${written.join("")}</part></score-partwise>`;
};

export const scoreBytes = (measures: readonly HandMeasure[]): Uint8Array =>
  strToU8(scoreText(measures));
