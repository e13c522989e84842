import { chemistryEntry } from './chem-entry';

export const chem5 = chemistryEntry({
  id: 'CHEM-5',
  title: 'Turbidity above its limit',
  cause: 'Particles after works, products of corrosion, slime coming loose, or a filter whose bypass is open.',
  consequence: 'Narrow channels of the plates block; the filter loads within days.',
  action: 'Take a sample and see what it is; look at the filter and its bypass.',
  confirm: 'Let a sample settle in a clear bottle, and compare it with one from another place of the loop.',
  basis: 'ASHRAE liquid cooling guidelines: below 20 NTU (from memory).',
  unitOfMeasure: '{NTU}',
  low: Number.NaN,
  limit: 20,
  deadband: 2,
  feeds: ['water.turbidity'],
  parameter: 'turbidity',
});
