import type { AlarmRecord, AlarmTransition } from '../../backend/src/evaluation/pipeline/outputs';

/** 2025-06-01T00:00:00Z; any fixed time does. */
export const startMs = Date.UTC(2025, 5, 1);

export function transition(changes: Partial<AlarmTransition> = {}): AlarmTransition {
  return {
    alarm: 'unit-1:MARGIN-1',
    entry: 'MARGIN-1',
    unit: 'unit-1',
    hall: 'hall-1',
    from: 'normal',
    to: 'unacknowledged',
    cause: 'conditionTrue',
    priority: 1,
    atMs: startMs,
    sinceMs: startMs - 3000,
    value: 1234.5,
    limit: 2000,
    unitOfMeasure: 'Pa',
    where: 'supply header',
    foldedUnder: null,
    actor: null,
    station: null,
    comment: null,
    ...changes,
  };
}

export function record(changes: Partial<AlarmRecord> = {}): AlarmRecord {
  return {
    alarm: 'unit-1:MARGIN-1',
    entry: 'MARGIN-1',
    unit: 'unit-1',
    hall: 'hall-1',
    state: 'unacknowledged',
    active: true,
    priority: 1,
    sinceMs: startMs - 3000,
    stateSinceMs: startMs,
    value: 1234.5,
    limit: 2000,
    unitOfMeasure: 'Pa',
    where: 'supply header',
    foldedUnder: null,
    acknowledgedBy: null,
    acknowledgedAtMs: null,
    ...changes,
  };
}

/** Alarm n is raised by the first, acknowledged by the second. */
export function raised(n: number): [AlarmTransition, AlarmRecord] {
  const alarm = `unit-${n}:AIR-1`;
  return [transition({ alarm, entry: 'AIR-1', value: n / 7 }), record({ alarm, entry: 'AIR-1', value: n / 7 })];
}

export function acknowledged(n: number): [AlarmTransition, AlarmRecord] {
  const alarm = `unit-${n}:AIR-1`;
  const by = { actor: `operator ${n}`, station: '127.0.0.1', comment: `seen ${n}` };
  return [
    transition({ alarm, entry: 'AIR-1', from: 'unacknowledged', to: 'acknowledged', cause: 'acknowledge', ...by }),
    record({ alarm, entry: 'AIR-1', state: 'acknowledged', acknowledgedBy: by.actor, acknowledgedAtMs: startMs }),
  ];
}
