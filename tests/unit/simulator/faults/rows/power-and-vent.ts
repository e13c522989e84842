import { down, still, up, type FaultRow } from './fault-row';

const quiet = still('topUp.volume', 'tray.water.found', 'water.found', 'facility.supply.temperature');

export const powerRows: readonly FaultRow[] = [
  ...(['bleedOpen', 'bleedShut'] as const).map((option): FaultRow => ({
    order: { fault: 'powerFailure', option },
    runS: 8,
    moves: {
      'pump.running': down(1),
      'vacuum.running': down(1),
      'unit.power': down(1),
      'transfer.flow': down(1),
      'supplyTank.level': down(4),
      'separator.level': up(4),
    },
    stays: { ...quiet, ...still('branch.r1.power', 'pump.command', 'valve.position', 'control.manual') },
    because: 'every machine of the unit at once, while the chips run on',
  })),
  {
    order: { fault: 'powerFailure', option: 'bleedShut' },
    kinds: ['M', 'H'],
    sizes: ['usual', 'large'],
    runS: 60,
    moves: {
      'supplyTank.pressure': down(2),
      'loop.flow': down(3),
      'supplyTank.vent.command': up(2),
      'plate.r1a.temperature': up(40),
    },
    stays: { ...quiet, 'separator.pressure': 6000 },
    because: 'the tank’s gas expands as its water leaves: the driving pressure goes, the margin grows',
  },
  {
    order: { fault: 'powerFailure', option: 'bleedOpen' },
    kinds: ['M', 'H'],
    sizes: ['large'],
    runS: 60,
    moves: { 'supplyTank.vent.position': up(2), 'loop.flow': down(6), 'plate.r1a.temperature': up(40) },
    stays: { ...quiet, 'supplyTank.pressure': 5000, 'separator.pressure': 6500 },
    because: 'the bleed holds the tank’s pressure until its water is gone',
  },
  {
    order: { fault: 'ventStuck' },
    sizes: ['small'],
    runS: 600,
    moves: {},
    stays: { ...quiet, ...still('loop.flow', 'supplyTank.pressure', 'separator.level', 'plate.r1a.temperature') },
    because: 'a relief that is not asked shows nothing',
  },
  {
    order: { fault: 'ventStuck' },
    sizes: ['usual'],
    runS: 600,
    moves: { 'supplyTank.vent.command': up(10), 'supplyTank.pressure': down(580) },
    stays: {
      ...quiet,
      ...still('supplyTank.vent.position', 'pump.running', 'plate.r1a.temperature', 'vacuum.running'),
    },
    because: 'water takes up the tank’s gas, which the bleed no longer gives back: its pressure sinks by hours',
  },
  {
    order: { fault: 'ventStuck' },
    sizes: ['large'],
    runS: 60,
    moves: {
      'supplyTank.pressure': up(2),
      'supply.pressure': up(2),
      'supplyTank.vent.position': up(2),
      'loop.flow': up(30),
    },
    stays: { ...quiet, ...still('pump.running', 'separator.setPoint', 'separator.pressure') },
    because: 'room air fills the supply tank to ambient pressure; the margin is gone',
  },
  {
    order: { fault: 'ventStuck' },
    kinds: ['M', 'H'],
    sizes: ['usual'],
    together: [{ fault: 'powerFailure', size: 'small' }],
    runS: 25,
    moves: { 'pump.running': down(1), 'supplyTank.vent.command': up(2) },
    stays: { ...quiet, ...still('supplyTank.vent.position') },
    because: 'after a dip the refilling tank wants to give gas and cannot',
  },
  {
    order: { fault: 'ambientFall' },
    runS: 300,
    moves: { 'ambient.pressure': down(15) },
    stays: {
      ...quiet,
      ...still(
        'loop.flow',
        'branch.r1.flow',
        'separator.pressure',
        'supplyTank.pressure',
        'supply.pressure',
        'plate.r1a.temperature',
      ),
      ...still('vacuum.exhaustFlow', 'separator.level', 'supply.temperature'),
    },
    because: 'absolute set points: nothing of the loop moves, its margin falls by as much as the barometer',
  },
];
