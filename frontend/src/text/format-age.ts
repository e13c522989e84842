/** Ages below this read alike, so that a healthy screen does not flicker. Seconds. */
export const freshSeconds = 3;

/**
 * How long ago, in the fewest words. Null is an age that is not known.
 * @param seconds 0 or more
 */
export function formatAge(seconds: number | null): string {
  if (seconds === null) return 'age not known';
  if (seconds < freshSeconds) return `< ${freshSeconds}\u00a0s`;
  return formatDuration(seconds);
}

/** A length of time, whole units, the coarser the longer. Seconds in. */
export function formatDuration(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  if (whole < 120) return `${whole}\u00a0s`;
  const minutes = Math.floor(whole / 60);
  if (minutes < 120) return `${minutes}\u00a0min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return `${hours}\u00a0h`;
  return `${Math.floor(hours / 24)}\u00a0d`;
}
