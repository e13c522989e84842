import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedTable } from './published-table';

const secondsADay = 86_400;
/** Water at 45 °C, kg/m³ (IAPWS SR6-08, table: 990.2). */
const density45 = 990.2;

export const exhaustWaterTable: PublishedTable = {
  title: 'water that q free L/min of gas carry out over water of t °C at p kPa, kg a day',
  subject: { point: 'exhaustWaterLoss' },
  evaluate: (equation, { q = Number.NaN, t = Number.NaN, p = Number.NaN }) =>
    equation(q / 60_000, p * 1000, saturationPressure(celsius(t))) * secondsADay,
  onSite: {
    point: 'exhaustWaterLoss',
    evaluate: ({ q = Number.NaN, t = Number.NaN, p = Number.NaN }) =>
      onRichUnit('exhaustWaterLoss', {
        'vacuum.exhaustFlow': q / 60_000,
        'separator.pressure': p * 1000,
        'return.temperature': t,
      }) *
      density45 *
      secondsADay,
  },
  rows: [
    {
      id: '1 free L/min at 45 °C and 32 kPa',
      status: 'computed',
      source:
        'Dalton’s law and ideal gas, by hand: 0.0416 mol/min · 9.595/(32 − 9.595) · 18.015 g/mol; printed as 0.46',
      inputs: { q: 1, t: 45, p: 32 },
      expected: 0.462,
      tolerance: absolute(0.001),
    },
    {
      id: 'an open hose of 160 free L/min',
      status: 'computed',
      source: 'the same, of a cut that is left open; printed as 74',
      inputs: { q: 160, t: 45, p: 32 },
      expected: 73.9,
      tolerance: relative(0.002),
    },
  ],
};
