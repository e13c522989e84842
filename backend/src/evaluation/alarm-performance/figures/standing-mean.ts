import { below, eemua, type FigureRow } from '../figure-row';
import { standingCount } from '../standing-count';

export const standingMean: FigureRow = {
  id: 'standingMean',
  title: 'Alarms standing at once, mean over time',
  unit: 'alarms',
  source: `${eemua} (from memory)`,
  target: below(10),
  of: ({ standings, period }) => standingCount(standings, period)?.mean ?? null,
};
