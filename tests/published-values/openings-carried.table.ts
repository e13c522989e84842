import { freeAirDensity } from '@ebbline/shared/fluid-properties/air';
import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { boreArea } from '@ebbline/shared/hydraulics/open-hose';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { onRichUnit } from './on-rich-unit';
import { relative, type PublishedRow, type PublishedTable } from './published-table';

const source =
  'isentropic nozzle flow, NACA Report 1135: air through a hole of 1 mm, C_d = 1, from 101.325 kPa and 20 °C';
const hole = (id: string, m: number, p: number): PublishedRow => ({
  id,
  status: 'published',
  source,
  inputs: { d: 1, p0: 101.325, t0: 20, p, m },
  expected: 1,
  tolerance: relative(0.001),
});
/** kg/s, choked and not. A reserve of just that flow carries one such hole, and none that is larger. */
const rows = [hole('inleak-1mm-30', 1.87846e-4, 30), hole('inleak-1mm-80', 1.56653e-4, 80)];

/** A unit whose idle source carries just the published flow at its pressure, with hoses of the published bore. */
function onSite(point: string): (inputs: PublishedRow['inputs']) => number {
  return ({ d = Number.NaN, p0 = Number.NaN, t0 = Number.NaN, p = Number.NaN, m = Number.NaN }) => {
    const returnC = 20;
    const suction = ((m / freeAirDensity) * 101_325) / (p * 1000 - saturationPressure(celsius(returnC)));
    const shares = point === 'openingsCarriedAll' ? 2 : 1;
    return onRichUnit(
      point,
      {
        'ambient.pressure': p0 * 1000,
        'hall.temperature': t0,
        'separator.pressure': p * 1000,
        'return.temperature': returnC,
        'vacuum.exhaustFlow': 0,
      },
      {
        design: { hoseBoreM: d / 1000, openingDischargeCoefficient: 1 },
        vacuumSource: {
          count: shares,
          control: 'speed',
          sealWaterC: null,
          pressurePa: [10_000, 100_000],
          suctionM3PerS: [suction / shares, suction / shares],
        },
      },
    );
  };
}

const flowOf = (bore: number, { p0 = 0, t0 = 0, p = 0 }: PublishedRow['inputs']): number =>
  airThroughOpening(1, bore, pascalAbsolute(p0 * 1000), celsius(t0), pascalAbsolute(p * 1000)) / freeAirDensity;

export const openingsCarriedTable: PublishedTable = {
  title: 'open hoses carried by the flow of one',
  subject: { point: 'openingsCarried' },
  evaluate: (equation, inputs) =>
    equation((inputs['m'] ?? 0) / freeAirDensity, flowOf(boreArea((inputs['d'] ?? 0) / 1000), inputs)),
  onSite: { point: 'openingsCarried', evaluate: onSite('openingsCarried') },
  rows,
};

export const openingsCarriedAllTable: PublishedTable = {
  ...openingsCarriedTable,
  title: 'open hoses carried by two sources that carry half of one each',
  subject: { point: 'openingsCarriedAll' },
  onSite: { point: 'openingsCarriedAll', evaluate: onSite('openingsCarriedAll') },
};

export const largestOpeningTable: PublishedTable = {
  title: 'largest opening carried, mm',
  subject: { point: 'largestOpeningCarried' },
  evaluate: (equation, inputs) => equation((inputs['m'] ?? 0) / freeAirDensity, flowOf(1, inputs)) * 1000,
  onSite: { point: 'largestOpeningCarried', evaluate: (inputs) => onSite('largestOpeningCarried')(inputs) * 1000 },
  rows,
};
