/** Runs `work` once after `ms` milliseconds; the answer calls it off. */
export type Later = (work: () => void, ms: number) => () => void;

/** The clock on the wall. */
export const later: Later = (work, ms) => {
  const timer = setTimeout(work, ms);
  return () => clearTimeout(timer);
};
