/** Who looks on at long work and may stop it. */
export type Onlooker = {
  /** Called with the share that is done, from 0 to 1. */
  readonly progress: (share: number) => void;
  /** Its abort stops the work, which then throws the signal's reason. */
  readonly signal: AbortSignal | null;
};
