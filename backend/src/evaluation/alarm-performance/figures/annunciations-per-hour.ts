import { atMost, isa2009, type FigureRow } from '../figure-row';

export const annunciationsPerHour: FigureRow = {
  id: 'annunciationsPerHour',
  title: 'Annunciations an hour, mean',
  unit: 'an hour',
  source: isa2009,
  target: atMost(6, 12),
  of: ({ annunciations, days }) => (days > 0 ? annunciations.length / (days * 24) : null),
};
