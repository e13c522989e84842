import { freeAirK, freeAirPa } from '@ebbline/shared/fluid-properties/air';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { onUnitM, secondSensors } from './on-unit-m';
import { oneUnitInSi } from './one-unit-in-si';
import { unitsOfMeasureTable } from './units-of-measure.table';
import { relative, type PublishedTable } from './published-table';

/** Pa m³/s of a free-air flow, for gas of t °C. */
const throughput = (freeAir: number, t: number): number => freeAir * freeAirPa * ((t + 273.15) / freeAirK);

/** The balance of `pumpdown-ultimate` turned round: from the equilibrium pressure back to the throughput, 1 Pa of 250 Pa of dry air being 0.4 %. */
export const gasLoadTable: PublishedTable = {
  title: 'gas load, as throughput in Pa L/s, of S L/s at p kPa over water at t °C',
  subject: { point: 'gasLoad' },
  evaluate: (equation, { p = Number.NaN, S = Number.NaN, t = Number.NaN }) =>
    throughput(equation(1, S / 1000, p * 1000, saturationPressure(celsius(t)), t), t) * 1000,
  onSite: {
    point: 'gasLoad',
    evaluate: ({ p = Number.NaN, S = Number.NaN, t = Number.NaN }) =>
      throughput(
        onUnitM(
          'gasLoad',
          { 'separator.pressure': p * 1000, 'return.temperature': t, 'vacuum.speed': 1 },
          {
            without: [...secondSensors, 'vacuum.exhaustFlow'],
            vacuumSource: {
              count: 1,
              control: 'speed',
              sealWaterC: null,
              pressurePa: [1_000, 10_000],
              suctionM3PerS: [S / 1000, S / 1000],
            },
          },
        ),
        t,
      ) * 1000,
  },
  rows: [
    {
      id: 'pumpdown-ultimate turned round',
      status: 'computed',
      source: 'throughput balance + Dalton (computed)',
      inputs: { p: 4.4967, S: 2, t: 30 },
      expected: 500,
      tolerance: relative(0.004),
    },
  ],
};

/** An exhaust meter's flow is the gas load as it stands: one cm³/min at 0 °C told by it. */
export const gasLoadByMeterTable: PublishedTable = {
  title: 'gas load by an exhaust meter that shows 1 cm³/min at 0 °C, as throughput in Pa m³/s',
  subject: unitsOfMeasureTable.subject,
  evaluate: unitsOfMeasureTable.evaluate,
  onSite: {
    point: 'gasLoad',
    evaluate: ({ unit = Number.NaN }) =>
      throughput(onUnitM('gasLoad', { 'vacuum.exhaustFlow': oneUnitInSi(unit) / 1000 }), 0),
  },
  rows: unitsOfMeasureTable.rows.filter(({ id }) => id === 'sccm'),
};
