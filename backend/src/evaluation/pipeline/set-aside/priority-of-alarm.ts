import type { Priority } from '@ebbline/shared/contract/alarm';
import { catalogue, systemEntries, unitEntries } from '../../alarm-rules/catalogue/catalogue';
import type { Rationale } from '../../alarm-rules/entry';
import { higher, priorityOf } from '../../alarm-rules/priority';
import { highestPriorityOf, priorityOfEntry } from '../../alarm-rules/priority-of-entry';
import type { PipelineState } from '../pipeline-state';

export interface PriorityOfAlarm {
  /** As it is raised without signs that make it worse. */
  readonly usual: Priority;
  /** The most urgent that it may ever be raised with. */
  readonly highest: Priority;
}

/** The priorities of a configured alarm; null where it is told as an alert only, and never as an alarm. */
export function priorityOfAlarm({ index }: PipelineState, alarm: number): PriorityOfAlarm | null {
  const judged = index.judgedOf(alarm);
  const entry = unitEntries[judged?.place ?? -1];
  if (entry !== undefined) return both(priorityOfEntry(entry, false), highestPriorityOf(entry));
  const group = index.groupOf(alarm);
  if (group !== null) return ofRationale(group.entry);
  const system = systemEntries[index.systemPlaceOf(alarm)];
  if (system !== undefined) return ofRationale(system);
  const point = index.points[index.pointOf(alarm)];
  return point === undefined ? ofRationale(catalogue['COM-1']) : both(point.priority, point.priority);
}

function ofRationale({ severity, timeToRespondS, worse }: Rationale): PriorityOfAlarm | null {
  const usual = priorityOf(severity, timeToRespondS);
  return both(usual, higher(usual, worse === null ? null : priorityOf(worse.severity, worse.timeToRespondS)));
}

const both = (usual: Priority | null, highest: Priority | null): PriorityOfAlarm | null =>
  highest === null ? null : { usual: usual ?? highest, highest };
