import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius } from '@ebbline/shared/units/quantity';
import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { onRichUnit } from './on-rich-unit';
import { relative, type PublishedRow, type PublishedTable } from './published-table';

const book = 'Bergman, Lavine, Incropera, DeWitt, Fundamentals of Heat and Mass Transfer, 7th ed.';

/**
 * An exchanger of 88 kW/K in place of 110: with 0.8 of both flows the four temperatures are those of the clean one, as effectiveness
 * depends on UA over capacity rates alone.
 */
const dirty = (point: string) => (): number =>
  onRichUnit(
    point,
    {
      'return.temperature': 45,
      'supply.temperature': 34.192,
      'facility.supply.temperature': 30,
      'facility.return.temperature': 39.257,
      'loop.flow': (0.8 * 12) / liquidWaterDensity(celsius(34.192)),
      'facility.flow': (0.8 * 14) / liquidWaterDensity(celsius(30)),
    },
    {
      design: {
        commissioned: {
          ...designNotStated.commissioned,
          uaWPerK: 110_000,
          uaLoopMassFlowKgPerS: 0.8 * 12,
          uaFacilityMassFlowKgPerS: 0.8 * 14,
          uaAreaM2: 22,
        },
      },
    },
  );

/** The site's own water differs from the row's c_p by 0.1 %, and the difference of two reciprocals has five times that. */
const tolerance = relative(0.01);
const row = (what: string, expected: number): PublishedRow => ({
  id: `fouling ${what}`,
  status: 'computed',
  source: `${book} eq. 11.1 – 11.5; TEMA, definition of fouling resistance (computed)`,
  inputs: { UA_clean: 110_000, UA_now: 88_000, A: 22 },
  expected,
  tolerance: relative(1e-4),
});

export const foulingResistanceTable: PublishedTable = {
  title: 'fouling resistance, K/W',
  subject: { point: 'foulingResistance' },
  evaluate: (equation, { UA_now = 0, UA_clean = 0 }) => equation(UA_now, UA_clean),
  onSite: { point: 'foulingResistance', evaluate: dirty('foulingResistance'), tolerance },
  rows: [row('R_total', 2.2727e-6)],
};

export const foulingFactorTable: PublishedTable = {
  title: 'fouling resistance of one square metre, m²K/W',
  subject: { point: 'foulingFactor' },
  evaluate: (equation, { UA_now = 0, UA_clean = 0, A = 0 }) => equation(UA_now, UA_clean, A),
  onSite: { point: 'foulingFactor', evaluate: dirty('foulingFactor'), tolerance },
  rows: [row('R_f', 5e-5)],
};

const worked = (id: string, source: string, inputs: PublishedRow['inputs'], expected: number): PublishedRow => ({
  id,
  status: 'published',
  source,
  inputs,
  expected,
  tolerance: relative(2e-6),
});

/** Effectiveness is heat over what could go over at most, whatever the arrangement. */
export const effectivenessOfBooksTable: PublishedTable = {
  title: 'effectiveness of exchangers of the books',
  subject: { point: 'effectiveness' },
  evaluate: (equation, { Q = 0, C_min = 0, inlets = 0 }) => equation(Q, C_min, inlets),
  rows: [
    worked(
      'holman-10-8 eps',
      'Holman, Heat Transfer, 10th ed., example 10-8: 1.45 kg/s of oil, 1900 J/(kg K), from 15 to 85 °C, steam at 130 °C',
      { Q: 1.45 * 1900 * 70, C_min: 1.45 * 1900, inlets: 115 },
      0.608696,
    ),
    worked(
      'holman-10-9 eps',
      'Holman, Heat Transfer, 10th ed., example 10-9: the same at half the oil',
      { Q: 131_675.3, C_min: 1377.5, inlets: 115 },
      0.831218,
    ),
    {
      ...worked(
        'inc-11.1-ntu Q',
        `${book} section 11.4 with the data of example 11.1`,
        { Q: 8523, C_min: 213.1, inlets: 70 },
        0.5714,
      ),
      tolerance: relative(0.003),
    },
  ],
};

export const ntuOfBooksTable: PublishedTable = {
  title: 'NTU of the oil cooler of the book',
  subject: { point: 'ntu' },
  evaluate: (equation, { eps = 0, Cr = 0 }) => equation(eps, Cr),
  rows: [
    {
      ...worked(
        'inc-11.1-ntu NTU',
        `${book} section 11.4 with the data of example 11.1`,
        { eps: 0.5714, Cr: 0.255 },
        0.9265,
      ),
      tolerance: relative(0.001),
    },
  ],
};
