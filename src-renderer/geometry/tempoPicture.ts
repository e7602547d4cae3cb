import type { DayOfTempo } from "../../src-shared/practice/progress.ts";

/** A day in the picture, as shares of its width and height; y counts from the top. */
export type TempoDot = {
  readonly x: number;
  readonly y: number;
  readonly clean: boolean;
};

/** A tempo that the picture has a line for. */
export type TempoTick = { readonly tempo: number; readonly y: number };

/** Tempo over days, ready to be drawn. */
export type TempoPicture = {
  readonly ticks: readonly TempoTick[];
  readonly dots: readonly TempoDot[];
  /** From each clean day to the next. */
  readonly lines: readonly { readonly from: TempoDot; readonly to: TempoDot }[];
};

/** Steps between lines, in beats a minute; the smallest that makes at most this many lines is taken. */
const steps = [2, 5, 10, 20, 50, 100, 200];
const MOST_TICKS = 5;

/** Where days and tempos lie. Days run from the first to the last; a single one is in the middle. */
export const tempoPicture = (days: readonly DayOfTempo[]): TempoPicture => {
  const tempos = days.map(({ clean, tried }) => clean ?? tried);
  const low = Math.min(...tempos);
  const high = Math.max(...tempos);
  const linesBy = (step: number): number => Math.ceil(high / step) - Math.floor(low / step) + 1;
  const step = steps.find((one) => linesBy(one) <= MOST_TICKS) ?? 500;
  const bottom = Math.floor(low / step) * step;
  const top = Math.max(Math.ceil(high / step) * step, bottom + step);
  const yOf = (tempo: number): number => (top - tempo) / (top - bottom);
  const first = days[0]?.day ?? 0;
  const span = (days.at(-1)?.day ?? 0) - first;
  const dots = days.map(
    ({ day, clean, tried }): TempoDot => ({
      x: span === 0 ? 0.5 : (day - first) / span,
      y: yOf(clean ?? tried),
      clean: clean !== null,
    }),
  );
  const clean = dots.filter((dot) => dot.clean);
  const ticks: TempoTick[] = [];
  for (let tempo = bottom; tempo <= top; tempo += step) {
    ticks.push({ tempo, y: yOf(tempo) });
  }
  return {
    ticks,
    dots,
    lines: clean.slice(1).flatMap((to, index) => {
      const from = clean[index];
      return from ? [{ from, to }] : [];
    }),
  };
};
