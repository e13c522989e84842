import { freeAirK, freeAirPa } from '@ebbline/shared/fluid-properties/air';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { relative, type PublishedTable } from './published-table';

/** The balance of `pumpdown-ultimate` turned round: from the equilibrium pressure back to the throughput, 1 Pa of 250 Pa of dry air being 0.4 %. */
export const gasLoadTable: PublishedTable = {
  title: 'gas load, as throughput in Pa L/s, of S L/s at p kPa over water at t °C',
  subject: { point: 'gasLoad' },
  evaluate: (equation, { p = Number.NaN, S = Number.NaN, t = Number.NaN }) =>
    equation(1, S / 1000, p * 1000, saturationPressure(celsius(t)), t) * freeAirPa * ((t + 273.15) / freeAirK) * 1000,
  rows: [
    {
      id: 'pumpdown-ultimate turned round',
      source: 'throughput balance + Dalton (computed)',
      inputs: { p: 4.4967, S: 2, t: 30 },
      expected: 500,
      tolerance: relative(0.004),
    },
  ],
};
