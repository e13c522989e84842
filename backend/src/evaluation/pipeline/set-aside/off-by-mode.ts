import { modes } from '@ebbline/shared/contract/http-api';
import type { AlarmRecord } from '../../alarm-lifecycle/alarm-record';
import { isSetAside } from '../../alarm-lifecycle/mode-facts';
import { isOff } from '../off-in-mode';
import type { ModeFound } from '../mode-of-unit';
import type { PipelineState } from '../pipeline-state';
import { suppressedNow } from './by-design';
import { normalRecord } from './normal-record';
import { priorityOfAlarm } from './priority-of-alarm';

/**
 * What the modes of the units have off now and does not stand: suppressed by design without anything to keep of it. One a unit
 * and entry, also where the entry is judged for each branch or plate; none that a person has set aside.
 */
export function offByMode(pipeline: PipelineState): readonly AlarmRecord[] {
  return pipeline.site.units.flatMap((_, unit) => ofUnit(pipeline, unit));
}

function ofUnit(pipeline: PipelineState, unit: number): readonly AlarmRecord[] {
  const { mode, told } = pipeline.modes[unit] as ModeFound;
  const place = modes.indexOf(mode);
  const places = pipeline.unitPlaces[unit] ?? new Uint8Array();
  return [...places].flatMap((entry) => (isOff(entry, place, told) ? ofEntry(pipeline, unit, entry) : []));
}

function ofEntry(pipeline: PipelineState, unit: number, entry: number): readonly AlarmRecord[] {
  const alarm = pipeline.index.ofUnit(unit) + entry;
  const priority = priorityOfAlarm(pipeline, alarm);
  const why = suppressedNow(pipeline, alarm);
  const record = pipeline.book.record(alarm);
  if (priority === null || why === null || (record !== null && isSetAside(record))) return [];
  const sinceMs = pipeline.modeSinceMs[unit] as number;
  return [
    { ...normalRecord(pipeline, alarm, priority, sinceMs), ...why, mode: 'suppressedByDesign', modeSinceMs: sinceMs },
  ];
}
