import type { FigureRow } from '../figure-row';

export const configuredAlarms: FigureRow = {
  id: 'configuredAlarms',
  title: 'Configured alarms of one operating position, now',
  unit: 'alarms',
  source: 'To be known; no target',
  target: null,
  of: ({ configured }) => configured,
};
