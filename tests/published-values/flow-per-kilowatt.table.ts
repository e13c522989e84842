import { liquidWaterDensity, liquidWaterHeatCapacity } from '@ebbline/shared/fluid-properties/liquid-water';
import { massFlow } from '@ebbline/shared/heat/mass-flow';
import { celsius, cubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import { onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

const source =
  'Q = rho q cp dT with SR6-08 properties (computed); consistent with the trade figure 1.0..1.5 L/min per kW';
const mean = celsius(35);
const perKilowatt = (wattsOfOneCubicMetrePerSecond: number): number => (1000 / wattsOfOneCubicMetrePerSecond) * 60_000;

export const flowPerKilowattTable: PublishedTable = {
  title: 'flow, L/min, for 1 kW at a rise of dT K about 35 °C',
  subject: { point: 'heatRemoved' },
  evaluate: (equation, { dT = Number.NaN }) =>
    perKilowatt(
      equation(
        massFlow(liquidWaterDensity(mean), cubicMetrePerSecond(1)),
        liquidWaterHeatCapacity(mean),
        mean - dT / 2,
        mean + dT / 2,
      ),
    ),
  onSite: {
    point: 'heatRemoved',
    evaluate: ({ dT = Number.NaN }) =>
      perKilowatt(
        onUnitM('heatRemoved', {
          'loop.flow': 1,
          'supply.temperature': mean - dT / 2,
          'return.temperature': mean + dT / 2,
        }),
      ),
  },
  rows: [
    { id: 'flow-per-kW-5', status: 'computed', source, inputs: { dT: 5 }, expected: 2.889, tolerance: absolute(0.006) },
    {
      id: 'flow-per-kW-10',
      status: 'computed',
      source,
      inputs: { dT: 10 },
      expected: 1.444,
      tolerance: absolute(0.006),
    },
  ],
};

export const branchFlowPerKilowattTable: PublishedTable = {
  ...flowPerKilowattTable,
  title: 'flow of a branch, L/min, for 1 kW at a rise of dT K about 35 °C',
  subject: { point: 'branch.<id>.heatRemoved' },
  onSite: {
    point: 'branch.<id>.heatRemoved',
    evaluate: ({ dT = Number.NaN }) =>
      perKilowatt(
        onUnitM('branch.r2.heatRemoved', {
          'branch.r2.flow': 1,
          'supply.temperature': mean - dT / 2,
          'branch.r2.return.temperature': mean + dT / 2,
        }),
      ),
  },
};
