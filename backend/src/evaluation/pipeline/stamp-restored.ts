import type { PipelineState } from './pipeline-state';

/** Time of what ends at a restart, until the time in force is known: on the source clock that is with the first message. */
export const atRestart = Number.NaN;

/** What ended at the restart, as the site file no longer has it, ended now: not when it last changed, before the restart. */
export function stampRestored(
  { alertChanges, left, permitChanges, tightness, guided }: PipelineState,
  nowMs: number,
): void {
  stamp(left, (one) => (Number.isNaN(one.atMs) ? { ...one, atMs: nowMs } : one));
  stamp(alertChanges, (one) => (Number.isNaN(one.atMs) ? { ...one, atMs: nowMs } : one));
  stamp(permitChanges, (one) =>
    Number.isNaN(one.atMs) ? { ...one, atMs: nowMs, permit: { ...one.permit, closedMs: nowMs } } : one,
  );
  stamp(tightness.changes, (one) => {
    if (!Number.isNaN(one.atMs)) return one;
    const test = { ...one.test, endedMs: nowMs };
    tightness.records.set(test.id, test);
    return { ...one, atMs: nowMs, test };
  });
  stamp(guided.changes, (one) => {
    if (!Number.isNaN(one.atMs)) return one;
    const test = { ...one.test, endedMs: nowMs };
    guided.records.set(test.id, test);
    return { ...one, atMs: nowMs, test };
  });
}

function stamp<T>(all: T[], stamped: (one: T) => T): void {
  for (const [place, one] of all.entries()) all[place] = stamped(one);
}
