import { waterThermalConductivity, waterViscosity } from '@ebbline/shared/fluid-properties/water-transport';
import { absolute, type PublishedTable } from './published-table';

export const waterViscosityTable: PublishedTable = {
  title: 'viscosity of water, µPa s, of ρ and T',
  subject: { equation: waterViscosity },
  evaluate: (equation, { T = 0, rho = 0 }) => equation(T - 273.15, rho) * 1e6,
  rows: [
    {
      id: 'visc-998-298.15',
      status: 'published',
      source: 'IAPWS R12-08, Table 4',
      inputs: { rho: 998, T: 298.15 },
      expected: 889.7351,
      tolerance: absolute(1e-6),
    },
    {
      id: 'visc-1000-373.15',
      status: 'published',
      source: 'IAPWS R12-08, Table 4',
      inputs: { rho: 1000, T: 373.15 },
      expected: 307.883622,
      tolerance: absolute(1e-6),
    },
  ],
};

export const waterThermalConductivityTable: PublishedTable = {
  title: 'thermal conductivity of water, mW/(m K), of ρ and T',
  subject: { equation: waterThermalConductivity },
  evaluate: (equation, { T = 0, rho = 0 }) => equation(T - 273.15, rho) * 1000,
  rows: [
    {
      id: 'cond-998-298.15',
      status: 'published',
      source: 'IAPWS R15-11, Table 4',
      inputs: { rho: 998, T: 298.15 },
      expected: 607.712868,
      tolerance: absolute(1e-6),
    },
  ],
};
