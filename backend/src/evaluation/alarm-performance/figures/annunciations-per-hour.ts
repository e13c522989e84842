import { atMost, isa2009, meanPer, type FigureRow } from '../figure-row';

export const annunciationsPerHour: FigureRow = {
  id: 'annunciationsPerHour',
  title: 'Annunciations an hour, mean',
  unit: 'an hour',
  source: isa2009,
  target: atMost(6, 12),
  of: ({ annunciations, days }) => meanPer(1 / 24, annunciations.length, days),
};
