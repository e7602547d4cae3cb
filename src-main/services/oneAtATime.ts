/** Runs pieces of work in the order they are given, each after the one before has ended. */
export type OneAtATime = <T>(work: () => Promise<T>) => Promise<T>;

/** A new line to stand in; a failure is its own caller's, and the next is run all the same. */
export const makeOneAtATime = (): OneAtATime => {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work, work);
    last = mine;
    return mine;
  };
};
