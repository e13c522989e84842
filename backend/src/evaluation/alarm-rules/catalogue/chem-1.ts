import { chemistryEntry } from './chem-entry';

export const chem1 = chemistryEntry({
  id: 'CHEM-1',
  title: 'Conductivity outside its band',
  cause:
    'Rising: facility water comes in through the exchanger, or inhibitor was dosed. Falling: topped up with pure water, or inhibitor used up.',
  consequence: 'Corrosion; a steady rise without top-up is facility water on its way into the loop.',
  action:
    'Look at the sum of levels and the top-up first: a sum that rises without top-up is facility water coming in: let another unit take the load, or shed it, and isolate the exchanger. Else take a sample and correct the treatment.',
  confirm: 'Measure a sample with a hand instrument at 25 °C; compare its hardness with that of the facility water.',
  basis:
    'At 25 °C by the linear form of ISO 7888. The band depends on the treatment (0.2 to 20 µS/cm without inhibitor, from memory), so there is no default.',
  unitOfMeasure: 'S/m',
  low: Number.NaN,
  limit: Number.NaN,
  deadband: 0,
  feeds: ['water.conductivity'],
  parameter: 'conductivity',
});
