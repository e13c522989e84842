import { chemistryEntry } from './chem-entry';

export const chem3 = chemistryEntry({
  id: 'CHEM-3',
  title: 'Bacteria above their limit',
  cause: 'Biocide used up, warm water standing, or nutrients from glycol or a changed hose.',
  consequence: 'Slime blocks narrow channels and eats inhibitor; aerosol of warm water may carry Legionella.',
  action:
    'Take a second sample and have it counted; dose biocide by the site’s procedure. Exhausts and seal water lead outdoors: check that they do.',
  confirm: 'Compare the count with a dip slide from another place of the loop; look for slime at the strainer.',
  basis: 'ASHRAE liquid cooling guidelines, technology loop: below 100 CFU/mL (from memory).',
  unitOfMeasure: '{CFU}/mL',
  low: Number.NaN,
  limit: 100,
  deadband: 10,
  feeds: ['water.bacteria'],
  parameter: 'bacteria',
});
