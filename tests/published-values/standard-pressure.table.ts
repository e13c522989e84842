import { metre } from '@ebbline/shared/units/quantity';
import { geopotentialAltitude, standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { absolute, relative, type PublishedTable } from './published-table';

export const standardPressureTable: PublishedTable = {
  title: 'standard pressure, Pa, at geopotential altitude H or geometric altitude Z, m',
  subject: { equation: standardPressure },
  evaluate: (equation, { H, Z }) => equation(H ?? geopotentialAltitude(metre(Z ?? Number.NaN))),
  rows: [
    {
      id: 'atm-H0 p',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 0 },
      expected: 101325,
      tolerance: absolute(1.0),
    },
    {
      id: 'atm-H500 p',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 500 },
      expected: 95461,
      tolerance: absolute(1.0),
    },
    {
      id: 'atm-H1500 p',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 1500 },
      expected: 84556,
      tolerance: absolute(1.0),
    },
    {
      id: 'atm-H2000 p',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 2000 },
      expected: 79495,
      tolerance: absolute(1.0),
    },
    {
      id: 'atm-H3000 p',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 3000 },
      expected: 70108,
      tolerance: absolute(1.0),
    },
    {
      id: 'atm-H4000 p',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 4000 },
      expected: 61640,
      tolerance: absolute(1.0),
    },
    {
      id: 'atm-Z2000 p',
      status: 'published',
      source: 'US Standard Atmosphere 1976 / ISO 2533 tables by geometric altitude',
      inputs: { Z: 2000 },
      expected: 79501,
      tolerance: relative(5e-5),
    },
  ],
};
