import {
  permissibleVelocity,
  velocityTableIds,
  velocityTables,
  type VelocityTableId,
} from '@ebbline/shared/hydraulics/permissible-velocity';
import { laminarFrictionFactor, turbulentFrictionFactor } from '@ebbline/shared/hydraulics/pipe-friction';
import { circleArea } from '@ebbline/shared/hydraulics/velocity';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const colebrook = (id: string, Re: number, roughness: number, expected: number): PublishedRow => ({
  id,
  status: 'published',
  source: 'Colebrook 1939; Moody 1944, as the documentation of an independent library prints it',
  inputs: { Re, roughness },
  expected,
  tolerance: absolute(1e-8),
});

export const turbulentFrictionTable: PublishedTable = {
  title: 'Darcy friction factor, turbulent',
  subject: { equation: turbulentFrictionFactor },
  evaluate: (equation, { Re = 0, roughness = 0 }) => equation(Re, roughness),
  rows: [
    colebrook('colebrook-100000-0.0001', 1e5, 1e-4, 0.018513866077),
    colebrook('colebrook-50000-0.001', 5e4, 1e-3, 0.024020783976),
    colebrook('colebrook-20000-0.0005', 2e4, 5e-4, 0.026946523896),
    {
      id: 'smooth-1e+06',
      status: 'published',
      source: 'White, Fluid Mechanics, table after eq. 6.38 (Prandtl’s smooth pipe)',
      inputs: { Re: 1e6, roughness: 0 },
      expected: 0.0116,
      tolerance: absolute(6e-5),
    },
  ],
};

export const laminarFrictionTable: PublishedTable = {
  title: 'Darcy friction factor, laminar',
  subject: { equation: laminarFrictionFactor },
  evaluate: (equation, { Re = 0 }) => equation(Re),
  rows: [
    {
      id: 'laminar',
      status: 'published',
      source: 'Hagen–Poiseuille; White, Fluid Mechanics, eq. 6.13',
      inputs: { Re: 1500 },
      expected: 0.042667,
      tolerance: absolute(1e-6),
    },
  ],
};

const tube = { D: 0.05, eps: 1.5e-6, L: 10, q_V: 3, t: 35 };
const tubeRow = (what: string, expected: number, tolerance: PublishedRow['tolerance']): PublishedRow => ({
  id: `darcy-50mm ${what}`,
  status: 'published',
  source: 'Darcy–Weisbach with Colebrook and water by IAPWS SR6-08, worked out by an independent library',
  inputs: tube,
  expected,
  tolerance,
});
const onTube = (point: string) => (): number =>
  onRichUnit(
    point,
    { 'loop.flow': tube.q_V / 3600, 'supply.temperature': tube.t, 'return.temperature': tube.t },
    {
      design: {
        ratedFlowM3PerS: tube.q_V / 3600,
        mains: { boreM: tube.D, lengthM: tube.L, roughnessM: tube.eps },
        permissibleVelocity: { table: 'copperHandbook' },
      },
    },
  );

export const mainVelocityTable: PublishedTable = {
  title: 'velocity in a tube of 50 mm, m/s',
  subject: { point: 'mainVelocity' },
  evaluate: (equation, { q_V = 0, D = 0 }) => equation(q_V / 3600, circleArea(D)),
  onSite: { point: 'mainVelocity', evaluate: onTube('mainVelocity') },
  rows: [tubeRow('v', 0.42441, absolute(1e-5))],
};

export const mainFrictionTable: PublishedTable = {
  title: 'friction loss of 10 m of smooth copper tube, Pa',
  subject: { point: 'mainFrictionLoss' },
  evaluate: (equation, { L = 0, D = 0 }) => equation(0.023688, L, D, 994.03, 0.42441),
  onSite: { point: 'mainFrictionLoss', evaluate: onTube('mainFrictionLoss') },
  rows: [tubeRow('dp', 424.1, absolute(0.1))],
};

/** `table`: place in `velocityTableIds`. */
const limit = (id: string, table: VelocityTableId, celsius: number, expected: number): PublishedRow => ({
  id,
  status: 'published',
  source: velocityTables[table].source,
  inputs: { table: velocityTableIds.indexOf(table), celsius },
  expected,
  tolerance: absolute(0.005),
});
const limits: readonly PublishedRow[] = [
  limit('vel-cda cold', 'copperHandbook', 15, 2.4),
  limit('vel-cda hot', 'copperHandbook', 55, 1.5),
  limit('vel-cda above60', 'copperHandbook', 65, 0.9),
  limit('vel-bs6700-10', 'copperBs6700', 10, 3),
  limit('vel-bs6700-50', 'copperBs6700', 50, 3),
  limit('vel-bs6700-70', 'copperBs6700', 70, 2.5),
  limit('vel-bs6700-90', 'copperBs6700', 90, 2),
  limit('vel-swe-10', 'copperSwedish', 10, 2),
  limit('vel-swe-50', 'copperSwedish', 50, 1.5),
  limit('vel-swe-70', 'copperSwedish', 70, 1.3),
  limit('vel-swe-90', 'copperSwedish', 90, 1),
];
const tableOf = (place: number): VelocityTableId => velocityTableIds[place] ?? 'copperHandbook';

export const permissibleVelocityTable: PublishedTable = {
  title: 'permissible velocity in copper, m/s',
  subject: { equation: permissibleVelocity },
  evaluate: (_, { table = 0, celsius = 0 }) => permissibleVelocity(velocityTables[tableOf(table)], celsius),
  rows: limits,
};

/** A main in which water flows as fast as it may. */
export const mainVelocityShareTable: PublishedTable = {
  title: 'velocity in the mains over what is permissible, where it is just that',
  subject: { point: 'mainVelocityShare' },
  evaluate: (equation, { velocity = 0, permissible = 0 }) => equation(velocity, permissible),
  onSite: {
    point: 'mainVelocityShare',
    evaluate: ({ table = 0, celsius = 0, velocity = 0 }) =>
      onRichUnit(
        'mainVelocityShare',
        { 'loop.flow': velocity * circleArea(0.082), 'return.temperature': celsius },
        { design: { permissibleVelocity: { table: tableOf(table) } } },
      ),
  },
  rows: limits.map((row) => ({
    ...row,
    inputs: { ...row.inputs, velocity: row.expected, permissible: row.expected },
    expected: 1,
    tolerance: relative(0.002),
  })),
};

/**
 * 500 kW at 10 K is 500,000/(994.0 × 4,179 × 10) m³/s = 12.04 L/s of water, and 3 inches square are 76.2² mm²: 12.04 L/s ÷ 58.06 cm² =
 * 2.073 m/s.
 */
const rack = { q: 500_000 / (994.03 * 4179 * 10), side: 0.0762 };
const ofRack = (point: string, table: VelocityTableId) => (): number =>
  onRichUnit(
    point,
    { 'branch.r1.flow': rack.q, 'supply.temperature': 35, 'branch.r1.return.temperature': 45 },
    { branchParts: { manifoldAreaM2: rack.side ** 2 }, design: { permissibleVelocity: { table } } },
  );
const rackRow = (id: string, expected: number): PublishedRow => ({
  id,
  status: 'common-practice',
  source: 'common practice, no source, for the rack; arithmetic in the comment above',
  inputs: {},
  expected,
  tolerance: relative(0.002),
});

export const rackHeatTable: PublishedTable = {
  title: 'heat of the rack on its manifold, W',
  subject: { point: 'branch.<id>.heatRemoved' },
  evaluate: (equation) => equation(994.03 * rack.q, 4179, 35, 45),
  onSite: { point: 'branch.<id>.heatRemoved', evaluate: ofRack('branch.r1.heatRemoved', 'copperHandbook') },
  rows: [rackRow('rack of 500 kW, 10 K', 500_000)],
};

export const manifoldVelocityTable: PublishedTable = {
  title: 'velocity in a rack manifold, m/s',
  subject: { point: 'branch.<id>.manifoldVelocity' },
  evaluate: (equation) => equation(rack.q, rack.side ** 2),
  onSite: {
    point: 'branch.<id>.manifoldVelocity',
    evaluate: ofRack('branch.r1.manifoldVelocity', 'copperHandbook'),
  },
  rows: [rackRow('rack of 500 kW on a manifold about 3 inches square', 2.073)],
};

const share = (title: string, table: VelocityTableId, permissible: number, expected: number): PublishedTable => ({
  title,
  subject: { point: 'branch.<id>.manifoldVelocityShare' },
  evaluate: (equation) => equation(2.073, permissible),
  onSite: {
    point: 'branch.<id>.manifoldVelocityShare',
    evaluate: ofRack('branch.r1.manifoldVelocityShare', table),
  },
  rows: [rackRow(`rack of 500 kW on a manifold about 3 inches square, ${table}`, expected)],
});

/** 2.073 ÷ 1.5. */
export const rackByHandbookTable = share('it is too fast for copper by the handbook', 'copperHandbook', 1.5, 1.382);
/** At 45 °C 2 − 0.5 × 35/40 = 1.5625 m/s. */
export const rackBySwedishTable = share('and by the Swedish rows', 'copperSwedish', 1.5625, 1.327);
export const rackByBs6700Table = share('but not by those of BS 6700', 'copperBs6700', 3, 0.691);
