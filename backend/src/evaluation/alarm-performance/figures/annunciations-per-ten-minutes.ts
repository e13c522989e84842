import { atMost, isa2009, meanPer, type FigureRow } from '../figure-row';

export const annunciationsPerTenMinutes: FigureRow = {
  id: 'annunciationsPerTenMinutes',
  title: 'Annunciations in ten minutes, mean',
  unit: 'in 10 min',
  source: isa2009,
  target: atMost(1, 2),
  of: ({ annunciations, days }) => meanPer(1 / 144, annunciations.length, days),
};
