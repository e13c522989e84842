/** ISO 8601 UTC, or null where there is no time. */
export const timeText = (ms: number): string | null => (Number.isFinite(ms) ? new Date(ms).toISOString() : null);

/** A number that JSON can carry. */
export const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);
