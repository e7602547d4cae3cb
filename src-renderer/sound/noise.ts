/** White noise, from -1 to 1. */
export type Noise = () => number;

/** Park-Miller minimal standard generator (CACM 31(10), 1988): the same noise every time. */
export const noiseSource = (): Noise => {
  let state = 20_251_125;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return (2 * state) / 2_147_483_647 - 1;
  };
};
