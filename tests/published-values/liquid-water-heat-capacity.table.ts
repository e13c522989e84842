import { liquidWaterHeatCapacity } from '@ebbline/shared/fluid-properties/liquid-water';
import { absolute, relative, type PublishedTable } from './published-table';

export const liquidWaterHeatCapacityTable: PublishedTable = {
  title: 'specific heat of liquid water, J/(kg K), of t °C or T K',
  subject: { equation: liquidWaterHeatCapacity },
  evaluate: (equation, { t, T }) => equation(t ?? (T ?? Number.NaN) - 273.15),
  rows: [
    {
      id: 'sr6-260 cp',
      source: 'IAPWS SR6-08(2011), Table 8',
      inputs: { T: 260 },
      expected: 4300.17472,
      tolerance: relative(2e-8),
    },
    {
      id: 'sr6-298.15 cp',
      source: 'IAPWS SR6-08(2011), Table 8',
      inputs: { T: 298.15 },
      expected: 4181.44618,
      tolerance: relative(2e-8),
    },
    {
      id: 'water-20C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 20 },
      expected: 4184.19,
      tolerance: absolute(3.0),
    },
    {
      id: 'water-25C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 25 },
      expected: 4181.45,
      tolerance: absolute(3.0),
    },
    {
      id: 'water-35C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 35 },
      expected: 4179.27,
      tolerance: absolute(3.0),
    },
    {
      id: 'water-45C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 45 },
      expected: 4180.04,
      tolerance: absolute(3.0),
    },
    {
      id: 'water-50C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 50 },
      expected: 4181.23,
      tolerance: absolute(3.0),
    },
    {
      id: 'water-55C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 55 },
      expected: 4182.86,
      tolerance: absolute(3.0),
    },
    {
      id: 'water-60C cp',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 60 },
      expected: 4184.9,
      tolerance: absolute(3.0),
    },
  ],
};
