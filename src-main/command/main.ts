import writeFileAtomic from "write-file-atomic";
import { setHeader } from "../../src-shared/chart/edits.ts";
import { chartToScore, otherRoutes, type Walk } from "../../src-shared/chartToScore.ts";
import { type Diagnostic, hasErrors } from "../../src-shared/diagnostic.ts";
import { type PlanRequest, planUsage, readPlanRequest } from "./planCommand.ts";
import { planReport } from "./planReport.ts";
import { readChartText, reasonOf } from "./readChartText.ts";
import { readSheetRequest, type SheetRequest, sheetBytes, sheetUsage } from "./sheetCommand.ts";

const WRONG_CHART = 1;
const WRONG_USE = 2;

const complain = (text: string, exitCode: number): void => {
  process.stderr.write(`${text}\n`);
  process.exitCode = exitCode;
};

const noteLine = (file: string, { at, says, try: remedy }: Diagnostic): string =>
  `${file}:${at.line}:${at.column}: ${says} ${remedy}`;

type SheetAsked = Extract<SheetRequest, { readonly ok: true }>;
type Asked = Extract<PlanRequest, { readonly ok: true }>;

/** The walk of a chart file; null where it cannot be played, which has then been said. */
const walkOf = (request: Asked, file: string = request.file): Walk | null => {
  const text = readChartText(file);
  if (!text.ok) {
    complain(text.says, WRONG_USE);
    return null;
  }
  const chart =
    request.tuning === null ? text.value : setHeader(text.value, "Tuning", request.tuning);
  const walk = chartToScore(chart, request.settings, request.tempo, request.picking);
  for (const note of walk.notes) {
    complain(noteLine(file, note), hasErrors(walk.notes) ? WRONG_CHART : 0);
  }
  if (walk.timeline.bars.length === 0) {
    complain(`${file} has no bars. Write the changes between bar lines: | G | C |`, WRONG_CHART);
    return null;
  }
  return hasErrors(walk.notes) ? null : walk;
};

/** plan FILE: the chart's route and notes as one JSON object on standard output. */
const plan = (args: readonly string[]): void => {
  const request = readPlanRequest(args);
  if (!request.ok) {
    complain(`${request.says}\n${planUsage}`, WRONG_USE);
    return;
  }
  const walk = walkOf(request);
  if (walk !== null) {
    const others = request.alternatives > 1 ? otherRoutes(walk, request.alternatives) : [];
    process.stdout.write(`${JSON.stringify(planReport(walk, others))}\n`);
  }
};

/** The bytes that were asked for; null where a chart cannot be played, which has then been said. */
const sheetOf = async (request: SheetAsked): Promise<Uint8Array | null> => {
  const { plan: asked, format, notation, handOut } = request;
  if (format !== "pdf") {
    const walk = walkOf(asked);
    return walk && sheetBytes(walk, format, notation);
  }
  const walks = [asked.file, ...asked.more].map((file) => walkOf(asked, file));
  const songs = walks.filter((walk) => walk !== null);
  if (songs.length < walks.length) {
    return null;
  }
  // The PDF writer is large: only who asks for it waits for it.
  const { handOutPdf } = await import("./handOutPdf.ts");
  return handOutPdf(songs, handOut, (says) => complain(says, 0));
};

/** sheet FILE: the song as a file, whole or not at all, or on standard output. */
const sheet = async (args: readonly string[]): Promise<void> => {
  const request = readSheetRequest(args);
  if (!request.ok) {
    complain(`${request.says}\n${sheetUsage}`, WRONG_USE);
    return;
  }
  const bytes = await sheetOf(request);
  if (bytes === null) {
    return;
  }
  if (request.to === null) {
    process.stdout.write(bytes);
    return;
  }
  try {
    writeFileAtomic.sync(request.to, Buffer.from(bytes));
  } catch (error) {
    complain(`"${request.to}" cannot be written: ${reasonOf(error)}.`, WRONG_USE);
  }
};

const [command, ...args] = process.argv.slice(2);
if (command === "plan") {
  plan(args);
} else if (command === "sheet") {
  // A writer that fails is a bug: it is told in full, and the exit code says so.
  sheet(args).catch((bug: unknown) => {
    throw bug;
  });
} else {
  complain(`There are two commands, plan and sheet.\n${planUsage}\n${sheetUsage}`, WRONG_USE);
}
