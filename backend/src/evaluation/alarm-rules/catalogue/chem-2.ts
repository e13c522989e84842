import { chemistryEntry } from './chem-entry';

export const chem2 = chemistryEntry({
  id: 'CHEM-2',
  title: 'pH outside its band',
  cause:
    'Rising: vacuum strips carbon dioxide. Falling: air comes in and brings it back, glycol breaks down, or bacteria. Or the electrode drifts.',
  consequence: 'Copper and aluminium corrode outside their range; the inhibitor no longer works.',
  action: 'Check the electrode against a buffer first, then take a sample and correct the treatment.',
  confirm: 'Measure a fresh sample at once, before it takes up air.',
  basis: 'ASHRAE liquid cooling guidelines, technology loop: pH 8 to 9.5 (from memory).',
  unitOfMeasure: '1',
  low: 8,
  limit: 9.5,
  deadband: 0.1,
  feeds: ['water.ph'],
  parameter: 'ph',
});
