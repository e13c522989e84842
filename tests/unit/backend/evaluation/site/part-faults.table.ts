import type { FaultRow } from './fault-row';

const typeM = (...keys: readonly (string | number)[]) => ['templates', 'typeM', ...keys];
const key = (...keys: readonly (string | number)[]) => `templates.typeM.${keys.join('.')}`;

/** Loops, branches, servers, plates, tanks. */
export const partFaults: readonly FaultRow[] = [
  ['a loop of an unknown unit', ['loops', 'l'], { units: ['m1', 'm9'] }, 'loops.l.units.1', /there is no unit "m9"/],
  ['a unit twice on a loop', ['loops', 'l'], { units: ['m1', 'm1'] }, 'loops.l.units.1', /stands here twice/],
  [
    'a unit on two loops',
    ['loops'],
    { k: { units: ['m1'] }, l: { units: ['m2', 'm1'] } },
    'loops.l.units.1',
    /on loop "k" already; a unit is on one loop/,
  ],
  [
    'a loop that needs more units than it has',
    ['loops', 'l'],
    { units: ['m1', 'm2'], unitsNeeded: 3 },
    'loops.l.unitsNeeded',
    /has 2 units/,
  ],
  ['a loop named like a unit that is not on it', ['loops', 'm2'], { units: ['m1'] }, 'loops.m2', /has the same id/],
  [
    'a restrictor wider than the hose',
    typeM('branches', 'r1'),
    { mainBore: '5 mm', restrictorBore: '6 mm' },
    key('branches', 'r1', 'restrictorBore'),
    /6 mm is wider than the rack's own hose/,
  ],
  [
    'a shared outlet wider than a hose',
    typeM('fittings'),
    { mainBore: '5 mm', outletBore: '6 mm' },
    key('fittings', 'outletBore'),
    /wider/,
  ],
  ['a bore of nothing', typeM('fittings'), { mainBore: '0 mm' }, key('fittings', 'mainBore'), /more than 0/],
  [
    'an impossible discharge coefficient',
    typeM('openingDischargeCoefficient'),
    7,
    key('openingDischargeCoefficient'),
    /expected 0.3 to 1/,
  ],
  [
    'a server on an unknown branch',
    typeM('servers', 's1'),
    { branch: 'r9' },
    key('servers', 's1', 'branch'),
    /there is no branch "r9"/,
  ],
  [
    'a plate in an unknown server',
    typeM('plates', 'p1', 'server'),
    's9',
    key('plates', 'p1', 'server'),
    /there is no server "s9"/,
  ],
  [
    'points of an unknown server',
    ['units', 'm1', 'points', 'server.s1.power'],
    { path: 's', unit: 'W' },
    'units.m1.points.server.s1.power',
    /there is no server "s1"/,
  ],
  [
    'points of an unknown tank',
    ['units', 'm1', 'points', 'tank.a.level'],
    { path: 's', unit: 'm' },
    'units.m1.points.tank.a.level',
    /there is no tank "a"/,
  ],
  [
    'a tank without a surface',
    typeM('tanks', 'named', 'a'),
    { area: '0 m2' },
    key('tanks', 'named', 'a', 'area'),
    /more than 0/,
  ],
];
