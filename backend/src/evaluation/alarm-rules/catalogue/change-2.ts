import { everyShape, type UnitEntry } from '../entry';
import { stoppedModes } from '../modes-of-rules';
import { judgeShares, type WatchedShare } from '../watched-shares';
import type { UnitSlots } from '../unit-slots';

const watched = (slots: UnitSlots): readonly WatchedShare[] => [
  { id: 'patternResidual', slot: slots.patternResidual },
  { id: 'patternDistance', slot: slots.patternDistance },
];

/** The main signals no longer move together as in the known-good period: beyond `limit` of what chance gives. */
export const change2: UnitEntry = {
  id: 'CHANGE-2',
  title: 'The main signals do not move together as usual',
  cause:
    'Off the pattern: a relation has broken, as by a meter that drifts or a bypass that opens. Along it: load or weather that the known-good period did not hold.',
  consequence: 'What has begun is met later, by the alarm that has its own limit; nothing is wrong with the loop yet.',
  action: everyShape(
    'Compare the main signals with their trends of the known-good period and name the one that went its own way. Where the load is new, state a longer known-good period.',
  ),
  confirm: 'Compare with a neighbouring unit of the same loop at the same load.',
  timeToRespondS: 7 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0.2, onDelayMs: 40 * 60_000, offDelayMs: 60 * 60_000 },
  unitOfMeasure: '1',
  basis:
    'Hotelling’s T² and the squared prediction error of principal components, limits for two false signals in a year (own rule); four means of ten minutes in a row.',
  feeds: [],
  offInModes: [...stoppedModes, 'starting', 'powerReturn'],
  offWhenInferred: true,
  applies: (_unit, slots) => watched(slots).some(({ slot }) => slot >= 0),
  judge: ({ slots, state }, limits, active, finding) => judgeShares(state, watched(slots), limits, active, finding),
};
