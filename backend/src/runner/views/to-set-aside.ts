import type { SetAsideAlarm, SetAsideList } from '@ebbline/shared/contract/alarm-modes';
import { setAsideOf } from '../../evaluation/alarm-lifecycle/mode-facts';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { Scene } from './scene';
import { timeText } from './time-text';

/** An alarm that is not told, in the words of the contract; null where it is told. */
export function toSetAside(record: AlarmRecord, title: string): SetAsideAlarm | null {
  const aside = setAsideOf(record);
  if (aside === null || aside.mode === 'inService') return null;
  return {
    id: record.alarm,
    unit: record.unit,
    hall: record.hall,
    entry: record.entry,
    title,
    where: record.where,
    mode: aside.mode,
    state: record.state,
    active: record.active,
    priority: record.priority,
    since: timeText(aside.modeSinceMs) ?? new Date(0).toISOString(),
    until: aside.modeUntilMs === null ? null : timeText(aside.modeUntilMs),
    by: aside.modeBy,
    reason: aside.modeReason,
    interimMeasures: aside.interimMeasures,
  };
}

/**
 * Everything that is set aside: what a person has set aside first, what ends soonest first; then what the modes of the units
 * have off, one line an entry and unit.
 */
export function setAsideList(scene: Scene): SetAsideList {
  const records = [...scene.setAside().map(({ record }) => record), ...scene.pipeline.offByMode()];
  const alarms = records.flatMap((record) => toSetAside(record, scene.textsOf(record).title) ?? []);
  return { time: timeText(scene.nowMs()) ?? new Date(0).toISOString(), alarms: alarms.sort(inOrder) };
}

/** How many lines the list has. */
export const setAsideCount = (scene: Scene): number => scene.setAside().length + scene.pipeline.offByMode().length;

const rank = { shelved: 0, outOfService: 1, suppressedByDesign: 2 } as const;
/** Later than any time: what has no end comes last. */
const endless = '9999';

const inOrder = (a: SetAsideAlarm, b: SetAsideAlarm): number =>
  rank[a.mode] - rank[b.mode] ||
  (a.until ?? endless).localeCompare(b.until ?? endless) ||
  a.priority - b.priority ||
  a.id.localeCompare(b.id);
