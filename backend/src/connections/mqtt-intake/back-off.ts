/** The first wait before a new attempt, and the longest, ms. */
const FIRST_MS = 250;
const LONGEST_MS = 30_000;

/**
 * How long to wait before attempt `attempt` (0 = the first after a loss): doubled each time up to half a
 * minute, of which a random half is taken off, so that many clients of a broker don't come back at once.
 * @param random 0 ≤ random < 1
 */
export function backOffMs(attempt: number, random: number): number {
  return Math.min(LONGEST_MS, FIRST_MS * 2 ** attempt) * (1 - random / 2);
}
