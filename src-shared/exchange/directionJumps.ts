import { type Jump, jumpInWords } from "./jump.ts";
import { childrenOf, type XmlElement } from "./xmlTree.ts";

/** The jumps that a sound element's attributes tell (MusicXML 4.0, sound). */
export const soundJumps = ({ attributes }: XmlElement): readonly Jump[] => {
  const jumps: Jump[] = [];
  for (const kind of ["segno", "coda"] as const) {
    const name = attributes[kind];
    if (name !== undefined) {
      jumps.push({ kind, name });
    }
  }
  if (attributes["tocoda"] !== undefined) {
    jumps.push({ kind: "toCoda", name: attributes["tocoda"] });
  }
  if (attributes["fine"] !== undefined && attributes["fine"] !== "no") {
    jumps.push({ kind: "fine" });
  }
  if (attributes["dacapo"] === "yes") {
    jumps.push({ kind: "back", to: "start", name: "", until: null });
  }
  if (attributes["dalsegno"] !== undefined) {
    jumps.push({ kind: "back", to: "segno", name: attributes["dalsegno"], until: null });
  }
  return jumps;
};

/**
 * The jumps of a direction: its sound's where that tells any, with how far its words say the way back
 * goes; else what its signs and words say.
 */
export const directionJumps = (direction: XmlElement): readonly Jump[] => {
  const types = childrenOf(direction, "direction-type").flatMap(({ children }) => children);
  const text = types.map((type) => (type.name === "words" ? type.text : "")).join(" ");
  const inWords = jumpInWords(text);
  const told = childrenOf(direction, "sound").flatMap(soundJumps);
  if (told.length > 0) {
    const until = inWords?.kind === "back" ? inWords.until : null;
    return told.map((jump) => (jump.kind === "back" ? { ...jump, until } : jump));
  }
  const hasCoda = types.some(({ name }) => name === "coda");
  const signs = types.flatMap(({ name }): readonly Jump[] =>
    name === "segno" ? [{ kind: "segno", name: "" }] : [],
  );
  if (inWords?.kind === "back") {
    return hasCoda ? [{ ...inWords, until: inWords.until ?? "coda" }] : [inWords];
  }
  if (hasCoda) {
    const leaves = /\bto\b|\bal\b/i.test(text) || inWords?.kind === "toCoda";
    return [...signs, leaves ? { kind: "toCoda", name: "" } : { kind: "codaSign" }];
  }
  return inWords === null ? signs : [...signs, inWords];
};
