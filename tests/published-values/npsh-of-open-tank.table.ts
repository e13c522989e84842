import { npshAvailable } from '@ebbline/shared/hydraulics/npsh';
import { absolute, type PublishedTable } from './published-table';

const poundPerSquareInch = 6894.757;
const poundPerCubicFoot = 16.01846;
const foot = 0.3048;
const gravity = 32.174;

/** Head of the tank's surface less what the suction line loses is what the pump may stand above it. */
export const npshOfOpenTankTable: PublishedTable = {
  title: 'highest place of a pump above an open tank, ft',
  subject: { equation: npshAvailable },
  evaluate: (equation, { Q = 0, D = 0, K = 0, required = 0, p = 0, p_v = 0, gamma = 0 }) => {
    const velocity = Q / ((Math.PI * (D / 12) ** 2) / 4);
    const atSurface = equation(p * poundPerSquareInch, p_v * poundPerSquareInch, gamma * poundPerCubicFoot) / foot;
    return atSurface - (K * velocity * velocity) / (2 * gravity) - required;
  },
  rows: [
    {
      id: 'npsh-munson',
      status: 'from-memory',
      source: 'Munson, Young, Okiishi, Fundamentals of Fluid Mechanics, example 12.3',
      inputs: { Q: 0.5, D: 4, K: 20, required: 15, p: 14.7, p_v: 0.5069, gamma: 62.22 },
      expected: 7.65,
      tolerance: absolute(0.05),
    },
  ],
};
