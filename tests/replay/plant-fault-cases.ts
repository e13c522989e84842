import type { FaultCase, Raised } from './fault-cases';

const r3 = { branch: 'r3' };
const quiet: readonly Raised[] = [];

const onN3 = (
  fault: string,
  lastsS: number,
  must: readonly Raised[],
  may: readonly string[],
  because: string,
  keys: Readonly<Record<string, unknown>> = {},
): FaultCase => ({
  unit: 'N3',
  command: { fault, unit: 'N3', size: 'usual', ...keys },
  lastsS,
  must,
  may,
  because,
});

/**
 * Faults of the plant in their usual size on a unit of type M with many sensors: what comes first, and what must stay quiet.
 * Seconds: the entry's own delay and what the signal needs to travel, common practice, no source.
 */
export const plantFaultCases: readonly FaultCase[] = [
  onN3(
    'cutRackMain',
    60,
    [{ entry: 'AIR-1', withinS: 7, where: 'Rack 3' }],
    ['FLOW-2', 'AIR-4', 'VSRC-2', 'WATER-1', 'MARGIN-2', 'MARGIN-1', 'INS-1'],
    'more air than the sources carry: all flow stops and the low return pipes rise above ambient; no chip, no facility alarm',
    r3,
  ),
  onN3(
    'vacuumSourceDead',
    120,
    [{ entry: 'VSRC-1', withinS: 5 }],
    ['PUMP-2'],
    'without its source the separator rises by tenths of a kilopascal a minute: no air step, margin and flow stand',
  ),
  onN3('vacuumCapacityLoss', 200, quiet, [], 'one source still carries a hose: margin, flows and exhaust stand'),
  onN3('standbyCheckValveLeaks', 120, quiet, [], 'air that goes round in a circle is no air that comes in'),
  onN3('rackBlocked', 120, [{ entry: 'FLOW-3', withinS: 75, where: 'Rack 3' }], [], 'no gas and no level jump', r3),
  onN3('plateBlocked', 120, quiet, [], 'one plate moves its rack by less than a per cent', r3),
  onN3('plateResistance', 120, quiet, [], 'the same heat over a larger difference: no flow moves', r3),
  onN3('exchangerFouled', 300, quiet, [], 'the valve opens and the supply stays; fouling is judged by day means'),
  onN3('exchangerPinhole', 200, quiet, [], 'water comes in, no air: exhaust and margin stand; litres tell over hours'),
  onN3('facilityWarm', 300, [{ entry: 'FAC-2', withinS: 100 }], ['TSUP-1'], 'flows stand, the valve opens'),
  onN3('waterLoss', 200, quiet, [], 'half a litre a minute moves nothing else within minutes'),
  onN3('waterLoss', 200, [{ entry: 'WATER-1', withinS: 10 }], [], 'water in the tray; margin and air stand', {
    option: 'tray',
  }),
  onN3(
    'pumpHeadLoss',
    200,
    [{ entry: 'TANK-1', withinS: 60 }],
    ['TANK-3'],
    'the pump goes to full speed and its tank falls; loop flow and filter resistance stand until it is empty',
  ),
  onN3(
    'filterLoading',
    170,
    [{ entry: 'TANK-1', withinS: 60 }],
    ['TANK-3'],
    'the first sign is the tank that falls, not a flow: loop flow and chips stand',
  ),
  onN3(
    'powerFailure',
    90,
    [{ entry: 'PUMP-1', withinS: 5 }],
    ['VSRC-1', 'TANK-1', 'FLOW-2', 'FLOW-1', 'VSRC-2', 'TANK-3'],
    'all run states fall at once and no air comes in; the margin stands',
  ),
];
