import type { AlarmRecord } from './alarm-record';
import { modeOf } from './mode-facts';

/**
 * The record as it is on a clock that was set back by `byMs`: what it tells of lies as long ago as it did, and a shelving has as long to
 * run as it had. When something out of service is meant to end is a time that a person named: it stays.
 * @param byMs more than 0
 */
export function onClockSetBack(record: AlarmRecord, byMs: number): AlarmRecord {
  const { acknowledgedAtMs, modeSinceMs, modeUntilMs, toldAtMs } = record;
  const isShelved = modeOf(record) === 'shelved';
  return {
    ...record,
    sinceMs: record.sinceMs - byMs,
    stateSinceMs: record.stateSinceMs - byMs,
    acknowledgedAtMs: acknowledgedAtMs === null ? null : acknowledgedAtMs - byMs,
    ...(toldAtMs === undefined ? {} : { toldAtMs: toldAtMs - byMs }),
    ...(modeSinceMs === undefined ? {} : { modeSinceMs: modeSinceMs - byMs }),
    ...(isShelved && typeof modeUntilMs === 'number' ? { modeUntilMs: modeUntilMs - byMs } : {}),
  };
}
