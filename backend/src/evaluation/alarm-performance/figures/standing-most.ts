import { below, eemua, type FigureRow } from '../figure-row';
import { standingCount } from '../standing-count';

export const standingMost: FigureRow = {
  id: 'standingMost',
  title: 'Alarms standing at once, most',
  unit: 'alarms',
  source: `${eemua} (from memory)`,
  target: below(10),
  of: ({ standings, period }) => standingCount(standings, period)?.most ?? null,
};
