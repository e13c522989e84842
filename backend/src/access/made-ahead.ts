/**
 * What is kept with a time further ahead than this, ms, was kept while the clock was wrong: it would outlive its time by as much as that.
 * Clocks that are kept right by a server, and those of two machines of which one takes over from the other, lie within it.
 */
export const aheadToleranceMs = 5 * 60_000;

/** Whether what was made or used at a time by the clock was so in a future that the clock no longer knows. */
export const isMadeAhead = (madeMs: number, nowMs: number): boolean => madeMs - nowMs > aheadToleranceMs;
