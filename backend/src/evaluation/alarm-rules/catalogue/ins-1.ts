import type { Priority } from '@ebbline/shared/contract/alarm';
import { everyShape, type Rationale } from '../entry';
import type { Severity } from '../priority';

/** A point that an alarm needs has no value that may be used. One alarm a point. */
export const ins1: Rationale<'INS-1'> = {
  id: 'INS-1',
  title: 'A needed measurement is lost',
  cause: 'Sensor failed or out of range, wiring, power of the sensor, or its gateway stopped sending it.',
  consequence: 'The alarms that need this point are blind: they stay as they were, neither raised nor cleared by it.',
  action: everyShape('Use another instrument for what this point shows, and have the sensor and its wiring checked.'),
  confirm: 'Compare the named point with a neighbouring sensor or a hand instrument.',
  timeToRespondS: 60 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 2000, offDelayMs: 5000 },
  unitOfMeasure: null,
  basis: 'Stale after three periods, at least 5 s, or bad by range, sender’s flag or form.',
};

/**
 * Severity of a lost point by the highest priorities of the entries that it feeds: major where one of them may be
 * priority 1, else minor. Within its hour a minor loss is an alert by the grid: it shows as bad quality wherever the point or
 * what is derived from it is shown, and is not raised as an alarm.
 */
export const severityOfLoss = (fed: readonly (Priority | null)[]): Severity => (fed.includes(1) ? 'major' : 'minor');
