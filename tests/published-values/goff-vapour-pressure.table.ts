import { goffVapourPressure } from '@ebbline/shared/fluid-properties/goff-vapour-pressure';
import { absolute, type PublishedTable } from './published-table';

export const goffVapourPressureTable: PublishedTable = {
  title: 'vapour pressure over water by Goff (1957), kPa',
  subject: { equation: goffVapourPressure },
  evaluate: (equation, { t_dew = Number.NaN }) => equation(t_dew) / 1000,
  rows: [
    {
      id: 'cfr-pw-9.5',
      status: 'published',
      source: '40 CFR 1065.645(b) worked example (Goff 1957)',
      inputs: { t_dew: 9.5 },
      expected: 1.186581,
      tolerance: absolute(1e-6),
    },
  ],
};

export const scaledVapourPressureTable: PublishedTable = {
  title: 'vapour pressure of moist air by its relative humidity, Pa',
  subject: { equation: goffVapourPressure },
  evaluate: (equation, { RH = 0, t = 0 }) => (RH / 100) * equation(t),
  rows: [
    {
      id: 'cfr-pw-scaled',
      status: 'published',
      source: '40 CFR 1065.645(d) worked example',
      inputs: { RH: 39.61, t: 20 },
      expected: 925.717,
      tolerance: absolute(0.02),
    },
  ],
};

export const vapourMoleFractionTable: PublishedTable = {
  title: 'mole fraction of water in moist air, mol/mol',
  subject: { equation: goffVapourPressure },
  evaluate: (equation, { RH = 0, t = 0, p = 0 }) => ((RH / 100) * equation(t)) / (p * 1000),
  rows: [
    {
      id: 'cfr-x-rh',
      status: 'published',
      source: '40 CFR 1065.645(c) worked example',
      inputs: { RH: 50.77, p: 99.98, t: 20 },
      expected: 0.011868,
      tolerance: absolute(1e-6),
    },
  ],
};
