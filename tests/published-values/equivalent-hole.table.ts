import { freeAirDensity } from '@ebbline/shared/fluid-properties/air';
import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { onRichUnit } from './on-rich-unit';
import { relative, type PublishedRow, type PublishedTable } from './published-table';

/** The exhaust meter tells the air of the row, the loop has no other gas. */
const onSite = (point: string, pressurePoint: string) => ({
  point,
  evaluate: ({ m = Number.NaN, p0 = Number.NaN, T0 = Number.NaN, p_loop = Number.NaN }: PublishedRow['inputs']) =>
    onRichUnit(
      point,
      {
        'vacuum.exhaustFlow': m / freeAirDensity,
        'ambient.pressure': p0 * 1000,
        'hall.temperature': T0 - 273.15,
        [pressurePoint]: p_loop * 1000,
      },
      {
        design: {
          openingDischargeCoefficient: 1,
          volumes: designNotStated.volumes,
          commissioned: { ...designNotStated.commissioned, gasLoadM3PerS: 0 },
        },
      },
    ) * 1000,
});

const row = (id: string, p_loop: number, m: number): PublishedRow => ({
  id: `${id} turned round`,
  status: 'published',
  source:
    'isentropic nozzle flow, NACA 1135; choked below 0.5283 p0 = 53.53 kPa: the flow through 1 mm gives 1 mm back',
  inputs: { m, p0: 101.325, T0: 293.15, p_loop },
  expected: 1,
  tolerance: relative(0.001),
});

const evaluate: PublishedTable['evaluate'] = (
  equation,
  { m = Number.NaN, p0 = Number.NaN, T0 = Number.NaN, p_loop = Number.NaN },
) => equation(m / freeAirDensity, 1, p0 * 1000, T0 - 273.15, p_loop * 1000) * 1000;

export const equivalentHoleTable: PublishedTable = {
  title: 'hole of an in-leak of m kg/s into p_loop kPa on the return side, mm, C_d = 1',
  subject: { point: 'equivalentHole' },
  evaluate,
  onSite: onSite('equivalentHole', 'separator.pressure'),
  rows: [row('inleak-1mm-30', 30, 0.000187846), row('inleak-1mm-80', 80, 0.000156653)],
};

export const equivalentHoleSupplyTable: PublishedTable = {
  title: 'hole of an in-leak of m kg/s into p_loop kPa on the supply side, mm, C_d = 1',
  subject: { point: 'equivalentHoleSupply' },
  evaluate,
  onSite: onSite('equivalentHoleSupply', 'supplyTank.pressure'),
  rows: [row('inleak-1mm-80', 80, 0.000156653), row('inleak-1mm-95', 95, 9.36347e-5)],
};
