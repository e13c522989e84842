import { down, still, up, type FaultRow } from './fault-row';

const quiet = still('water.found', 'topUp.volume', 'pump.running', 'vacuum.running', 'branch.r1.power');
const flows = still('loop.flow', 'branch.r1.flow', 'separator.level', 'separator.pressure');

export const facilityRows: readonly FaultRow[] = [
  {
    order: { fault: 'exchangerFouled' },
    runS: 600,
    moves: {
      'valve.command': up(90),
      'valve.position': up(90),
      'facility.return.temperature': down(30),
      'supply.temperature': up(90),
    },
    stays: { ...quiet, ...flows, ...still('facility.supply.temperature', 'plate.r1a.temperature') },
    because:
      'the valve opens for the same heat and brings more facility water back less warm; the supply returns to its set point',
  },
  {
    order: { fault: 'facilityWarm' },
    runS: 300,
    moves: {
      'facility.supply.temperature': up(4),
      'supply.temperature': up(40),
      'valve.command': up(50),
      'facility.flow': up(200),
    },
    stays: { ...quiet, ...flows },
    because: 'the building gives warmer water and the valve opens',
  },
  {
    order: { fault: 'facilityFlowLost' },
    runS: 90,
    moves: {
      'facility.flow': down(3),
      'supply.temperature': up(15),
      'valve.command': up(20),
      'return.temperature': up(80),
    },
    stays: { ...quiet, ...still('loop.flow', 'branch.r1.flow', 'facility.supply.temperature', 'branch.r1.power') },
    because: 'nothing takes the heat; the loop’s flow does not know it yet',
  },
  {
    order: { fault: 'valveStuck' },
    sizes: ['small', 'usual'],
    runS: 600,
    moves: {},
    stays: { ...quiet, ...flows, ...still('valve.position', 'supply.temperature', 'facility.flow') },
    because: 'a valve that need not move shows nothing',
  },
  {
    order: { fault: 'valveStuck' },
    sizes: ['usual'],
    together: [{ fault: 'loadStep', direction: 'fall' }],
    runS: 300,
    moves: { 'valve.command': down(150), 'supply.temperature': down(150) },
    stays: still('valve.position', 'facility.flow', 'loop.flow', 'facility.supply.temperature'),
    because: 'the command moves, the position does not: without both points it cannot be found',
  },
  {
    order: { fault: 'valveStuck' },
    sizes: ['large'],
    runS: 120,
    moves: {
      'valve.position': down(2),
      'facility.flow': down(10),
      'valve.command': up(30),
      'supply.temperature': up(25),
    },
    stays: { ...quiet, ...still('loop.flow', 'facility.supply.temperature') },
    because: 'its spring shuts it against its command',
  },
  {
    order: { fault: 'loadStep', direction: 'rise' },
    runS: 300,
    moves: {
      'branch.r1.power': up(1),
      'plate.r1a.temperature': up(20),
      'return.temperature': up(25),
      'valve.command': up(170),
    },
    stays: {
      ...still('branch.r1.flow', 'separator.level', 'water.found', 'facility.supply.temperature', 'pump.running'),
    },
    because: 'power, chips and return rise in that order; no flow and no level: not a fault of the plant',
  },
  {
    order: { fault: 'loadStep', direction: 'fall' },
    runS: 300,
    moves: {
      'branch.r1.power': down(1),
      'plate.r1a.temperature': down(20),
      'return.temperature': down(25),
      'valve.command': down(170),
    },
    stays: {
      ...still('branch.r1.flow', 'separator.level', 'water.found', 'facility.supply.temperature', 'pump.running'),
    },
    because: 'the same downwards',
  },
];
