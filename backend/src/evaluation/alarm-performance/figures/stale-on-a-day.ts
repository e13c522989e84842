import { below, isa2016, type FigureRow } from '../figure-row';
import { mostStaleOnADay } from '../stale';

export const staleOnADay: FigureRow = {
  id: 'staleOnADay',
  title: 'Alarms standing for more than 24 h, most on any day',
  unit: 'alarms',
  source: `${isa2016}; with a plan for each`,
  target: below(5),
  of: ({ standings, period, days }) => (days > 0 ? mostStaleOnADay(standings, period) : null),
};
