import { liquidWaterViscosity } from '@ebbline/shared/fluid-properties/liquid-water';
import { relative, type PublishedTable } from './published-table';

export const liquidWaterViscosityTable: PublishedTable = {
  title: 'viscosity of liquid water, Pa s, of t °C or T K',
  subject: { equation: liquidWaterViscosity },
  evaluate: (equation, { t, T }) => equation(t ?? (T ?? Number.NaN) - 273.15),
  rows: [
    {
      id: 'sr6-260 mu',
      source: 'IAPWS SR6-08(2011), Table 8',
      inputs: { T: 260 },
      expected: 0.00305836075,
      tolerance: relative(2e-8),
    },
    {
      id: 'sr6-298.15 mu',
      source: 'IAPWS SR6-08(2011), Table 8',
      inputs: { T: 298.15 },
      expected: 0.000889996774,
      tolerance: relative(2e-8),
    },
    {
      id: 'water-20C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 20 },
      expected: 0.00100157,
      tolerance: relative(1e-5),
    },
    {
      id: 'water-25C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 25 },
      expected: 0.000889997,
      tolerance: relative(1e-5),
    },
    {
      id: 'water-35C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 35 },
      expected: 0.000719121,
      tolerance: relative(1e-5),
    },
    {
      id: 'water-45C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 45 },
      expected: 0.000595779,
      tolerance: relative(1e-5),
    },
    {
      id: 'water-50C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 50 },
      expected: 0.000546527,
      tolerance: relative(1e-5),
    },
    {
      id: 'water-55C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 55 },
      expected: 0.000503633,
      tolerance: relative(1e-5),
    },
    {
      id: 'water-60C mu',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 60 },
      expected: 0.000466039,
      tolerance: relative(1e-5),
    },
  ],
};
