import { criticalPressureRatio } from '@ebbline/shared/hydraulics/air-through-opening';
import { absolute, type PublishedTable } from './published-table';

export const criticalPressureRatioTable: PublishedTable = {
  title: 'critical pressure ratio (or p* in kPa, where p0 in kPa is given)',
  subject: { equation: criticalPressureRatio },
  evaluate: (equation, { k = Number.NaN, p0 = 1 }) => equation(k) * p0,
  rows: [
    {
      id: 'crit-1.4',
      status: 'published',
      source: 'NACA Report 1135 (p*/p_t = 0.5283 for k = 1.4)',
      inputs: { k: 1.4 },
      expected: 0.528282,
      tolerance: absolute(1e-5),
    },
    {
      id: 'crit-1.289',
      status: 'published',
      source: 'NACA Report 1135 (p*/p_t = 0.5283 for k = 1.4)',
      inputs: { k: 1.289 },
      expected: 0.547724,
      tolerance: absolute(1e-5),
    },
    {
      id: 'crit-1.33',
      status: 'published',
      source: 'NACA Report 1135 (p*/p_t = 0.5283 for k = 1.4)',
      inputs: { k: 1.33 },
      expected: 0.540364,
      tolerance: absolute(1e-5),
    },
    {
      id: 'cengel-crit p*',
      status: 'published',
      source: 'Cengel & Boles, Thermodynamics, Example 17-4',
      inputs: { k: 1.289, p0: 1400 },
      expected: 766.8,
      tolerance: absolute(0.1),
    },
  ],
};
