import { down, still, up, type FaultRow } from './fault-row';

const quiet = still('water.found', 'topUp.volume', 'facility.supply.temperature', 'pump.running', 'vacuum.running');

export const rackRows: readonly FaultRow[] = [
  {
    order: { fault: 'rackBlocked' },
    runS: 300,
    moves: {
      'branch.r1.flow': down(3),
      'branch.r1.return.pressure': down(3),
      'branch.r1.return.temperature': up(5),
      'plate.r1a.temperature': up(100),
    },
    stays: { ...quiet, 'separator.pressure': 300 },
    because: 'less water through one rack: its return pressure falls, where a cut would raise it',
  },
  {
    order: { fault: 'rackBlocked' },
    kinds: ['M'],
    sizes: ['small', 'usual'],
    runS: 300,
    moves: { 'branch.r1.flow': down(3) },
    stays: {
      ...quiet,
      ...still('vacuum.exhaustFlow', 'branch.r2.flow', 'plate.r2a.temperature'),
      'separator.level': 0.01,
    },
    because: 'no gas and no level in it; the other racks gain about one per cent',
  },
  {
    order: { fault: 'plateBlocked' },
    kinds: ['M', 'H'],
    runS: 300,
    moves: { 'plate.r1b.temperature': up(40), 'server.r1b.return.temperature': up(5) },
    stays: {
      ...quiet,
      ...still(
        'branch.r1.flow',
        'loop.flow',
        'plate.r1a.temperature',
        'plate.r2b.temperature',
        'vacuum.exhaustFlow',
        'separator.level',
      ),
      'server.r1a.return.temperature': 0.1,
    },
    because: 'one of a hundred plates: its rack’s flow falls by half a per cent, which no meter sees',
  },
  {
    order: { fault: 'plateBlocked' },
    kinds: ['bench'],
    runS: 120,
    moves: { 'plate.r1b.temperature': up(20), 'loop.flow': down(10), 'branch.r1.flow': down(10) },
    stays: { ...quiet, 'separator.pressure': 300 },
    because: 'the bench’s one plate is its whole flow',
  },
  {
    order: { fault: 'plateResistance' },
    runS: 300,
    moves: { 'plate.r1b.temperature': up(50) },
    stays: {
      ...quiet,
      ...still('branch.r1.flow', 'loop.flow', 'vacuum.exhaustFlow', 'separator.level', 'supplyTank.level'),
    },
    because: 'the same heat over a larger difference; flow and heat stay, that tells it from a blocked plate',
  },
  {
    order: { fault: 'plateResistance' },
    kinds: ['M', 'H'],
    runS: 300,
    moves: { 'plate.r1b.temperature': up(50) },
    stays: { ...still('plate.r1a.temperature', 'branch.r1.power'), 'server.r1b.return.temperature': 0.8 },
    because: 'its neighbours stay; the hotter chip gives a little more to its fans',
  },
];
