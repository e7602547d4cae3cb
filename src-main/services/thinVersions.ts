/** As much of an earlier version as decides whether it stays. */
export type AgedVersion = {
  /** When it was saved, milliseconds since 1970. */
  readonly savedMs: number;
  /** What its file takes. */
  readonly bytes: number;
};

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

/** The newest versions stay, however close. */
export const NEWEST_KEPT = 10;
/** One of each hour stays as long as this. */
export const HOURLY_MS: number = 2 * DAY_MS;
/** One of each day stays as long as this; what is older goes. */
export const DAILY_MS: number = 90 * DAY_MS;
/** All versions of one song take at most this much; the newest stays even where it takes more. */
export const MOST_BYTES: number = 4 * 1024 * 1024;

/**
 * Whether what is about to be replaced is worth keeping: it stood for a minute, or the version kept
 * last is a minute older than it. So typing leaves one version a minute, and what was left to stand
 * is always among them.
 */
export const isWorthKeeping = (
  replacedSavedMs: number,
  lastKeptMs: number | null,
  nowMs: number,
): boolean =>
  lastKeptMs === null ||
  nowMs - replacedSavedMs >= MINUTE_MS ||
  replacedSavedMs - lastKeptMs >= MINUTE_MS;

/** The hour or day that a version stands for; null where it is too old to stand for any. */
const spanOf = (savedMs: number, nowMs: number): string | null => {
  const age = nowMs - savedMs;
  if (age < HOURLY_MS) {
    return `hour ${Math.floor(savedMs / HOUR_MS)}`;
  }
  return age < DAILY_MS ? `day ${Math.floor(savedMs / DAY_MS)}` : null;
};

/**
 * The versions that go: beyond the newest ten all but the last of each hour for two days, and of each
 * day for ninety, and the oldest ones while all together take too much.
 */
export const versionsToDrop = <Version extends AgedVersion>(
  versions: readonly Version[],
  nowMs: number,
): readonly Version[] => {
  const newestFirst = versions.toSorted((one, other) => other.savedMs - one.savedMs);
  const spans = new Set<string>();
  let bytes = 0;
  let full = false;
  return newestFirst.filter((version, index) => {
    const span = spanOf(version.savedMs, nowMs);
    const stands = index < NEWEST_KEPT || (span !== null && !spans.has(span));
    if (!stands) {
      return true;
    }
    full ||= index > 0 && bytes + version.bytes > MOST_BYTES;
    if (full) {
      return true;
    }
    bytes += version.bytes;
    if (span !== null) {
      spans.add(span);
    }
    return false;
  });
};
