import { type ParseArgsConfig, parseArgs } from "node:util";
import type { Walk } from "../../src-shared/chartToScore.ts";
import { writeMidi } from "../../src-shared/exchange/writeMidi.ts";
import { writeMusicXml } from "../../src-shared/exchange/writeMusicXml.ts";
import { writeTablature } from "../../src-shared/exchange/writeTablature.ts";
import {
  type HandOutOptions,
  handOutLayouts,
  usualHandOut,
} from "../../src-shared/sheet/handOut.ts";
import { papers } from "../../src-shared/sheet/paper.ts";
import { shapeWords } from "../../src-shared/wording/sayShape.ts";
import { type PlanRequest, readPlanRequest } from "./planCommand.ts";

/** The files that `sheet` writes, by the ending their names have. */
export type SheetFormat = "pdf" | "musicxml" | "mid" | "txt";

/** What `sheet` was asked to do, or why it cannot. */
export type SheetRequest =
  | {
      readonly ok: true;
      readonly plan: Extract<PlanRequest, { readonly ok: true }>;
      readonly format: SheetFormat;
      /** A file's path; null is standard output. */
      readonly to: string | null;
      /** MusicXML has a staff in notation above its tablature. */
      readonly notation: boolean;
      /** How a PDF is laid out. */
      readonly handOut: HandOutOptions;
    }
  | { readonly ok: false; readonly says: string };

const formats: readonly SheetFormat[] = ["pdf", "musicxml", "mid", "txt"];
const paperNames = papers.map(({ name }) => name);

/** How to call it, for whoever called it wrongly. */
export const sheetUsage: string = [
  `Usage: npm run --silent sheet -- FILE --out ${formats.join("|")} [--to PATH] [--notation]`,
  `                                      [--paper ${paperNames.join("|")}] [--layout ${handOutLayouts.join("|")}]`,
  "                                      and all options of plan but --alternatives.",
  "FILE is a chart, or - for standard input. Without --to the file goes to standard output.",
  "--notation adds a staff in notation to MusicXML. --paper and --layout belong to --out pdf, which takes",
  "several FILEs too: one document with a list of contents.",
].join("\n");

const own = {
  out: { type: "string" },
  to: { type: "string" },
  notation: { type: "boolean" },
  paper: { type: "string" },
  layout: { type: "string" },
  alternatives: { type: "string" },
} as const satisfies ParseArgsConfig["options"];

const refuse = (says: string): { readonly ok: false; readonly says: string } => ({
  ok: false,
  says,
});

type HandOutReading =
  | { readonly ok: true; readonly value: HandOutOptions }
  | { readonly ok: false; readonly says: string };

const readHandOut = (
  values: Readonly<Record<string, unknown>>,
  format: SheetFormat,
): HandOutReading => {
  const given = ["paper", "layout"].find((name) => values[name] !== undefined);
  if (given !== undefined && format !== "pdf") {
    return refuse(`--${given} belongs to --out pdf`);
  }
  const paper = paperNames.find((name) => name === (values["paper"] ?? "a4"));
  if (paper === undefined) {
    return refuse(`--paper takes one of ${paperNames.join(", ")}; "${values["paper"]}" is none`);
  }
  const layout = handOutLayouts.find((name) => name === (values["layout"] ?? "full"));
  if (layout === undefined) {
    return refuse(
      `--layout takes one of ${handOutLayouts.join(", ")}; "${values["layout"]}" is none`,
    );
  }
  return { ok: true, value: { ...usualHandOut(paper), layout } };
};

/** Reads the command's arguments: its own, and those of `plan`. */
export const readSheetRequest = (args: readonly string[]): SheetRequest => {
  const { values, tokens } = parseArgs({
    args: [...args],
    options: own,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const taken = new Set(
    tokens.flatMap((token) => {
      if (token.kind !== "option" || !(token.name in own)) {
        return [];
      }
      const valueApart = token.value !== undefined && !token.inlineValue;
      return valueApart ? [token.index, token.index + 1] : [token.index];
    }),
  );
  if (values.alternatives !== undefined) {
    return refuse("sheet writes one route; --alternatives belongs to plan");
  }
  const format = formats.find((each) => each === values.out);
  if (format === undefined) {
    const given = values.out === undefined ? "none is given" : `"${values.out}" is none of them`;
    return refuse(`--out takes one of ${formats.join(", ")}; ${given}`);
  }
  if (values.to === true || values.to === "") {
    return refuse("--to takes the path of the file to write");
  }
  if (values.notation === true && format !== "musicxml") {
    return refuse("--notation belongs to --out musicxml");
  }
  const handOut = readHandOut(values, format);
  if (!handOut.ok) {
    return handOut;
  }
  const plan = readPlanRequest(
    args.filter((_, index) => !taken.has(index)),
    format === "pdf" ? "many" : "one",
  );
  if (!plan.ok) {
    return refuse(plan.says.replace(/^plan takes/, "sheet takes"));
  }
  const to = typeof values.to === "string" ? values.to : null;
  return {
    ok: true,
    plan,
    format,
    to,
    notation: values.notation === true,
    handOut: handOut.value,
  };
};

/** The bytes of a file of one song. */
export const sheetBytes = (
  walk: Walk,
  format: Exclude<SheetFormat, "pdf">,
  notation: boolean,
): Uint8Array => {
  if (format === "mid") {
    return writeMidi(walk);
  }
  const text =
    format === "musicxml"
      ? writeMusicXml(walk, { notation })
      : writeTablature(walk, ({ voicing }) => shapeWords(voicing, walk.neck.tuning).says);
  return new TextEncoder().encode(text);
};
