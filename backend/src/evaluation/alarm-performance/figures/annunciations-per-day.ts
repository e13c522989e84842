import { isa2009, meanPer, type FigureRow } from '../figure-row';

export const annunciationsPerDay: FigureRow = {
  id: 'annunciationsPerDay',
  title: 'Annunciations a day',
  unit: 'a day',
  source: `${isa2009}; the one prints 150 and 300, the other 144 and 288`,
  target: ({ perDay }) => ({ ...perDay, bound: 'atMost' }),
  of: ({ annunciations, days }) => meanPer(1, annunciations.length, days),
};
