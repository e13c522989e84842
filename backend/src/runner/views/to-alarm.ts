import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AlarmTexts } from '../../evaluation/pipeline/alarm-texts';
import type { PictureScene, ShownAlarm } from './scene';
import { timeText } from './time-text';

/** A standing alarm in the words of the contract: what is, why, what follows, what to do first. */
export function toAlarm(
  { record, recorded }: ShownAlarm,
  texts: AlarmTexts,
  detail: string | null = record.detail ?? null,
): Alarm {
  return {
    id: record.alarm,
    unit: record.unit,
    hall: record.hall,
    entry: record.entry,
    state: record.state,
    priority: record.priority,
    since: isoOf(record.sinceMs),
    stateSince: isoOf(record.stateSinceMs),
    ...toldAt(record),
    value: record.value,
    limit: record.limit,
    unit_of_measure: record.unitOfMeasure,
    where: record.where,
    ...texts,
    acknowledgedBy: record.acknowledgedBy,
    acknowledgedAt: record.acknowledgedAtMs === null ? null : timeText(record.acknowledgedAtMs),
    detail,
    foldedUnder: record.foldedUnder,
    ...(recorded ? {} : { recorded: false }),
  };
}

/** Nothing of a record from before this was kept. */
function toldAt({ state, stateSinceMs, toldAtMs }: ShownAlarm['record']): Pick<Alarm, 'annunciatedAt'> {
  const atMs = state === 'unacknowledged' ? stateSinceMs : toldAtMs;
  return atMs === undefined ? {} : { annunciatedAt: isoOf(atMs) };
}

/**
 * Whoever most needs a person first: by priority; what is still so before what has gone; not yet acknowledged, not folded,
 * then the oldest.
 */
export function byNeed(a: ShownAlarm, b: ShownAlarm): number {
  return (
    a.record.priority - b.record.priority ||
    Number(b.record.active) - Number(a.record.active) ||
    Number(isSeen(a)) - Number(isSeen(b)) ||
    Number(a.record.foldedUnder !== null) - Number(b.record.foldedUnder !== null) ||
    a.record.sinceMs - b.record.sinceMs ||
    a.record.alarm.localeCompare(b.record.alarm)
  );
}

export const alarmsInOrder = (scene: PictureScene): Alarm[] =>
  [...scene.alarms()]
    .sort(byNeed)
    .map((shown) =>
      toAlarm(shown, scene.textsOf(shown.record), scene.pipeline.detailOf(shown.record.alarm) ?? undefined),
    );

const isSeen = ({ record }: ShownAlarm): boolean =>
  record.state === 'acknowledged' || record.state === 'latchedAcknowledged';

const isoOf = (ms: number): string => timeText(ms) ?? new Date(0).toISOString();
