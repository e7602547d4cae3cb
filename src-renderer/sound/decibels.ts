/** How many times as high a level is that is so many decibels louder. */
export const decibels = (db: number): number => 10 ** (db / 20);
