import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { absolute, relative, type PublishedTable } from './published-table';

export const liquidWaterDensityTable: PublishedTable = {
  title: 'density of liquid water, kg/m³, of t °C or T K',
  subject: { equation: liquidWaterDensity },
  evaluate: (equation, { t, T }) => equation(t ?? (T ?? Number.NaN) - 273.15),
  rows: [
    {
      id: 'sr6-260 rho',
      source: 'IAPWS SR6-08(2011), Table 8',
      inputs: { T: 260 },
      expected: 997.06836,
      tolerance: relative(2e-8),
    },
    {
      id: 'sr6-298.15 rho',
      source: 'IAPWS SR6-08(2011), Table 8',
      inputs: { T: 298.15 },
      expected: 997.047013,
      tolerance: relative(2e-8),
    },
    {
      id: 'water-20C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 20 },
      expected: 998.207,
      tolerance: absolute(0.02),
    },
    {
      id: 'water-25C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 25 },
      expected: 997.047,
      tolerance: absolute(0.02),
    },
    {
      id: 'water-35C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 35 },
      expected: 994.033,
      tolerance: absolute(0.02),
    },
    {
      id: 'water-45C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 45 },
      expected: 990.212,
      tolerance: absolute(0.02),
    },
    {
      id: 'water-50C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 50 },
      expected: 988.035,
      tolerance: absolute(0.02),
    },
    {
      id: 'water-55C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 55 },
      expected: 985.693,
      tolerance: absolute(0.02),
    },
    {
      id: 'water-60C rho',
      source: 'IAPWS SR6-08(2011) equations (valid 253.15..383.15 K at 0.1 MPa)',
      inputs: { t: 60 },
      expected: 983.195,
      tolerance: absolute(0.02),
    },
  ],
};
