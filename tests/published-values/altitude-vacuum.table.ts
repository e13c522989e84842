import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { celsius, metre } from '@ebbline/shared/units/quantity';
import { nodeAtTank, onUnitM, secondSensors } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

const source = 'ISO 2533 and IAPWS R7-97 (computed); tolerance: half of the last printed digit';
const boiling = saturationPressure(celsius(45));
/** Nominal earth radius of ISO 2533, m: altitude above sea level from geopotential altitude. */
const earthM = 6_356_766;
const geometric = (geopotentialM: number): number => (earthM * geopotentialM) / (earthM - geopotentialM);

/** What altitude leaves of the vacuum: ambient minus the pressure at which water of 45 °C boils. */
export const altitudeVacuumTable: PublishedTable = {
  title: 'available vacuum, kPa, at a geopotential altitude of H m',
  subject: { point: 'vacuumMargin' },
  evaluate: (equation, { H = Number.NaN }) => equation(standardPressure(metre(H)), boiling) / 1000,
  onSite: {
    point: 'vacuumMargin',
    evaluate: ({ H = Number.NaN }) =>
      onUnitM(
        'vacuumMargin',
        { 'supplyTank.pressure': boiling },
        { altitudeM: geometric(H), nodes: nodeAtTank('supply'), without: [...secondSensors, 'ambient.pressure'] },
      ) / 1000,
  },
  rows: [
    {
      id: 'altitude-vacuum 0',
      status: 'computed',
      source,
      inputs: { H: 0 },
      expected: 91.73,
      tolerance: absolute(0.005),
    },
    {
      id: 'altitude-vacuum 1500',
      status: 'computed',
      source,
      inputs: { H: 1500 },
      expected: 74.96,
      tolerance: absolute(0.005),
    },
    {
      id: 'altitude-vacuum 3000',
      status: 'computed',
      source,
      inputs: { H: 3000 },
      expected: 60.51,
      tolerance: absolute(0.005),
    },
  ],
};
