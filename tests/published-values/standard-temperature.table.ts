import { standardTemperature } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { absolute, type PublishedTable } from './published-table';

export const standardTemperatureTable: PublishedTable = {
  title: 'standard temperature, °C, at geopotential altitude H m',
  subject: { equation: standardTemperature },
  evaluate: (equation, { H }) => equation(H ?? Number.NaN),
  rows: [
    {
      id: 'atm-H0 t',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 0 },
      expected: 15,
      tolerance: absolute(0.01),
    },
    {
      id: 'atm-H500 t',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 500 },
      expected: 11.75,
      tolerance: absolute(0.01),
    },
    {
      id: 'atm-H1500 t',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 1500 },
      expected: 5.25,
      tolerance: absolute(0.01),
    },
    {
      id: 'atm-H2000 t',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 2000 },
      expected: 2.0,
      tolerance: absolute(0.01),
    },
    {
      id: 'atm-H3000 t',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 3000 },
      expected: -4.5,
      tolerance: absolute(0.01),
    },
    {
      id: 'atm-H4000 t',
      status: 'published',
      source: 'ISO 2533:1975 / ICAO Doc 7488; ASHRAE Handbook - Fundamentals 2017 ch.1 Table 1',
      inputs: { H: 4000 },
      expected: -11.0,
      tolerance: absolute(0.01),
    },
  ],
};
