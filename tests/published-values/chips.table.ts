import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const book = 'Bergman, Lavine, Incropera, DeWitt, Fundamentals of Heat and Mass Transfer, 7th ed.';
const onePlate = [{ id: 'p1', branch: 0, elevationM: 1 }] as const;

export const plateResistanceTable: PublishedTable = {
  title: 'case-to-inlet resistance of a cold plate, K/W',
  subject: { point: 'plate.<id>.resistance' },
  evaluate: (equation, { T_case = 0, T_in = 0, P = 0 }) => equation(T_case, T_in, P),
  onSite: {
    point: 'plate.<id>.resistance',
    evaluate: ({ T_case = 0, T_in = 0, P = 0 }) =>
      onRichUnit('plate.p1.resistance', {
        'plate.p1.temperature': T_case,
        'supply.temperature': T_in,
        'plate.p1.power': P,
      }),
  },
  rows: [
    {
      id: 'rth',
      status: 'computed',
      source: 'definition: (T_case − T_fluid,in)/P (computed)',
      inputs: { T_case: 62, T_in: 40, P: 700 },
      expected: 0.031429,
      tolerance: absolute(1e-6),
    },
  ],
};

/** A plate of 0.03 + 0.03 (q/q₀)^−0.8 K/W at half its flow; the ratio of one that has just that is 1. */
export const plateRatioTable: PublishedTable = {
  title: 'plate resistance at another flow, K/W',
  subject: { point: 'plate.<id>.resistanceRatio' },
  evaluate: (equation, { fixed = 0, film = 0, share = 0 }) => equation(fixed, film, share, 0.8),
  rows: [
    {
      id: 'half the flow of a turbulent film',
      status: 'computed',
      source: `${book} eq. 8.60 (Dittus–Boelter, Nu ~ Re^0.8), computed by hand: 0.03 + 0.03 × 2^0.8`,
      inputs: { fixed: 0.03, film: 0.03, share: 0.5 },
      expected: 0.08223,
      tolerance: absolute(1e-5),
    },
  ],
};

export const plateRatioOnSiteTable: PublishedTable = {
  title: 'plate resistance against commissioned, at half its flow',
  subject: { point: 'plate.<id>.resistanceRatio' },
  evaluate: (equation, { share = 0 }) => 0.08223 / equation(0.03, 0.03, share, 0.8),
  onSite: {
    point: 'plate.<id>.resistanceRatio',
    evaluate: ({ share = 0 }) =>
      onRichUnit('plate.p1.resistanceRatio', {
        'branch.r1.flow': (share * 43) / 60_000,
        'plate.p1.power': 300,
        'plate.p1.temperature': 36.3 + 300 * 0.08223,
      }),
  },
  rows: [
    {
      id: 'half the flow of a turbulent film, as a ratio',
      status: 'computed',
      source: `${book} eq. 8.60 (Dittus–Boelter, Nu ~ Re^0.8), computed by hand`,
      inputs: { share: 0.5 },
      expected: 1,
      tolerance: absolute(1e-3),
    },
  ],
};

/** Water and metal as one lump, heated by 120 kW. */
const lump = { P: 120, C: 250 * 4.18 + 60, T_now: 40, T_limit: 50 };
const lumpOnSite =
  (point: string) =>
  ({ P = 0, C = 0, T_now = 0, T_limit = 0, UA_loss = 0, T_amb = 25 }: PublishedRow['inputs']): number =>
    onRichUnit(
      point,
      { 'plate.p1.power': P * 1000, 'plate.p1.temperature': T_now, 'hall.temperature': T_amb },
      {
        plates: onePlate,
        design: {
          plateLimitC: T_limit,
          plateHeatCapacityJPerK: C * 1000,
          fanPath: UA_loss === 0 ? null : { resistanceKPerW: 1 / UA_loss },
          commissioned: designNotStated.commissioned,
        },
      },
    );

export const rideThroughPlateTable: PublishedTable = {
  title: 'time of a lump to its limit without loss, s',
  subject: { point: 'rideThroughPlate' },
  evaluate: (equation, { P = 0, C = 0, T_now = 0, T_limit = 0 }) => equation(C * 1000, P * 1000, T_now, T_limit),
  onSite: { point: 'rideThroughPlate', evaluate: lumpOnSite('rideThroughPlate') },
  rows: [
    {
      id: 'time-to-limit',
      status: 'computed',
      source: `energy balance of a lump (${book} section 5.1; computed)`,
      inputs: lump,
      expected: 92.08,
      tolerance: relative(1e-4),
    },
  ],
};

export const rideThroughFansTable: PublishedTable = {
  title: 'time of a lump to its limit with a loss to its surroundings, s',
  subject: { point: 'rideThroughFans' },
  evaluate: (equation, { P = 0, C = 0, T_now = 0, T_limit = 0, UA_loss = 0, T_amb = 0 }) =>
    equation(C * 1000, P * 1000, T_now, T_limit, UA_loss, T_amb),
  onSite: { point: 'rideThroughFans', evaluate: lumpOnSite('rideThroughFans') },
  rows: [
    {
      id: 'time-to-limit-loss2',
      status: 'computed',
      source: `${book} eq. 5.25 (computed)`,
      inputs: { ...lump, UA_loss: 2000, T_amb: 25 },
      expected: 138.85,
      tolerance: absolute(0.05),
    },
  ],
};

export const temperatureOnFansTable: PublishedTable = {
  title: 'where a lump with a loss settles, °C',
  subject: { point: 'temperatureOnFans' },
  evaluate: (equation, { P = 0, UA_loss = 0, T_amb = 0 }) => equation(T_amb, P * 1000, 1 / UA_loss),
  onSite: { point: 'temperatureOnFans', evaluate: lumpOnSite('temperatureOnFans') },
  rows: [
    {
      id: 'time-to-limit-loss T_inf',
      status: 'published',
      source: `${book} eq. 5.25`,
      inputs: { ...lump, UA_loss: 6000, T_amb: 25 },
      expected: 45,
      tolerance: absolute(1e-9),
    },
    {
      id: 'time-to-limit-loss2 T_inf',
      status: 'computed',
      source: `${book} eq. 5.25`,
      inputs: { ...lump, UA_loss: 2000, T_amb: 25 },
      expected: 85,
      tolerance: absolute(1e-9),
    },
  ],
};

export const conductivityTable: PublishedTable = {
  title: 'conductivity at 25 °C, µS/cm',
  subject: { point: 'conductivity25' },
  evaluate: (equation, { kappa = 0, t = 0, alpha = 0 }) => equation(kappa, t, alpha / 100),
  onSite: {
    point: 'conductivity25',
    evaluate: ({ kappa = 0, t = 0 }) =>
      onRichUnit('conductivity25', { 'water.conductivity': kappa * 1e-4, 'supply.temperature': t }) / 1e-4,
  },
  rows: [
    {
      id: 'cond-comp',
      status: 'published',
      source: 'ISO 7888 linear form, α = 2 %/K',
      inputs: { kappa: 120, t: 40, alpha: 2 },
      expected: 92.31,
      tolerance: absolute(0.005),
    },
  ],
};
