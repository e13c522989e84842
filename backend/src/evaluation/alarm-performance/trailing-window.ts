/**
 * The most times within any trailing half-open window (t − windowMs, t] that ends in [fromMs, toMs): at `fromMs` or at one
 * of the times. 0 where there is none.
 * @param times in order
 */
export function mostInWindow(times: readonly number[], windowMs: number, fromMs: number, toMs: number): number {
  let most = 0;
  let first = 0;
  times.forEach((atMs, index) => {
    if (atMs >= toMs) return;
    const endMs = Math.max(atMs, fromMs);
    while ((times[first] ?? endMs) <= endMs - windowMs && first <= index) first += 1;
    most = Math.max(most, index - first + 1);
  });
  return most;
}

/** How many times fall into each of the equal spans that [fromMs, toMs) is cut into from its start; the last may be short. */
export function countsPerSpan(times: readonly number[], spanMs: number, fromMs: number, toMs: number): number[] {
  const counts = new Array<number>(Math.max(0, Math.ceil((toMs - fromMs) / spanMs))).fill(0);
  for (const atMs of times) {
    if (atMs < fromMs || atMs >= toMs) continue;
    const span = Math.floor((atMs - fromMs) / spanMs);
    counts[span] = (counts[span] ?? 0) + 1;
  }
  return counts;
}
