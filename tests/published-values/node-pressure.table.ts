import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius } from '@ebbline/shared/units/quantity';
import { onUnitM } from './on-unit-m';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const unitM = 'parameter set of unit M, computed by hand; printed to two or three digits';
/** Places of unit M: supply tank 74 kPa at 1.0 m and 36.3 °C, separator 32 kPa at 1.2 m and 45 °C. */
const supply = { main: 0, p_anchor: 74, z_anchor: 1, t: 36.3 };
const returned = { main: 1, p_anchor: 32, z_anchor: 1.2, t: 45 };
const profile = (expected: number): PublishedRow => ({
  id: 'static-profile',
  status: 'computed',
  source: 'Bernoulli with zero loss (computed)',
  inputs: { main: 0, p_anchor: 55, z_anchor: 0.4, z: 2.2, t: 40, loss: 0 },
  expected,
  tolerance: absolute(0.002),
});
const place = (id: string, inputs: PublishedRow['inputs'], expected: number): PublishedRow => ({
  id,
  status: 'computed',
  source: unitM,
  inputs,
  expected,
  tolerance: relative(0.01),
});

const onSite =
  (point: string) =>
  (inputs: PublishedRow['inputs']): number => {
    const { main, p_anchor = 0, z_anchor = 0, z = 0, t = 0, loss = 0 } = inputs;
    const isReturn = main === 1;
    return (
      onUnitM(
        `node.here.${point}`,
        isReturn
          ? { 'separator.pressure': p_anchor * 1000, 'return.temperature': t }
          : { 'supplyTank.pressure': p_anchor * 1000, 'supply.temperature': t },
        {
          design: isReturn ? { returnInletM: z_anchor } : { supplyTankSurfaceM: z_anchor },
          nodes: [
            {
              id: 'here',
              name: 'here',
              main: isReturn ? 'return' : 'supply',
              elevationM: z,
              lossAtRatedFlowPa: loss * 1000,
              place: 0,
            },
          ],
        },
      ) / 1000
    );
  };

/** The loss counts down on the supply main, where it lies behind the anchor, and up on the return main, where it lies before. */
const evaluate: PublishedTable['evaluate'] = (equation, { main, p_anchor = 0, z_anchor = 0, z = 0, t = 0, loss = 0 }) =>
  equation(p_anchor * 1000, liquidWaterDensity(celsius(t)), z_anchor, z, (main === 1 ? -loss : loss) * 1000) / 1000;

export const nodePressureTable: PublishedTable = {
  title: 'pressure at a wetted place now, kPa',
  subject: { point: 'node.<id>.pressure' },
  evaluate,
  onSite: { point: 'node.<id>.pressure', evaluate: onSite('pressure') },
  rows: [
    profile(37.485),
    place('unit-m-margin running', { ...supply, z: -0.5, loss: 0.8 }, 101.3 - 13.5),
    place('unit-m-return-top running', { ...returned, z: 2, loss: 8.9 }, 33),
  ],
};

export const nodePressureStoppedTable: PublishedTable = {
  title: 'pressure at a wetted place once the water stands, kPa',
  subject: { point: 'node.<id>.pressureStopped' },
  evaluate: (equation, inputs) => evaluate(equation, { ...inputs, loss: 0 }),
  onSite: { point: 'node.<id>.pressureStopped', evaluate: onSite('pressureStopped') },
  rows: [
    profile(37.485),
    place('unit-m-low-point stopped', { ...supply, z: -0.5, loss: 0.8 }, 88.6),
    place('unit-m-return-top stopped', { ...returned, z: 2, loss: 8.9 }, 24),
  ],
};
