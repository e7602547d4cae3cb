/** One event of a trace as Chromium writes it: times in microseconds. */
type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  /** Of `dur`, what the thread had a processor for: other programs' turns are not in it. */
  readonly tdur?: number;
  readonly pid: number;
  readonly tid: number;
};

/** What a trace says of the page's frames. Milliseconds. */
export type FrameTimes = {
  /** From each frame's callbacks to the next one's. */
  readonly gaps: readonly number[];
  /** Script between each frame's callbacks and the next one's, garbage collection within it counted. */
  readonly scripts: readonly number[];
};

/** What runs script, as the timeline names it; the outermost of nested ones counts. */
const SCRIPT = new Set([
  "FireAnimationFrame",
  "FunctionCall",
  "EvaluateScript",
  "TimerFire",
  "EventDispatch",
  "RunMicrotasks",
  "FireIdleCallback",
  "MajorGC",
  "MinorGC",
]);

/** Callbacks at most this far apart are of one frame: microseconds. */
const TOGETHER = 500;

/** Reads a trace of one page; the thread with the most frames is its main one. */
export const frameTimes = (trace: Buffer): FrameTimes => {
  const { traceEvents }: { traceEvents: TraceEvent[] } = JSON.parse(trace.toString());
  const frames = traceEvents.filter(({ name }) => name === "FireAnimationFrame");
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const counts = new Map<string, number>();
  for (const each of frames) counts.set(threadOf(each), (counts.get(threadOf(each)) ?? 0) + 1);
  const thread = [...counts].toSorted(([, a], [, b]) => b - a)[0]?.[0];
  // Several callbacks that run one after the other are of one frame.
  const starts: number[] = [];
  let ended = Number.NEGATIVE_INFINITY;
  for (const { ts, dur = 0 } of frames
    .filter((each) => threadOf(each) === thread)
    .toSorted((a, b) => a.ts - b.ts)) {
    if (ts - ended > TOGETHER) starts.push(ts);
    ended = ts + dur;
  }
  const scripts = starts.map(() => 0);
  let frame = -1;
  let done = 0;
  const running = traceEvents
    .filter((each) => each.ph === "X" && SCRIPT.has(each.name) && threadOf(each) === thread)
    .toSorted((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  for (const { ts, dur = 0, tdur = dur } of running) {
    if (ts < done) continue;
    done = ts + dur;
    while ((starts[frame + 1] ?? Number.POSITIVE_INFINITY) <= ts) frame += 1;
    if (frame >= 0) scripts[frame] = (scripts[frame] ?? 0) + tdur / 1000;
  }
  const gaps = starts.slice(1).map((ts, index) => (ts - (starts[index] ?? ts)) / 1000);
  return { gaps, scripts: scripts.slice(0, -1) };
};

/** The value that a share of all lies below or at; NaN where there are none. */
export const quantile = (values: readonly number[], share: number): number => {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};
