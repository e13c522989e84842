import { everyShape, type UnitEntry } from '../entry';
import { stoppedModes } from '../modes-of-rules';
import { judgeShares, type WatchedShare } from '../watched-shares';
import type { UnitSlots } from '../unit-slots';

const watched = (slots: UnitSlots): readonly WatchedShare[] => [
  { id: 'heatBalanceShift', slot: slots.heatBalanceShift },
  { id: 'captureShift', slot: slots.captureShift },
  { id: 'flowShareShift', slot: slots.flowShareShift },
  { id: 'uaRatioShift', slot: slots.uaRatioShift },
  { id: 'pumpEfficiencyShift', slot: slots.pumpEfficiencyShift },
  { id: 'inLeakShift', slot: slots.inLeakShift },
];

/** A figure of the unit has surely gone from what it was in the known-good period: its cumulative sum is beyond `limit` of the decision interval. */
export const change1: UnitEntry = {
  id: 'CHANGE-1',
  title: 'A figure of the unit has changed since its known-good period',
  cause:
    'Something wears, fouls or leaks slowly; a meter drifts; or the unit was altered and its known-good period is not of now.',
  consequence:
    'A fault that grows is met later, by the alarm that has its own limit; nothing is wrong with the loop yet.',
  action: everyShape(
    'Open the named figure and see since when and on what it has moved. Where the change was meant, state a new known-good period in the site file.',
  ),
  confirm: 'Compare the named figure with that of a neighbouring unit, and its meters with a hand instrument.',
  timeToRespondS: 7 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0.5, onDelayMs: 20 * 60_000, offDelayMs: 60 * 60_000 },
  unitOfMeasure: '1',
  basis:
    'Tabular CUSUM of means of ten minutes, half a standard deviation of allowance (Montgomery, Introduction to Statistical Quality Control, 9.1); the interval gives a false signal in a year of a unit (own rule).',
  feeds: [],
  offInModes: [...stoppedModes, 'starting', 'powerReturn'],
  offWhenInferred: true,
  applies: (_unit, slots) => watched(slots).some(({ slot }) => slot >= 0),
  judge: ({ slots, state }, limits, active, finding) => judgeShares(state, watched(slots), limits, active, finding),
};
