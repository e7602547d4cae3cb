import type { Voicing } from "./voicing.ts";

/** Whether two voicings stop the same strings at the same frets. */
export const sameGrip = (a: Pick<Voicing, "frets">, b: Pick<Voicing, "frets">): boolean =>
  a.frets.every((fret, index) => fret === b.frets[index]);
