import type { PipelineState } from '../pipeline-state';
import { breakOff } from './break-off';

/** Records go over as they are. What is open ends: what it measured before and after the change may not be the same. */
export function takeOverGuided(before: PipelineState, now: PipelineState, nowMs: number): void {
  for (const [id, record] of before.guided.records) now.guided.records.set(id, record);
  now.guided.changes.push(...before.guided.changes.splice(0));
  for (const { record } of before.guided.open.values()) {
    const test = breakOff(before, record, { endedFor: 'configuration', said: null, by: null }, nowMs);
    now.guided.records.set(test.id, test);
    now.guided.changes.push({ what: 'ended', test, atMs: nowMs, actor: null, station: null, comment: null });
  }
}
