/** Minutes are made of their seconds: so long after a span has ended, its last one is sure to be on record. ms */
const recordedMs = 120_000;

/**
 * True of a span of which something is still to come.
 * @param nowMs the time in force, ms since 1970; null while it is not known. Not given: nothing is awaited.
 */
export function spanIsOpen(toMs: number, nowMs: (() => number | null) | undefined): boolean {
  if (nowMs === undefined) return false;
  const now = nowMs();
  return now === null || toMs + recordedMs > now;
}
