import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius } from '@ebbline/shared/units/quantity';
import { onRichUnit } from './on-rich-unit';
import { relative, type PublishedTable } from './published-table';

const sensors = {
  'supply.temperature': [0.15 * Math.sqrt(3), Number.NaN],
  'return.temperature': [0.15 * Math.sqrt(3), Number.NaN],
  'facility.supply.temperature': [1e-9, Number.NaN],
  'facility.return.temperature': [1e-9, Number.NaN],
  'loop.flow': [Number.NaN, 1e-9],
  'facility.flow': [Number.NaN, 1e-9],
} as const;

/**
 * 1.2 kg/s warmed by 10 K, each temperature known to 0.15 K: u(ΔT) = 0.2121 K of 10 K, and c_p to 0.1 % on both sides. A
 * facility side that carries 5 % more is then 0.05/√(0.02121² + 0.001² + (1.05 × 0.001)²) standard uncertainties away (GUM eq. 10).
 */
export const heatBalanceOnSiteTable: PublishedTable = {
  title: 'heat balance in standard uncertainties',
  subject: { point: 'heatBalanceSignificance' },
  evaluate: (equation, { m = 0, more = 0 }) => {
    const heat = m * 4179.4 * 10;
    return equation(heat, heat * Math.hypot(0.02121, 0.001), heat * (1 + more), heat * (1 + more) * 0.001);
  },
  onSite: {
    point: 'heatBalanceSignificance',
    evaluate: ({ m = 0, more = 0 }) =>
      onRichUnit(
        'heatBalanceSignificance',
        {
          'supply.temperature': 35,
          'return.temperature': 45,
          'facility.supply.temperature': 30,
          'facility.return.temperature': 40,
          'loop.flow': m / liquidWaterDensity(celsius(35)),
          'facility.flow': (m * (1 + more)) / liquidWaterDensity(celsius(30)),
        },
        { accuracy: sensors, design: { ratedHeatW: 50_000 } },
      ),
  },
  rows: [
    {
      id: 'heat-u of 10 K with 5 % more on the other side',
      status: 'computed',
      source: 'JCGM 100:2008 eq. 10 (computed by hand)',
      inputs: { m: 1.2, more: 0.05 },
      expected: 2.3519,
      tolerance: relative(0.01),
    },
  ],
};
