/** ISO 8601 UTC, or null where there is no time. */
export const timeText = (ms: number): string | null => (Number.isFinite(ms) ? new Date(ms).toISOString() : null);

/** Seconds since `ms`, never below zero; null where it is not known. */
export function ageSeconds(ms: number, nowMs: number): number | null {
  const age = (nowMs - ms) / 1000;
  return Number.isFinite(age) ? Math.max(0, age) : null;
}

/** A number that JSON can carry. */
export const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
