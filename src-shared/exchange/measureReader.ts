import { TICKS_PER_QUARTER } from "../units.ts";
import { words } from "../wordTable.ts";
import { chartLabel } from "./chartFromBars.ts";
import { directionJumps, soundJumps } from "./directionJumps.ts";
import { harmonySymbol } from "./harmonySymbol.ts";
import type { Jump, PlacedJump } from "./jump.ts";
import type { Piece, PieceSymbol } from "./piece.ts";
import { childOf, childrenOf, textAt, type XmlElement } from "./xmlTree.ts";

/** A part's measures as pieces, with what was met on the way. */
export type PartReading = {
  readonly pieces: readonly Piece[];
  readonly chords: number;
  readonly notes: number;
  readonly lyrics: number;
  readonly jumps: readonly PlacedJump[];
  /** Signatures after the first. */
  readonly keyChanges: number;
  /** Sharps (positive) or flats; null where no key is given. */
  readonly fifths: { readonly fifths: number; readonly minor: boolean } | null;
  /** Quarters a minute; null where none is given. */
  readonly tempo: number | null;
  readonly left: readonly string[];
};

const MAX_LEFT = 20;

const numberIn = (text: string | null | undefined): number | null => {
  const value = text === null || text === undefined || text === "" ? Number.NaN : Number(text);
  return Number.isFinite(value) ? value : null;
};

/** Passes of an ending: "1, 2" and "1-3" alike; at least one. */
const passesOf = (text: string): readonly number[] => {
  const passes = (text.match(/\d{1,2}(?:-\d{1,2})?/g) ?? []).flatMap((part) => {
    const [first = 1, last = first] = part.split("-").map(Number);
    const count = Math.min(16, Math.max(1, last - first + 1));
    return Array.from({ length: count }, (_, index) => first + index);
  });
  return passes.length > 0 ? passes : [1];
};

const meterOf = (time: XmlElement): string | null => {
  const beats = textAt(time, "beats");
  const type = textAt(time, "beat-type");
  if (beats === null || type === null) {
    return null;
  }
  return time.attributes["symbol"] === "cut" ? "2/2" : `${beats}/${type}`;
};

/** Reads a part's measures one after the other: chords, repeats, endings, labels; notes are counted. */
export const readMeasures = (part: XmlElement): PartReading => {
  const pieces: Piece[] = [];
  const left: string[] = [];
  let meter = "4/4";
  let divisions = 1;
  const jumps: PlacedJump[] = [];
  let [chords, notes, lyrics, keyChanges] = [0, 0, 0, 0];
  let nextOpens = false;
  let fifths: PartReading["fifths"] = null;
  let tempo: number | null = null;
  let inEnding = false;

  const ticksOf = (element: XmlElement, name: string): number =>
    ((numberIn(textAt(element, name)) ?? 0) * TICKS_PER_QUARTER) / divisions;

  const readAttributes = (element: XmlElement): void => {
    divisions = Math.max(1e-6, numberIn(textAt(element, "divisions")) ?? divisions);
    const time = childOf(element, "time");
    meter = (time && meterOf(time)) ?? meter;
    const key = childOf(element, "key");
    const sharps = key && numberIn(textAt(key, "fifths"));
    if (key !== null && sharps !== null) {
      if (fifths === null) {
        fifths = { fifths: sharps, minor: textAt(key, "mode") === "minor" };
      } else if (fifths.fifths !== sharps) {
        keyChanges += 1;
      }
    }
  };

  const readSound = (sound: XmlElement | null): void => {
    if (sound === null) {
      return;
    }
    tempo ??= numberIn(sound.attributes["tempo"]);
  };

  const readMeasure = (measure: XmlElement, index: number): void => {
    const number = measure.attributes["number"] ?? `${index + 1}`;
    const symbols: PieceSymbol[] = [];
    let [at, length] = [0, 0];
    let label: string | null = null;
    const inMeasure: { readonly jump: Jump; readonly at: number }[] = [];
    let [opensRepeat, plays, endsEnding] = [nextOpens, 1, false];
    nextOpens = false;
    const takeJumps = (found: readonly Jump[], offset: number): void => {
      inMeasure.push(...found.map((jump) => ({ jump, at: at + offset })));
    };
    const takeSound = (sound: XmlElement | null): void => {
      readSound(sound);
      if (sound?.attributes["forward-repeat"] === "yes") {
        opensRepeat ||= at === 0;
        nextOpens = at > 0;
      }
    };
    let ending: readonly number[] | null = null;
    const readBarline = (line: XmlElement): void => {
      const repeat = childOf(line, "repeat");
      const isLeft = line.attributes["location"] === "left";
      if (repeat?.attributes["direction"] === "forward") {
        opensRepeat = true;
      } else if (repeat !== null) {
        const times = numberIn(repeat.attributes["times"]) ?? 2;
        plays = Math.min(16, Math.max(2, Math.round(times)));
        if (repeat.attributes["after-jump"] === "yes") {
          left.push(words.import.afterJump(number));
        }
      }
      const bracket = childOf(line, "ending");
      if (bracket?.attributes["type"] === "start") {
        ending = passesOf(bracket.attributes["number"] ?? "");
        inEnding = true;
      } else if (bracket !== null) {
        endsEnding = inEnding && plays === 1;
        inEnding = false;
      }
      const style = textAt(line, "bar-style");
      endsEnding ||= !isLeft && plays === 1 && (style === "light-light" || style === "light-heavy");
    };
    for (const element of measure.children) {
      switch (element.name) {
        case "attributes":
          readAttributes(element);
          break;
        case "note":
          if (childOf(element, "pitch") !== null) {
            notes += 1;
          }
          lyrics += childrenOf(element, "lyric").length;
          if (childOf(element, "chord") === null && childOf(element, "grace") === null) {
            at += ticksOf(element, "duration");
          }
          break;
        case "forward":
          at += ticksOf(element, "duration");
          break;
        case "backup":
          at = Math.max(0, at - ticksOf(element, "duration"));
          break;
        case "harmony": {
          const found = harmonySymbol(element, number);
          if (found.left !== null) {
            left.push(found.left);
          }
          if (found.ok) {
            chords += 1;
            symbols.push({
              at: Math.max(0, at + ticksOf(element, "offset")),
              symbol: found.symbol,
            });
          }
          break;
        }
        case "direction": {
          takeSound(childOf(element, "sound"));
          takeJumps(directionJumps(element), ticksOf(element, "offset"));
          for (const type of childrenOf(element, "direction-type")) {
            label ??= chartLabel(textAt(type, "rehearsal") ?? "");
          }
          break;
        }
        case "sound":
          takeSound(element);
          takeJumps(soundJumps(element), ticksOf(element, "offset"));
          break;
        case "barline":
          readBarline(element);
          break;
        default:
          break;
      }
      length = Math.max(length, at);
    }
    const [before, after] = [pieces.length, pieces.length + (length > 0 ? 1 : 0)];
    for (const { jump, at: place } of inMeasure) {
      // A way to the coda leaves where it stands; the other signs are for the whole bar.
      const first = jump.kind === "toCoda" || jump.kind === "codaSign";
      jumps.push({
        jump,
        enters: place > 0 && place >= length ? after : before,
        leaves: first && place <= 0 ? before : after,
      });
    }
    if (length > 0) {
      pieces.push({
        number,
        meter,
        length,
        symbols,
        label,
        opensRepeat,
        plays,
        ending,
        endsEnding,
      });
    }
  };
  for (const [index, measure] of childrenOf(part, "measure").entries()) {
    readMeasure(measure, index);
  }
  const shown = left.slice(0, MAX_LEFT);
  const more = left.length > MAX_LEFT ? [words.import.more(left.length - MAX_LEFT)] : [];
  return {
    pieces,
    chords,
    notes,
    lyrics,
    jumps,
    keyChanges,
    fifths,
    tempo,
    left: [...shown, ...more],
  };
};
