import { pressedWaterDensity, waterOfRegion1, type Region1 } from '@ebbline/shared/fluid-properties/if97-region-1';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { absolute, relative, type PublishedTable } from './published-table';

const property =
  (key: keyof Region1) =>
  (temperature: number, pressure: number): number =>
    waterOfRegion1(celsius(temperature), pascalAbsolute(pressure))[key];

export const region1VolumeTable: PublishedTable = {
  title: 'specific volume, m³/kg, of liquid water, IF97 region 1',
  subject: { equation: property('volume') },
  evaluate: (equation, { T = 0, p = 0 }) => equation(T - 273.15, p * 1e6),
  rows: [
    {
      id: 'if97-r1-300-3 v',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 3 },
      expected: 0.00100215168,
      tolerance: relative(5e-9),
    },
    {
      id: 'if97-r1-300-80 v',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 80 },
      expected: 0.000971180894,
      tolerance: relative(5e-9),
    },
  ],
};

export const region1EnthalpyTable: PublishedTable = {
  title: 'enthalpy, kJ/kg, of liquid water, IF97 region 1',
  subject: { equation: property('enthalpy') },
  evaluate: (equation, { T = 0, p = 0 }) => equation(T - 273.15, p * 1e6) / 1000,
  rows: [
    {
      id: 'if97-r1-300-3 h',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 3 },
      expected: 115.331273,
      tolerance: relative(5e-9),
    },
    {
      id: 'if97-r1-300-80 h',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 80 },
      expected: 184.142828,
      tolerance: relative(5e-9),
    },
  ],
};

export const region1InternalEnergyTable: PublishedTable = {
  title: 'internal energy, kJ/kg, of liquid water, IF97 region 1',
  subject: { equation: property('internalEnergy') },
  evaluate: (equation, { T = 0, p = 0 }) => equation(T - 273.15, p * 1e6) / 1000,
  rows: [
    {
      id: 'if97-r1-300-3 u',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 3 },
      expected: 112.324818,
      tolerance: relative(5e-9),
    },
    {
      id: 'if97-r1-300-80 u',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 80 },
      expected: 106.448356,
      tolerance: relative(5e-9),
    },
  ],
};

export const region1EntropyTable: PublishedTable = {
  title: 'entropy, kJ/(kg K), of liquid water, IF97 region 1',
  subject: { equation: property('entropy') },
  evaluate: (equation, { T = 0, p = 0 }) => equation(T - 273.15, p * 1e6) / 1000,
  rows: [
    {
      id: 'if97-r1-300-3 s',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 3 },
      expected: 0.392294792,
      tolerance: relative(5e-9),
    },
    {
      id: 'if97-r1-300-80 s',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 80 },
      expected: 0.368563852,
      tolerance: relative(5e-9),
    },
  ],
};

export const region1HeatCapacityTable: PublishedTable = {
  title: 'heat capacity, kJ/(kg K), of liquid water, IF97 region 1',
  subject: { equation: property('heatCapacity') },
  evaluate: (equation, { T = 0, p = 0 }) => equation(T - 273.15, p * 1e6) / 1000,
  rows: [
    {
      id: 'if97-r1-300-3 cp',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 3 },
      expected: 4.17301218,
      tolerance: relative(5e-9),
    },
    {
      id: 'if97-r1-300-80 cp',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 80 },
      expected: 4.01008987,
      tolerance: relative(5e-9),
    },
  ],
};

export const region1SoundSpeedTable: PublishedTable = {
  title: 'speed of sound, m/s, of liquid water, IF97 region 1',
  subject: { equation: property('soundSpeed') },
  evaluate: (equation, { T = 0, p = 0 }) => equation(T - 273.15, p * 1e6),
  rows: [
    {
      id: 'if97-r1-300-3 w',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 3 },
      expected: 1507.73921,
      tolerance: relative(5e-9),
    },
    {
      id: 'if97-r1-300-80 w',
      status: 'published',
      source: 'IAPWS R7-97(2012), Table 5 (region 1 verification)',
      inputs: { T: 300, p: 80 },
      expected: 1634.69054,
      tolerance: relative(5e-9),
    },
  ],
};

export const pressedWaterDensityTable: PublishedTable = {
  title: 'density of liquid water, kg/m³, of t °C and p kPa',
  subject: { equation: pressedWaterDensity },
  evaluate: (equation, { t = 0, p = 0 }) => equation(t, p * 1000),
  rows: [
    {
      id: 'water-45C-20kPa',
      status: 'published',
      source: 'IAPWS R7-97(2012) region 1',
      inputs: { t: 45, p: 20 },
      expected: 990.187,
      tolerance: absolute(0.002),
    },
    {
      id: 'water-45C-400kPa',
      status: 'published',
      source: 'IAPWS R7-97(2012) region 1',
      inputs: { t: 45, p: 400 },
      expected: 990.354,
      tolerance: absolute(0.002),
    },
  ],
};
