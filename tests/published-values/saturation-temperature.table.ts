import { saturationTemperature } from '@ebbline/shared/fluid-properties/saturation-temperature';
import { absolute, type PublishedTable } from './published-table';

export const saturationTemperatureTable: PublishedTable = {
  title: 'saturation temperature, °C, of p kPa (published in K: less 273.15)',
  subject: { equation: saturationTemperature },
  evaluate: (equation, { pKPa }) => equation((pKPa ?? Number.NaN) * 1000),
  rows: [
    {
      id: 'if97-tsat-0.1',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 36',
      inputs: { pKPa: 100.0 },
      expected: 99.605919,
      tolerance: absolute(1e-6),
    },
    {
      id: 'if97-tsat-10',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 36',
      inputs: { pKPa: 10000 },
      expected: 310.999488,
      tolerance: absolute(1e-6),
    },
    {
      id: 'tsat-5kPa',
      status: 'published',
      source: 'IAPWS R7-97(2012) eq. 31',
      inputs: { pKPa: 5 },
      expected: 32.875,
      tolerance: absolute(0.001),
    },
    {
      id: 'tsat-20kPa',
      status: 'published',
      source: 'IAPWS R7-97(2012) eq. 31',
      inputs: { pKPa: 20 },
      expected: 60.059,
      tolerance: absolute(0.001),
    },
    {
      id: 'tsat-30kPa',
      status: 'published',
      source: 'IAPWS R7-97(2012) eq. 31',
      inputs: { pKPa: 30 },
      expected: 69.095,
      tolerance: absolute(0.001),
    },
    {
      id: 'tsat-60kPa',
      status: 'published',
      source: 'IAPWS R7-97(2012) eq. 31',
      inputs: { pKPa: 60 },
      expected: 85.926,
      tolerance: absolute(0.001),
    },
    {
      id: 'atm-boil-2000',
      status: 'published',
      source: 'IAPWS R7-97 eq. 31 at the ISO 2533 pressure',
      inputs: { pKPa: 79.495 },
      expected: 93.32,
      tolerance: absolute(0.01),
    },
    {
      id: 'boiling-margin t_boil',
      status: 'published',
      source: 'IAPWS R7-97 region 4',
      inputs: { pKPa: 22.0 },
      expected: 62.133,
      tolerance: absolute(0.002),
    },
  ],
};
