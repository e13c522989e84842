import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { logMeanDifference } from '@ebbline/shared/heat/lmtd';
import { effectivenessOfNtu } from '@ebbline/shared/heat/counterflow';
import { celsius } from '@ebbline/shared/units/quantity';
import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const book = 'Bergman, Lavine, Incropera, DeWitt, Fundamentals of Heat and Mass Transfer, 7th ed.';
/** Water to water in counterflow: 12 and 14 kg/s, 45 and 30 °C in, UA 110 kW/K. */
const inputs = {
  m_TCS: 12,
  cp_TCS: 4179,
  m_FWS: 14,
  cp_FWS: 4182,
  T_TCS_return: 45,
  T_TCS_supply: 34.192,
  T_FWS_supply: 30,
  T_FWS_return: 39.257,
};
/** The program takes its own c_p, which differs from the printed ones by 0.05 %; NTU and UA over clean UA grow faster than heat. */
const ownHeatCapacity = relative(0.001);
type Inputs = PublishedRow['inputs'];
const row = (id: string, source: string, expected: number, tolerance: PublishedRow['tolerance']): PublishedRow => ({
  id,
  status: id.startsWith('hx-ww') ? 'published' : 'computed',
  source: `${book} ${source}`,
  inputs,
  expected,
  tolerance,
});

/** The same exchanger measured on a site; the program takes its own c_p, which differs from the printed ones by 0.05 %. */
function onSite(point: string, design = {}): (values: Inputs) => number {
  return (values) => {
    const of = (key: string): number => values[key] ?? Number.NaN;
    return onRichUnit(
      point,
      {
        'return.temperature': of('T_TCS_return'),
        'supply.temperature': of('T_TCS_supply'),
        'facility.supply.temperature': of('T_FWS_supply'),
        'facility.return.temperature': of('T_FWS_return'),
        'loop.flow': of('m_TCS') / liquidWaterDensity(celsius(of('T_TCS_supply'))),
        'facility.flow': of('m_FWS') / liquidWaterDensity(celsius(of('T_FWS_supply'))),
      },
      { design },
    );
  };
}

const leastRate = (values: Inputs): number =>
  Math.min((values['m_TCS'] ?? 0) * (values['cp_TCS'] ?? 0), (values['m_FWS'] ?? 0) * (values['cp_FWS'] ?? 0));
const mostRate = (values: Inputs): number =>
  Math.max((values['m_TCS'] ?? 0) * (values['cp_TCS'] ?? 0), (values['m_FWS'] ?? 0) * (values['cp_FWS'] ?? 0));

export const facilityRiseTable: PublishedTable = {
  title: 'temperature rise of facility water, K',
  subject: { point: 'facilityTemperatureRise' },
  evaluate: (equation, values) => equation(values['T_FWS_return'] ?? 0, values['T_FWS_supply'] ?? 0),
  onSite: { point: 'facilityTemperatureRise', evaluate: onSite('facilityTemperatureRise') },
  rows: [row('hx-ww T_FWS_return − T_FWS_supply', 'table 11.3 (computed)', 9.257, absolute(0.001))],
};

export const facilityHeatTable: PublishedTable = {
  title: 'heat into facility water, W',
  subject: { point: 'facilityHeat' },
  evaluate: (equation, values) =>
    equation(values['m_FWS'] ?? 0, values['cp_FWS'] ?? 0, values['T_FWS_supply'] ?? 0, values['T_FWS_return'] ?? 0),
  onSite: { point: 'facilityHeat', evaluate: onSite('facilityHeat'), tolerance: ownHeatCapacity },
  rows: [row('hx-ww Q', 'table 11.3 (computed)', 541_980, relative(2e-5))],
};

export const lmtdTable: PublishedTable = {
  title: 'log mean temperature difference, K',
  subject: { point: 'lmtd' },
  evaluate: (equation, values) =>
    equation(
      (values['T_TCS_return'] ?? 0) - (values['T_FWS_return'] ?? 0),
      (values['T_TCS_supply'] ?? 0) - (values['T_FWS_supply'] ?? 0),
    ),
  onSite: { point: 'lmtd', evaluate: onSite('lmtd') },
  rows: [row('hx-ww-inverse LMTD', 'eq. 11.14 – 11.17', 4.9271, absolute(0.002))],
};

export const equalEndsTable: PublishedTable = {
  title: 'log mean of two equal terminal differences, K',
  subject: { equation: logMeanDifference },
  evaluate: (equation, { T_hi = 0, T_ho = 0, T_ci = 0, T_co = 0 }) => equation(T_hi - T_co, T_ho - T_ci),
  rows: [
    {
      id: 'lmtd-60-40',
      status: 'published',
      source: `${book} eq. 11.15`,
      inputs: { T_hi: 100, T_ho: 60, T_ci: 20, T_co: 60 },
      expected: 40,
      tolerance: absolute(1e-9),
    },
  ],
};

export const effectivenessTable: PublishedTable = {
  title: 'effectiveness of a counterflow exchanger',
  subject: { point: 'effectiveness' },
  evaluate: (equation, values) =>
    equation(541_980, leastRate(values), (values['T_TCS_return'] ?? 0) - (values['T_FWS_supply'] ?? 0)),
  onSite: { point: 'effectiveness', evaluate: onSite('effectiveness'), tolerance: ownHeatCapacity },
  rows: [row('hx-ww eps', 'table 11.3', 0.72051, relative(2e-5))],
};

export const effectivenessOfNtuTable: PublishedTable = {
  title: 'effectiveness of NTU and C_r, counterflow',
  subject: { equation: effectivenessOfNtu },
  evaluate: (equation, { NTU = 0, Cr = 0 }) => equation(NTU, Cr),
  rows: [
    {
      id: 'eps-5-0.7-counterflow',
      status: 'published',
      source: `${book} table 11.3; Shah & Sekulic`,
      inputs: { NTU: 5, Cr: 0.7 },
      expected: 0.920670368605,
      tolerance: absolute(1e-9),
    },
    {
      id: 'eps-limit-cr1',
      status: 'published',
      source: `${book} table 11.3`,
      inputs: { NTU: 3, Cr: 1 },
      expected: 0.75,
      tolerance: absolute(1e-7),
    },
    {
      id: 'inc-11.1-ntu eps',
      status: 'published',
      source: `${book} section 11.4 with the data of example 11.1`,
      inputs: { NTU: 0.9265, Cr: 0.255 },
      expected: 0.5714,
      tolerance: absolute(0.002),
    },
  ],
};

export const ntuTable: PublishedTable = {
  title: 'NTU of effectiveness and C_r, counterflow',
  subject: { point: 'ntu' },
  evaluate: (equation, { eps = Number.NaN, Cr = Number.NaN }) => equation(eps, Cr),
  rows: [
    {
      id: 'ntu-inverse',
      status: 'published',
      source: `${book} table 11.4`,
      inputs: { eps: 0.9206703686, Cr: 0.7 },
      expected: 5,
      tolerance: absolute(1e-7),
    },
  ],
};

export const ntuOnSiteTable: PublishedTable = {
  title: 'NTU of the water-to-water exchanger',
  subject: { point: 'ntu' },
  evaluate: (equation, values) => equation(0.72051, leastRate(values) / mostRate(values)),
  onSite: { point: 'ntu', evaluate: onSite('ntu'), tolerance: relative(0.005) },
  rows: [row('hx-ww NTU', 'table 11.3', 2.19351, relative(2e-5))],
};

export const uaTable: PublishedTable = {
  title: 'UA from the four temperatures, W/K',
  subject: { point: 'ua' },
  evaluate: (equation) => equation(541_980, 4.9271),
  onSite: { point: 'ua', evaluate: onSite('ua'), tolerance: ownHeatCapacity },
  rows: [row('hx-ww-inverse UA', 'eq. 11.14 – 11.17', 110_000, absolute(60))],
};

/** The dirty exchanger's UA over the clean one's; on the site the clean one is a quarter better than hx-ww, at its own flows. */
export const uaRatioTable: PublishedTable = {
  title: 'cleanliness: UA now over UA clean',
  subject: { point: 'uaRatio' },
  evaluate: (equation) => equation(88_000, 110_000),
  onSite: {
    point: 'uaRatio',
    evaluate: onSite('uaRatio', {
      commissioned: {
        ...designNotStated.commissioned,
        uaWPerK: 137_500,
        uaLoopMassFlowKgPerS: 12,
        uaFacilityMassFlowKgPerS: 14,
      },
    }),
    tolerance: relative(0.005),
  },
  rows: [row('fouling cleanliness', 'eq. 11.1 – 11.5; TEMA', 0.8, relative(1e-4))],
};

export const heatBalanceTable: PublishedTable = {
  title: 'heat found over heat that should be there',
  subject: { point: 'heatBalance' },
  evaluate: (equation, { Q = Number.NaN, P_el = Number.NaN }) => equation(Q, P_el),
  rows: [
    {
      id: 'balance ratio',
      status: 'computed',
      source: 'GUM combination of independent inputs (computed)',
      inputs: { Q: 50152.8, P_el: 52400 },
      expected: 0.95711,
      tolerance: absolute(1e-5),
    },
  ],
};

export const heatBalanceOfExchangerTable: PublishedTable = {
  title: 'heat balance of the water-to-water exchanger: both sides carry the same heat',
  subject: { point: 'heatBalance' },
  evaluate: (equation, values) =>
    equation(
      12 * 4179 * ((values['T_TCS_return'] ?? 0) - (values['T_TCS_supply'] ?? 0)),
      14 * 4182 * ((values['T_FWS_return'] ?? 0) - (values['T_FWS_supply'] ?? 0)),
    ),
  onSite: { point: 'heatBalance', evaluate: onSite('heatBalance') },
  rows: [row('hx-ww both sides', 'table 11.3', 1, absolute(0.001))],
};
