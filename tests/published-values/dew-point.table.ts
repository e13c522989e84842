import { dewPoint } from '@ebbline/shared/fluid-properties/moist-air';
import { celsius } from '@ebbline/shared/units/quantity';
import { onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

export const dewPointTable: PublishedTable = {
  title: 'dew point, °C, of t °C and RH %',
  subject: { point: 'dewPoint' },
  evaluate: (equation, { t, RH }) => equation(t ?? Number.NaN, (RH ?? Number.NaN) / 100),
  onSite: {
    point: 'dewPoint',
    evaluate: ({ t = Number.NaN, RH = Number.NaN }) =>
      onUnitM('dewPoint', { 'hall.temperature': t, 'hall.humidity': RH / 100 }),
  },
  rows: [
    {
      id: 'dew-22-60',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B formulas (constants 6.112 hPa, 17.62, 243.12 degC); cross-check ASHRAE 2017 ch.1',
      inputs: { t: 22, RH: 60 },
      expected: 13.89,
      tolerance: absolute(0.03),
    },
    {
      id: 'dew-25-50',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B formulas (constants 6.112 hPa, 17.62, 243.12 degC); cross-check ASHRAE 2017 ch.1',
      inputs: { t: 25, RH: 50 },
      expected: 13.86,
      tolerance: absolute(0.03),
    },
    {
      id: 'dew-30-50',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B formulas (constants 6.112 hPa, 17.62, 243.12 degC); cross-check ASHRAE 2017 ch.1',
      inputs: { t: 30, RH: 50 },
      expected: 18.45,
      tolerance: absolute(0.03),
    },
    {
      id: 'dew-35-40',
      status: 'published',
      source: 'WMO-No. 8 Annex 4.B formulas (constants 6.112 hPa, 17.62, 243.12 degC); cross-check ASHRAE 2017 ch.1',
      inputs: { t: 35, RH: 40 },
      expected: 19.38,
      tolerance: absolute(0.03),
    },
    {
      id: 'ashrae-ex1 t_dew',
      status: 'published',
      source: 'ASHRAE Handbook - Fundamentals 2017, ch.1 Example 1 (read from the chart, hence loose)',
      inputs: { t: 40, RH: 14 },
      expected: 7,
      tolerance: absolute(0.5),
    },
  ],
};

/** Of a surface: its temperature less the dew point of `dew-25-50`. */
export const dewPointMarginTable: PublishedTable = {
  title: 'margin to the dew point, K, of a supply pipe at `surface` °C in air of t °C and RH %',
  subject: { point: 'dewPointMargin' },
  evaluate: (equation, { t = Number.NaN, RH = Number.NaN, surface = Number.NaN }) =>
    equation(surface, dewPoint(celsius(t), RH / 100)),
  onSite: {
    point: 'dewPointMargin',
    evaluate: ({ t = Number.NaN, RH = Number.NaN, surface = Number.NaN }) =>
      onUnitM('dewPointMargin', {
        'hall.temperature': t,
        'hall.humidity': RH / 100,
        'supply.temperature': surface,
        'facility.supply.temperature': surface + 5,
      }),
  },
  rows: dewPointTable.rows
    .filter(({ id }) => id === 'dew-25-50')
    .map((row) => ({ ...row, inputs: { ...row.inputs, surface: 20 }, expected: 20 - row.expected })),
};

export const dewPointMarginOfFacilityPipeTable: PublishedTable = {
  ...dewPointMarginTable,
  title: 'margin to the dew point, K, of a facility pipe that is the colder one',
  onSite: {
    point: 'dewPointMargin',
    evaluate: ({ t = Number.NaN, RH = Number.NaN, surface = Number.NaN }) =>
      onUnitM('dewPointMargin', {
        'hall.temperature': t,
        'hall.humidity': RH / 100,
        'supply.temperature': surface + 5,
        'facility.supply.temperature': surface,
      }),
  },
};
