import { down, still, up, type FaultRow } from './fault-row';

const quiet = still('water.found', 'topUp.volume', 'facility.supply.temperature', 'vacuum.running');

export const pumpRows: readonly FaultRow[] = [
  {
    order: { fault: 'pumpHeadLoss' },
    kinds: ['M', 'H'],
    runS: 60,
    moves: {
      'pump.speed': up(15),
      'pump.power': up(15),
      'supplyTank.level': down(30),
      'separator.level': up(30),
      'pump.discharge.pressure': down(5),
    },
    stays: { ...quiet, ...still('separator.pressure', 'plate.r1a.temperature', 'branch.r1.flow', 'pump.running') },
    because:
      'the level control hides it in the speed until that is at its end; loop flow stays until the tank runs down',
  },
  {
    order: { fault: 'pumpHeadLoss' },
    kinds: ['bench'],
    runS: 120,
    moves: { 'pump.speed': up(15), 'pump.discharge.pressure': down(10) },
    stays: { ...quiet, ...still('separator.pressure', 'loop.flow', 'plate.r1a.temperature', 'supplyTank.level') },
    because: 'the bench’s pump has head to spare: speed tells, level does not',
  },
  {
    order: { fault: 'pumpTrip' },
    runS: 60,
    moves: {
      'pump.running': down(1),
      'pump.speed': down(1),
      'transfer.flow': down(1),
      'filter.pressureDrop': down(1),
      'supplyTank.level': down(4),
      'separator.level': up(4),
      'supplyTank.vent.position': up(2),
    },
    stays: { ...quiet, ...still('pump.command', 'vacuum.command'), 'separator.pressure': 3500 },
    because: 'what the loop takes is no longer brought back: one tank falls, the other rises, the separator stays',
  },
  {
    order: { fault: 'pumpTrip' },
    kinds: ['M', 'H'],
    sizes: ['usual', 'large'],
    runS: 60,
    moves: { 'branch.r1.flow': down(20), 'plate.r1a.temperature': up(30), 'loop.flow': down(5) },
    stays: { ...quiet, 'separator.pressure': 3500 },
    because: 'a hundred litres last a quarter of a minute, then nothing cools the chips',
  },
  {
    order: { fault: 'filterLoading' },
    kinds: ['M', 'H'],
    runS: 60,
    moves: {
      'filter.pressureDrop': up(3),
      'pump.discharge.pressure': up(5),
      'pump.speed': up(20),
      'pump.power': up(15),
      'supplyTank.level': down(40),
    },
    stays: { ...quiet, ...still('separator.pressure', 'pump.running') },
    because: 'more resistance in the transfer line: speed up, and once that is at its end the tank falls',
  },
  {
    order: { fault: 'filterLoading' },
    kinds: ['M'],
    runS: 60,
    moves: { 'filter.pressureDrop': up(3) },
    stays: { ...still('branch.r1.flow', 'plate.r1a.temperature', 'vacuum.speed'), 'loop.flow': (0.03 * 346) / 60000 },
    because: 'loop flow and chips are fed by the tank, not by the filter, as long as it lasts',
  },
  {
    order: { fault: 'filterLoading' },
    kinds: ['bench'],
    runS: 120,
    moves: { 'filter.pressureDrop': up(5), 'pump.speed': up(25), 'pump.discharge.pressure': up(8) },
    stays: { ...quiet, ...still('loop.flow', 'separator.pressure', 'plate.r1a.temperature', 'supplyTank.level') },
    because: 'the bench’s pump has head to spare',
  },
];
