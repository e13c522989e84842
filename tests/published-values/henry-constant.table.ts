import { henryConstant, type DissolvedGas } from '@ebbline/shared/fluid-properties/henry-constant';
import { celsius } from '@ebbline/shared/units/quantity';
import { absolute, type PublishedTable } from './published-table';

const of = (gas: DissolvedGas) => (temperature: number) => henryConstant(gas, celsius(temperature));

export const henryN2Table: PublishedTable = {
  title: 'Henry constant of nitrogen in water, ln(GPa)',
  subject: { equation: of('N2') },
  evaluate: (equation, { T = 0 }) => Math.log(equation(T - 273.15) / 1e9),
  rows: [
    {
      id: 'henry-N2-300',
      status: 'published',
      source: 'IAPWS G7-04, Table 6',
      inputs: { T: 300 },
      expected: 2.1716,
      tolerance: absolute(6e-5),
    },
  ],
};

export const henryO2Table: PublishedTable = {
  title: 'Henry constant of oxygen in water, ln(GPa)',
  subject: { equation: of('O2') },
  evaluate: (equation, { T = 0 }) => Math.log(equation(T - 273.15) / 1e9),
  rows: [
    {
      id: 'henry-O2-300',
      status: 'published',
      source: 'IAPWS G7-04, Table 6',
      inputs: { T: 300 },
      expected: 1.5024,
      tolerance: absolute(6e-5),
    },
  ],
};

export const henryCO2Table: PublishedTable = {
  title: 'Henry constant of carbon dioxide in water, ln(GPa)',
  subject: { equation: of('CO2') },
  evaluate: (equation, { T = 0 }) => Math.log(equation(T - 273.15) / 1e9),
  rows: [
    {
      id: 'henry-CO2-300',
      status: 'published',
      source: 'IAPWS G7-04, Table 6',
      inputs: { T: 300 },
      expected: -1.7508,
      tolerance: absolute(6e-5),
    },
  ],
};
