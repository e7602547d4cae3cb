import { type ParseArgsConfig, parseArgs } from "node:util";
import { readKey } from "../../src-shared/harmony/readKey.ts";
import { readTuning } from "../../src-shared/harmony/readTuning.ts";
import { USUAL_LAST_FRET } from "../../src-shared/neck/neckFor.ts";
import {
  densities,
  fifthUses,
  type Picking,
  plainPicking,
  styleNames,
} from "../../src-shared/roll/picking.ts";
import {
  aims,
  handNames,
  type PlanSettings,
  stringSets,
  wholeNeckPlan,
} from "../../src-shared/settings.ts";
import type { ShapeName } from "../../src-shared/voicing/voicing.ts";

/** What `plan` was asked to do, or why it cannot. */
export type PlanRequest =
  | {
      readonly ok: true;
      readonly file: string;
      /** Further files, where the command takes several. */
      readonly more: readonly string[];
      readonly settings: PlanSettings;
      readonly picking: Picking;
      /** A tuning's name; null is the chart's own. */
      readonly tuning: string | null;
      /** Beats of the song's meter a minute; null is the chart's own. */
      readonly tempo: number | null;
      /** How many routes that really differ are asked for, the best one counted. */
      readonly alternatives: number;
    }
  | { readonly ok: false; readonly says: string };

/** How to call it, for whoever called it wrongly. */
export const planUsage: string = [
  "Usage: npm run --silent plan -- FILE [--key K] [--shapes F,D,barre] [--frets LO-HI]",
  `                                     [--aim ${aims.join("|")}]`,
  `                                     [--hand ${handNames.join("|")}] [--tempo N] [--loop]`,
  `                                     [--strings ${stringSets.join("|")}] [--tuning NAME]`,
  `                                     [--style ${styleNames.join("|")}]`,
  `                                     [--density ${densities.join("|")}] [--fifth ${fifthUses.join("|")}]`,
  "                                     [--two-per-chord] [--alike] [--alternatives K]",
  "F, D and barre mean a triad's root on string 1, 2 and 3 (F on the inner strings: on 4), in any tuning.",
  "FILE is a chart, or - for standard input. The whole neck is allowed, and the song is played once;",
  "a new song on the screen starts with --frets 1-17 --loop.",
].join("\n");

const options = {
  key: { type: "string" },
  shapes: { type: "string" },
  frets: { type: "string" },
  aim: { type: "string" },
  strings: { type: "string" },
  tuning: { type: "string" },
  hand: { type: "string" },
  tempo: { type: "string" },
  alternatives: { type: "string" },
  style: { type: "string" },
  density: { type: "string" },
  fifth: { type: "string" },
  "two-per-chord": { type: "boolean" },
  alike: { type: "boolean" },
  loop: { type: "boolean" },
} as const satisfies ParseArgsConfig["options"];

const SLOWEST = 15;
const FASTEST = 320;
const MOST_ALTERNATIVES = 9;

const refuse = (says: string): { readonly ok: false; readonly says: string } => ({
  ok: false,
  says,
});

type Taken<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly says: string };

const oneOf = <T extends string>(option: string, all: readonly T[], word: string): Taken<T> => {
  const value = all.find((each) => each === word);
  return value === undefined
    ? refuse(`${option} takes one of ${all.join(", ")}; "${word}" is none of them`)
    : { ok: true, value };
};

const numberFrom = (
  option: string,
  text: string | undefined,
  low: number,
  high: number,
): Taken<number | null> => {
  if (text === undefined) {
    return { ok: true, value: null };
  }
  const value = Number(text);
  return /^\d+(\.\d+)?$/.test(text) && value >= low && value <= high
    ? { ok: true, value }
    : refuse(`${option} takes a number from ${low} to ${high}; "${text}" is not that`);
};

const shapeNames: readonly ShapeName[] = ["F", "D", "barre"];

const shapesFrom = (text: string): readonly ShapeName[] | string => {
  const asked = text.split(",").map((word) => word.trim());
  const unknown = asked.find((word) => !shapeNames.some((name) => name === word));
  return unknown === undefined
    ? shapeNames.filter((name) => asked.includes(name))
    : `--shapes takes F, D and barre, joined by commas; "${unknown}" is none of them`;
};

const fretsFrom = (text: string): readonly [number, number] | string => {
  const match = /^(\d{1,2})-(\d{1,2})$/.exec(text);
  const low = Number(match?.[1]);
  const high = Number(match?.[2]);
  return match && low >= 1 && low <= high && high <= USUAL_LAST_FRET
    ? [low, high]
    : `--frets takes two frets from 1 to ${USUAL_LAST_FRET}, the lower first, as in 5-17; "${text}" is not that`;
};

type PickingOptions = {
  readonly style?: string | undefined;
  readonly density?: string | undefined;
  readonly fifth?: string | undefined;
};

const pickingFrom = (values: PickingOptions): Taken<Picking> => {
  const { song } = plainPicking;
  const style = oneOf("--style", styleNames, values.style ?? "forward");
  if (!style.ok) {
    return style;
  }
  const density = oneOf("--density", densities, values.density ?? song.density);
  if (!density.ok) {
    return density;
  }
  const fifth = oneOf("--fifth", fifthUses, values.fifth ?? plainPicking.fifth);
  if (!fifth.ok) {
    return fifth;
  }
  const manner = { style: style.value, density: density.value };
  return { ok: true, value: { ...plainPicking, song: manner, fifth: fifth.value } };
};

/** The parser of the standard library throws on wrong use; its message is what the caller needs. */
const parsed = (
  args: readonly string[],
): ReturnType<typeof parseArgs<{ options: typeof options; allowPositionals: true }>> | string => {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
};

/**
 * Reads the command's arguments, with one file or as many as are given; every wrong use is said in
 * words, none is guessed at.
 */
export const readPlanRequest = (
  args: readonly string[],
  most: "one" | "many" = "one",
): PlanRequest => {
  const found = parsed(args);
  if (typeof found === "string") {
    return refuse(found);
  }
  const { values, positionals } = found;
  const [file, ...more] = positionals;
  if (file === undefined || (most === "one" && more.length > 0)) {
    return refuse(`plan takes one chart file${most === "many" ? " or more" : ""}`);
  }
  const { key } = values;
  if (key !== undefined && !readKey(key).ok) {
    return refuse(`--key takes a key such as G, Bb or F#m; "${key}" is not one`);
  }
  const aim = oneOf("--aim", aims, values.aim ?? wholeNeckPlan.aim);
  if (!aim.ok) {
    return aim;
  }
  const hand = oneOf("--hand", handNames, values.hand ?? wholeNeckPlan.hand);
  if (!hand.ok) {
    return hand;
  }
  const strings = oneOf("--strings", stringSets, values.strings ?? wholeNeckPlan.strings);
  if (!strings.ok) {
    return strings;
  }
  const picking = pickingFrom(values);
  if (!picking.ok) {
    return picking;
  }
  const tuning = values.tuning === undefined ? null : readTuning(values.tuning);
  if (tuning?.ok === false) {
    return refuse(`--tuning: ${tuning.says} ${tuning.try}`);
  }
  const tempo = numberFrom("--tempo", values.tempo, SLOWEST, FASTEST);
  if (!tempo.ok) {
    return tempo;
  }
  const alternatives = numberFrom("--alternatives", values.alternatives, 1, MOST_ALTERNATIVES);
  if (!alternatives.ok) {
    return alternatives;
  }
  const shapes = values.shapes === undefined ? wholeNeckPlan.shapes : shapesFrom(values.shapes);
  if (typeof shapes === "string") {
    return refuse(shapes);
  }
  const frets =
    values.frets === undefined
      ? ([wholeNeckPlan.fretLow, wholeNeckPlan.fretHigh] as const)
      : fretsFrom(values.frets);
  if (typeof frets === "string") {
    return refuse(frets);
  }
  const [fretLow, fretHigh] = frets;
  return {
    ok: true,
    file,
    more,
    tuning: values.tuning ?? null,
    tempo: tempo.value,
    alternatives: alternatives.value ?? 1,
    picking: picking.value,
    settings: {
      ...wholeNeckPlan,
      playKey: key ?? null,
      aim: aim.value,
      hand: hand.value,
      strings: strings.value,
      perChord: values["two-per-chord"] ? 2 : 1,
      goesRound: values.loop ?? false,
      alike: values.alike ?? false,
      shapes,
      fretLow,
      fretHigh,
    },
  };
};
