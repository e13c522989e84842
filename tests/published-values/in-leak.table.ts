import { freeAirK, freeAirPa } from '@ebbline/shared/fluid-properties/air';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { buildRichUnitM, runRichUnitM } from '../helpers/rich-unit-m';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const throughput = (freeAir: number, t: number): number => freeAir * freeAirPa * ((t + 273.15) / freeAirK);

/** Air that comes into a vapour space at rest: its pressure rises steadily, the vapour's part of it stands still. */
function pressureRiseOnSite({ V = 0, p1 = 0, p2 = 0, dt = 0, t = 0 }: PublishedRow['inputs']): number {
  const built = buildRichUnitM({
    design: {
      separatorAreaM2: null,
      volumes: { ...designNotStated.volumes, separatorGasM3: V / 1000 },
      commissioned: { ...designNotStated.commissioned, gasLoadM3PerS: 0 },
    },
  });
  const vapour = saturationPressure(celsius(t));
  for (let s = 0; s <= dt; s += 1) {
    runRichUnitM(built, s * 1000);
    built.set('return.temperature', t, s * 1000);
    built.set('separator.pressure', vapour + (p1 + ((p2 - p1) * s) / dt) * 1000, s * 1000);
    built.set('vacuum.running', 0, s * 1000);
    built.set('vacuum.exhaustFlow', 0, s * 1000);
    deriveHall(built.site, built.state, 0, s * 1000);
    deriveUnit(built.site, built.state, 0, s * 1000, false);
  }
  return throughput(built.value('inLeak'), t);
}

export const inLeakTable: PublishedTable = {
  title: 'in-leak by a pressure-rise test, Pa m³/s',
  subject: { point: 'inLeak' },
  evaluate: (equation, { V = 0, p1 = 0, p2 = 0, dt = 0 }) => equation(p1 * V, p2 * V, dt),
  // A site has an in-leak as free air, and its gas over water: both are turned round here.
  onSite: { point: 'inLeak', evaluate: pressureRiseOnSite, tolerance: relative(0.001) },
  rows: [
    {
      id: 'leak-tank Q',
      status: 'computed',
      source: 'pressure-rise method, ideal gas (computed)',
      inputs: { V: 80, p1: 40, p2: 40.75, dt: 600, t: 25 },
      expected: 0.1,
      tolerance: relative(0.001),
    },
    {
      id: 'leak-pdv Q',
      status: 'published',
      source: 'two pressures of the worked example of 40 CFR 1065.644: 2 L from 25.3 to 50.6 kPa in 70 s',
      inputs: { V: 2, p1: 25.3, p2: 50.6, dt: 70, t: 20 },
      expected: 0.72286,
      tolerance: absolute(1e-5),
    },
  ],
};

/** Alternating tanks: each litre of water that leaves makes room for a litre of gas that has to be drawn down. */
export const gasAllowanceTable: PublishedTable = {
  title: 'gas load that alternating tanks make by working, free L/min',
  subject: { point: 'gasAllowance' },
  evaluate: (equation, { q = 0, dp = 0 }) => (equation(q / 60_000, dp * 1000, 0) / freeAirPa) * 60_000,
  onSite: {
    point: 'gasAllowance',
    evaluate: ({ q = 0, dp = 0 }) =>
      onRichUnit(
        'gasAllowance',
        {
          'loop.flow': q / 60_000,
          'separator.pressure': 32_000,
          'supplyTank.pressure': 32_000 + dp * 1000,
          'return.temperature': 20,
        },
        { shape: 'b', design: { commissioned: { ...designNotStated.commissioned, gasLoadM3PerS: 0 } } },
      ) * 60_000,
  },
  rows: [
    {
      id: '100 L/min × 42 kPa',
      status: 'computed',
      source: 'ideal gas law, by hand: 100 × 42/101.325; printed as 41',
      inputs: { q: 100, dp: 42 },
      expected: 41.45,
      tolerance: absolute(0.01),
    },
  ],
};
