import type { AlarmRecord } from '../../alarm-lifecycle/alarm-record';
import type { PipelineState } from '../pipeline-state';
import { placeOfAlarm } from './place-of-alarm';
import type { PriorityOfAlarm } from './priority-of-alarm';

/** A configured alarm that does not stand, as it is set aside. */
export function normalRecord(
  pipeline: PipelineState,
  alarm: number,
  { usual }: PriorityOfAlarm,
  nowMs: number,
): AlarmRecord {
  const { alarm: name, entry, unit, hall } = pipeline.index.identity(alarm);
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
    where: placeOfAlarm(pipeline, alarm),
    foldedUnder: null,
    acknowledgedBy: null,
    acknowledgedAtMs: null,
  };
}
