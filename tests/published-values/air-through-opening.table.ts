import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { relative, type PublishedTable } from './published-table';

export const airThroughOpeningTable: PublishedTable = {
  title: 'air through an opening of d mm, kg/s, from p0 kPa and T0 K to p_loop kPa, C_d = 1',
  subject: { equation: airThroughOpening },
  evaluate: (equation, { d = Number.NaN, p0 = Number.NaN, T0 = Number.NaN, p_loop = Number.NaN }) =>
    equation(1, (Math.PI / 4) * (d / 1000) ** 2, p0 * 1000, T0 - 273.15, p_loop * 1000),
  rows: [
    {
      id: 'inleak-1mm-95',
      status: 'published',
      source: 'isentropic nozzle flow, NACA 1135; choked below 0.5283 p0 = 53.53 kPa',
      inputs: { d: 1, p0: 101.325, T0: 293.15, p_loop: 95 },
      expected: 9.36347e-5,
      tolerance: relative(0.001),
    },
    {
      id: 'inleak-1mm-80',
      status: 'published',
      source: 'isentropic nozzle flow, NACA 1135; choked below 0.5283 p0 = 53.53 kPa',
      inputs: { d: 1, p0: 101.325, T0: 293.15, p_loop: 80 },
      expected: 0.000156653,
      tolerance: relative(0.001),
    },
    {
      id: 'inleak-1mm-30',
      status: 'published',
      source: 'isentropic nozzle flow, NACA 1135; choked below 0.5283 p0 = 53.53 kPa',
      inputs: { d: 1, p0: 101.325, T0: 293.15, p_loop: 30 },
      expected: 0.000187846,
      tolerance: relative(0.001),
    },
  ],
};
