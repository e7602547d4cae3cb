import writeFileAtomic from "write-file-atomic";
import { setHeader } from "../../src-shared/chart/edits.ts";
import { chartToScore, otherRoutes, type Walk } from "../../src-shared/chartToScore.ts";
import { type Diagnostic, hasErrors } from "../../src-shared/diagnostic.ts";
import { type PlanRequest, planUsage, readPlanRequest } from "./planCommand.ts";
import { planReport } from "./planReport.ts";
import { readChartText, reasonOf } from "./readChartText.ts";
import { readSheetRequest, sheetBytes, sheetUsage } from "./sheetCommand.ts";

const WRONG_CHART = 1;
const WRONG_USE = 2;

const complain = (text: string, exitCode: number): void => {
  process.stderr.write(`${text}\n`);
  process.exitCode = exitCode;
};

const noteLine = (file: string, { at, says, try: remedy }: Diagnostic): string =>
  `${file}:${at.line}:${at.column}: ${says} ${remedy}`;

/** The walk of a chart file; null where it cannot be played, which has then been said. */
const walkOf = (request: Extract<PlanRequest, { readonly ok: true }>): Walk | null => {
  const text = readChartText(request.file);
  if (!text.ok) {
    complain(text.says, WRONG_USE);
    return null;
  }
  const chart =
    request.tuning === null ? text.value : setHeader(text.value, "Tuning", request.tuning);
  const walk = chartToScore(chart, request.settings, request.tempo, request.picking);
  for (const note of walk.notes) {
    complain(noteLine(request.file, note), hasErrors(walk.notes) ? WRONG_CHART : 0);
  }
  if (walk.timeline.bars.length === 0) {
    complain(
      `${request.file} has no bars. Write the changes between bar lines: | G | C |`,
      WRONG_CHART,
    );
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

/** sheet FILE: the song as a file, whole or not at all, or on standard output. */
const sheet = (args: readonly string[]): void => {
  const request = readSheetRequest(args);
  if (!request.ok) {
    complain(`${request.says}\n${sheetUsage}`, WRONG_USE);
    return;
  }
  const walk = walkOf(request.plan);
  if (walk === null) {
    return;
  }
  const bytes = sheetBytes(walk, request.format, request.notation);
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
  sheet(args);
} else {
  complain(`There are two commands, plan and sheet.\n${planUsage}\n${sheetUsage}`, WRONG_USE);
}
