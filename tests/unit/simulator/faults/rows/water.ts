import { down, still, up, type FaultRow } from './fault-row';

const quiet = still(
  'pump.running',
  'vacuum.running',
  'loop.flow',
  'branch.r1.flow',
  'plate.r1a.temperature',
  'water.found',
);

export const waterRows: readonly FaultRow[] = [
  {
    order: { fault: 'exchangerPinhole' },
    runS: 400,
    moves: { 'water.conductivity': up(120), 'separator.level': up(400) },
    stays: {
      ...quiet,
      ...still('topUp.volume', 'facility.supply.temperature', 'tray.water.found'),
      'separator.pressure': 300,
      'supply.temperature': 1,
    },
    because: 'facility water comes in that no meter counts, and it is hard',
  },
  {
    order: { fault: 'overfill' },
    runS: 300,
    moves: { 'separator.level': up(250) },
    stays: { ...quiet, 'separator.pressure': 600, 'supplyTank.level': 0.005, 'supply.temperature': 1 },
    because: 'the level climbs as by a pinhole: the top-up meter tells them apart',
  },
  {
    order: { fault: 'overfill' },
    sizes: ['usual', 'large'],
    runS: 500,
    moves: { 'topUp.volume': up(400), 'water.conductivity': down(460) },
    stays: still('loop.flow', 'branch.r1.flow', 'water.found'),
    because: 'counted, and soft',
  },
  {
    order: { fault: 'waterLoss' },
    kinds: ['M', 'H'],
    runS: 300,
    moves: { 'separator.level': down(300) },
    stays: {
      ...quiet,
      ...still(
        'supplyTank.level',
        'supply.temperature',
        'separator.pressure',
        'topUp.volume',
        'tray.water.found',
        'vacuum.exhaustFlow',
        'water.conductivity',
      ),
    },
    because: 'the separator falls by what is lost and nothing else moves',
  },
  {
    order: { fault: 'waterLoss' },
    kinds: ['bench'],
    sizes: ['usual', 'large'],
    runS: 450,
    moves: { 'separator.level': down(400) },
    stays: { ...quiet, ...still('supplyTank.level', 'supply.temperature', 'topUp.volume', 'tray.water.found') },
    because: 'the same by the drop',
  },
  {
    order: { fault: 'waterLoss' },
    kinds: ['bench'],
    sizes: ['small'],
    runS: 400,
    moves: {},
    stays: { ...quiet, ...still('supplyTank.level', 'supply.temperature', 'topUp.volume') },
    because: '4 mL a minute take ten minutes and more to be seen in the level',
  },
  {
    order: { fault: 'waterLoss', option: 'tray' },
    runS: 330,
    moves: { 'tray.water.found': up(320) },
    stays: { ...quiet, ...still('topUp.volume', 'supply.temperature') },
    because: 'the unit’s own part above ambient pressure leaks outwards, into its own tray',
  },
];
