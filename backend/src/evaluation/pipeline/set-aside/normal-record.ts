import type { AlarmRecord } from '../../alarm-lifecycle/alarm-record';
import type { PipelineState } from '../pipeline-state';
import type { PriorityOfAlarm } from './priority-of-alarm';

/** A configured alarm that does not stand, as it is set aside. */
export function normalRecord(
  { index }: PipelineState,
  alarm: number,
  { usual }: PriorityOfAlarm,
  nowMs: number,
): AlarmRecord {
  const { alarm: name, entry, unit, hall } = index.identity(alarm);
  return {
    alarm: name,
    entry,
    unit,
    hall,
    state: 'normal',
    active: false,
    priority: usual,
    sinceMs: nowMs,
    stateSinceMs: nowMs,
    value: null,
    limit: null,
    unitOfMeasure: null,
    where: null,
    foldedUnder: null,
    acknowledgedBy: null,
    acknowledgedAtMs: null,
  };
}
