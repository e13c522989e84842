import type { AlarmState } from '@ebbline/shared/contract/alarm';
import type { Actor } from './alarm-identity';
import type { AlarmRecord, AlarmTransition } from './alarm-record';
import { setAsideOf } from './mode-facts';
import { stateFacts } from './states';

export interface Change {
  readonly transition: AlarmTransition;
  readonly record: AlarmRecord;
}

/** The alarm in its next state, and the change as the journal has it. */
export function movedTo(
  before: AlarmRecord,
  state: AlarmState,
  cause: AlarmTransition['cause'],
  nowMs: number,
  actor: Actor | null,
): Change {
  const record: AlarmRecord = {
    ...before,
    state,
    active: stateFacts[state].active,
    stateSinceMs: nowMs,
    ...(before.state === 'unacknowledged' ? { toldAtMs: before.stateSinceMs } : {}),
    ...(cause === 'acknowledge' && actor !== null ? { acknowledgedBy: actor.operator, acknowledgedAtMs: nowMs } : {}),
    ...(stateFacts[state].acknowledged ? {} : { acknowledgedBy: null, acknowledgedAtMs: null }),
  };
  return { transition: describeChange(before.state, record, cause, nowMs, actor), record };
}

export function describeChange(
  from: AlarmState,
  record: AlarmRecord,
  cause: AlarmTransition['cause'],
  atMs: number,
  actor: Actor | null,
): AlarmTransition {
  return {
    alarm: record.alarm,
    entry: record.entry,
    unit: record.unit,
    hall: record.hall,
    from,
    to: record.state,
    cause,
    priority: record.priority,
    atMs,
    sinceMs: record.sinceMs,
    value: record.value,
    limit: record.limit,
    unitOfMeasure: record.unitOfMeasure,
    where: record.where,
    ...(record.detail === undefined ? {} : { detail: record.detail }),
    foldedUnder: record.foldedUnder,
    actor: actor?.operator ?? null,
    station: actor?.station ?? null,
    comment: actor?.comment ?? null,
    ...setAsideOf(record),
  };
}
