import { atMost, isa2016, type FigureRow } from '../figure-row';
import { mostInWindow } from '../trailing-window';

export const mostInTenMinutes: FigureRow = {
  id: 'mostInTenMinutes',
  title: 'Most annunciations in any ten minutes',
  unit: 'in 10 min',
  source: isa2016,
  target: atMost(10),
  of: ({ times, days, period: { fromMs, toMs } }) => (days > 0 ? mostInWindow(times, 600_000, fromMs, toMs) : null),
};
