import { setHeader } from "../../src-shared/chart/edits.ts";
import { chartToScore, otherRoutes } from "../../src-shared/chartToScore.ts";
import { type Diagnostic, hasErrors } from "../../src-shared/diagnostic.ts";
import { planUsage, readPlanRequest } from "./planCommand.ts";
import { planReport } from "./planReport.ts";
import { readChartText } from "./readChartText.ts";

const WRONG_CHART = 1;
const WRONG_USE = 2;

const complain = (text: string, exitCode: number): void => {
  process.stderr.write(`${text}\n`);
  process.exitCode = exitCode;
};

const noteLine = (file: string, { at, says, try: remedy }: Diagnostic): string =>
  `${file}:${at.line}:${at.column}: ${says} ${remedy}`;

/** plan FILE: the chart's route and notes as one JSON object on standard output. */
const plan = (args: readonly string[]): void => {
  const request = readPlanRequest(args);
  if (!request.ok) {
    complain(`${request.says}\n${planUsage}`, WRONG_USE);
    return;
  }
  const text = readChartText(request.file);
  if (!text.ok) {
    complain(text.says, WRONG_USE);
    return;
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
    return;
  }
  if (!hasErrors(walk.notes)) {
    const others = request.alternatives > 1 ? otherRoutes(walk, request.alternatives) : [];
    process.stdout.write(`${JSON.stringify(planReport(walk, others))}\n`);
  }
};

const [command, ...args] = process.argv.slice(2);
if (command === "plan") {
  plan(args);
} else {
  complain(`There is one command, plan.\n${planUsage}`, WRONG_USE);
}
