import type { AlarmRecord } from '../../alarm-lifecycle/alarm-record';
import { longestShelvingMs } from '../../alarm-lifecycle/longest-shelving';
import type { PipelineState } from '../pipeline-state';
import { normalRecord } from './normal-record';
import { priorityOfAlarm } from './priority-of-alarm';
import { namedAlarms } from './named-alarms';

/** An alarm that the site can have, standing or not; one that does not stand is as it would be set aside. */
export interface FoundAlarm {
  readonly record: AlarmRecord;
  readonly longestShelvingMs: number;
}

/** So many names are looked at for one search: a site of thousands of units has a million of them. */
const mostLooked = 50_000;

/**
 * Alarms in which every one of the words stands: in the entry or its title, in the name of the unit or hall, or in the branch, plate or
 * point. What has the most of the words in the name of its unit comes first. No alert: it cannot be set aside.
 */
export function findAlarms(
  pipeline: PipelineState,
  words: readonly string[],
  most: number,
  nowMs: number,
): { readonly found: readonly FoundAlarm[]; readonly more: boolean } {
  const found: FoundAlarm[] = [];
  const small = words.map((word) => word.toLowerCase());
  let looked = 0;
  for (const [alarm, text] of namedAlarms(pipeline, small)) {
    looked += 1;
    if (looked > mostLooked) return { found, more: true };
    if (pipeline.applies[alarm] !== 1 || !small.every((word) => text.includes(word))) continue;
    const priority = priorityOfAlarm(pipeline, alarm);
    if (priority === null) continue;
    if (found.length === most) return { found, more: true };
    const record = pipeline.book.record(alarm) ?? normalRecord(pipeline, alarm, priority, nowMs);
    found.push({ record, longestShelvingMs: longestShelvingMs(priority.highest) });
  }
  return { found, more: false };
}
