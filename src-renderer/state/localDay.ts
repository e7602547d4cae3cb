const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The day of a moment where the player lives, counted from 1 January 1970. */
export const dayOf = (atMs: number): number =>
  Math.floor((atMs - new Date(atMs).getTimezoneOffset() * MINUTE_MS) / DAY_MS);

/** How many days before today this week began; weeks begin on Monday (ISO 8601). */
export const weekdayOf = (day: number): number => (((day + 3) % 7) + 7) % 7;

/** A day as it is written: "3 May". */
export const sayDay = (day: number): string =>
  new Date(day * DAY_MS).toLocaleDateString("en-GB", {
    day: "numeric",
    month: "short",
    timeZone: "UTC",
  });
