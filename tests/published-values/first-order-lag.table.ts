import { laggedShare, rampLag } from '@ebbline/shared/heat/first-order-lag';
import { absolute, type PublishedRow, type PublishedTable } from './published-table';

const seen = (constants: number, expected: number): PublishedRow => ({
  id: `lag-63 ${constants}tau`,
  status: 'published',
  source: 'Bergman, Lavine, Incropera, DeWitt, Fundamentals of Heat and Mass Transfer (7th ed.) eq. 5.6',
  inputs: { constants },
  expected,
  tolerance: absolute(0.0001),
});

export const laggedShareTable: PublishedTable = {
  title: 'share of a step seen after so many time constants',
  subject: { equation: laggedShare },
  evaluate: (equation, { constants = Number.NaN }) => equation(10 * constants, 10),
  rows: [seen(1, 0.6321), seen(2, 0.8647), seen(3, 0.9502)],
};

export const rampLagTable: PublishedTable = {
  title: 'how far a first-order sensor is behind a settled ramp, K',
  subject: { equation: rampLag },
  evaluate: (equation, { rate = Number.NaN, tau = Number.NaN }) => equation(rate, tau),
  rows: [
    {
      id: 'ramp-lag',
      status: 'published',
      source: 'first-order lag behind a ramp (Incropera eq. 5.25 solved for a ramp)',
      inputs: { rate: 0.12, tau: 8 },
      expected: 0.96,
      tolerance: absolute(0.001),
    },
  ],
};
