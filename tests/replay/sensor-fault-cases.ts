import type { FaultCase, Raised } from './fault-cases';

const lies = (fault: string, point: string, because: string, must: readonly Raised[] = []): FaultCase => ({
  unit: 'N3',
  command: { fault, unit: 'N3', point },
  lastsS: 100,
  must,
  may: [],
  because,
});

/** A sensor lies and the plant is well: no alarm of the plant may come of it. Common practice, no source. */
export const sensorFaultCases: readonly FaultCase[] = [
  lies('sensorStuck', 'return.temperature', 'a value that stands still lies within what the plant does'),
  lies('sensorNoisy', 'separator.level', 'noise takes away from a step, and is learnt; no water has moved'),
  lies('sensorDrift', 'supply.temperature', 'it creeps off over hours'),
  lies('ventPlugged', 'supply.pressure', 'a gauge that cannot breathe goes with the barometer, over hours'),
  lies('bubblesAtMeter', 'loop.flow', 'a meter that loses its echo is no lost flow'),
  lies('fullScaleCode', 'separator.pressure', 'the code of a dead input is no pressure', [
    { entry: 'INS-1', withinS: 5 },
  ]),
  lies(
    'swappedSensors',
    'supply.temperature',
    'chips cannot cool water: the pair tells the other way round what the chips give off, so that the supply is not warm',
    [{ entry: 'INS-3', withinS: 70, where: 'supply.temperature' }],
  ),
];
