import { oxygenSaturation } from '@ebbline/shared/fluid-properties/dissolved-oxygen';
import { absolute, type PublishedTable } from './published-table';

export const oxygenSaturationTable: PublishedTable = {
  title: 'oxygen in fresh water under moist air at 101.325 kPa, mg/L',
  subject: { equation: oxygenSaturation },
  evaluate: (equation, { t = Number.NaN }) => equation(t),
  rows: [
    {
      id: 'do-sat-10',
      status: 'published',
      source:
        'Benson & Krause / APHA 1985 equation (also EN 25814 = ISO 5814 saturation table: 14.6, 11.3, 9.09, 8.26, 7.56 at 0,10,20,25,30 degC)',
      inputs: { t: 10 },
      expected: 11.29,
      tolerance: absolute(0.01),
    },
    {
      id: 'do-sat-20',
      status: 'published',
      source:
        'Benson & Krause / APHA 1985 equation (also EN 25814 = ISO 5814 saturation table: 14.6, 11.3, 9.09, 8.26, 7.56 at 0,10,20,25,30 degC)',
      inputs: { t: 20 },
      expected: 9.09,
      tolerance: absolute(0.01),
    },
    {
      id: 'do-sat-25',
      status: 'published',
      source:
        'Benson & Krause / APHA 1985 equation (also EN 25814 = ISO 5814 saturation table: 14.6, 11.3, 9.09, 8.26, 7.56 at 0,10,20,25,30 degC)',
      inputs: { t: 25 },
      expected: 8.26,
      tolerance: absolute(0.01),
    },
    {
      id: 'do-sat-30',
      status: 'published',
      source:
        'Benson & Krause / APHA 1985 equation (also EN 25814 = ISO 5814 saturation table: 14.6, 11.3, 9.09, 8.26, 7.56 at 0,10,20,25,30 degC)',
      inputs: { t: 30 },
      expected: 7.56,
      tolerance: absolute(0.01),
    },
    {
      id: 'do-sat-40',
      status: 'published',
      source:
        'Benson & Krause / APHA 1985 equation (also EN 25814 = ISO 5814 saturation table: 14.6, 11.3, 9.09, 8.26, 7.56 at 0,10,20,25,30 degC)',
      inputs: { t: 40 },
      expected: 6.41,
      tolerance: absolute(0.01),
    },
  ],
};
