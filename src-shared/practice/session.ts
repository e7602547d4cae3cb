import { climb, type Ladder, type LadderEvent, ladderOf, usualLadder } from "./ladder.ts";
import type { SessionPlan, SessionStep } from "./practice.ts";

/** Where a guided rehearsal stands. */
export type Session = {
  readonly plan: SessionPlan;
  /** Index of the step it is at; the number of steps when it is over. */
  readonly at: number;
  /** Seconds spent in that step, from 0; less than it lasts. */
  readonly spent: number;
  /** Neither time nor rounds count meanwhile. */
  readonly paused: boolean;
  /** The tempo of what is played; null in a rest and at the end. */
  readonly ladder: Ladder | null;
};

/** What happens in a guided rehearsal; `seconds` are not negative. */
export type SessionEvent =
  | { readonly kind: "time"; readonly seconds: number }
  | { readonly kind: "skip" }
  | LadderEvent;

const ladderFor = (step: SessionStep | undefined): Ladder | null =>
  step?.kind === "play" ? ladderOf(usualLadder(step.start, step.goal)) : null;

const goTo = (session: Session, at: number): Session => ({
  ...session,
  at,
  spent: 0,
  ladder: ladderFor(session.plan.steps[at]),
});

/** A guided rehearsal before its first second. */
export const sessionOf = (plan: SessionPlan): Session =>
  goTo({ plan, at: 0, spent: 0, paused: false, ladder: null }, 0);

/** The step it is at; null when it is over. */
export const stepNow = ({ plan, at }: Session): SessionStep | null => plan.steps[at] ?? null;

/** The step that comes next; null where none does. */
export const stepNext = ({ plan, at }: Session): SessionStep | null => plan.steps[at + 1] ?? null;

/** Seconds left of the step it is at, and of the whole. */
export const secondsLeft = ({
  plan,
  at,
  spent,
}: Session): { readonly step: number; readonly all: number } => {
  const left = plan.steps.slice(at).reduce((sum, { lasts }) => sum + lasts, 0);
  return { step: (plan.steps[at]?.lasts ?? spent) - spent, all: Math.max(0, left - spent) };
};

const afterTime = (session: Session, seconds: number): Session => {
  const step = stepNow(session);
  if (!step) return session;
  const spent = session.spent + seconds;
  return spent < step.lasts
    ? { ...session, spent }
    : afterTime(goTo(session, session.at + 1), spent - step.lasts);
};

/**
 * What a guided rehearsal becomes: time leads from step to step, marks move the tempo of the step, a
 * skipped step is left at once. While it is paused nothing counts but going on and skipping.
 */
export const advance = (session: Session, event: SessionEvent): Session => {
  switch (event.kind) {
    case "time":
      return session.paused ? session : afterTime(session, event.seconds);
    case "skip":
      return stepNow(session) ? goTo(session, session.at + 1) : session;
    case "pause":
      return { ...session, paused: true };
    case "resume":
      return { ...session, paused: false };
    case "round": {
      const { ladder, paused } = session;
      return paused || !ladder ? session : { ...session, ladder: climb(ladder, event) };
    }
  }
};
