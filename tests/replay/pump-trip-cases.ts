import type { FaultCase } from './fault-cases';

const follows: readonly string[] = ['TANK-1', 'FLOW-2', 'FLOW-1', 'TANK-3', 'TSUP-1'];

const trip = (unit: string, size: 'small' | 'usual', lastsS: number): FaultCase => ({
  unit,
  command: { fault: 'pumpTrip', unit, size },
  lastsS,
  must: [{ entry: 'PUMP-1', withinS: 5 }],
  may: size === 'small' ? [] : follows,
  because:
    'the separator takes the water that the pump no longer moves, which pushes its gas out; the two tanks together gain none, so no air has come in',
});

/**
 * The pump between the tanks trips, and comes back by itself: after 8 s, or after 120 s when the flow is long gone. With
 * an exhaust meter, without one, on a bench, and with levels only. Ideal gas at constant volume; common practice, no source.
 */
export const pumpTripCases: readonly FaultCase[] = [
  trip('N3', 'usual', 160),
  trip('S4', 'usual', 160),
  trip('N4', 'usual', 160),
  trip('N3', 'small', 60),
  trip('N1', 'small', 60),
  trip('N6', 'usual', 100),
  trip('N7', 'usual', 60),
];
