import type { AlarmState } from '@ebbline/shared/contract/alarm';
import { AlarmHistory } from '../../../../../backend/src/evaluation/alarm-performance/alarm-history';
import type { JournalStep } from '../../../../../backend/src/evaluation/alarm-performance/journal-step';
import { toldIn, type Told } from '../../../../../backend/src/evaluation/alarm-performance/told';
import type { Period } from '../../../../../backend/src/evaluation/alarm-performance/period';

export const minuteMs = 60_000;
export const hourMs = 3_600_000;
export const dayMs = 86_400_000;

type More = Partial<JournalStep>;

let sequence = 0;

/** A row that takes an alarm from one state to the next; times in minutes. */
export function step(atMinutes: number, alarm: string, from: AlarmState, to: AlarmState, more: More = {}): JournalStep {
  sequence += 1;
  const [unit = '', entry = ''] = alarm.split(':');
  return {
    sequence,
    atMs: Math.round(atMinutes * minuteMs),
    kind: 'transition',
    cause: null,
    alarm,
    unit,
    hall: 'h1',
    entry,
    from,
    to,
    priority: 3,
    foldedUnder: null,
    sinceMs: null,
    actor: null,
    mode: null,
    ...more,
  };
}

export const raise = (atMinutes: number, alarm: string, more: More = {}): JournalStep =>
  step(atMinutes, alarm, 'normal', 'unacknowledged', more);

export function historyOf(steps: readonly JournalStep[], hall: string | null = null): AlarmHistory {
  const history = new AlarmHistory(hall);
  for (const one of steps) history.take(one);
  history.end();
  return history;
}

export const toldOf = (steps: readonly JournalStep[], period: Period, configured = 0): Told =>
  toldIn(historyOf(steps), period, configured);
