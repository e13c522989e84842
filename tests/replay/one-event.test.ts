import { expect, test } from 'vitest';
import type { AlarmTransition } from '../../backend/src/evaluation/pipeline/outputs';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import type { FaultCase } from './fault-cases';
import { judgeRecording } from './judge-recording';

const startMs = Date.UTC(2026, 2, 3, 9);
const beginsS = 60;

/** What was raised of these units, in order, with the alarm that it was folded under as it came. */
function raisedOf(ids: readonly string[], command: FaultCase['command'], lastsS: number): AlarmTransition[] {
  const { transitions } = judgeRecording({
    seed: 1,
    startMs,
    seconds: beginsS + lastsS,
    units: demoFleet.filter(({ id }) => ids.includes(id)),
    schedule: [{ atS: beginsS, command: { ...command, action: 'start' } }],
  });
  return transitions.filter(({ from, unit }) => from === 'normal' && unit !== null && ids.includes(unit));
}

const alone = (rows: readonly AlarmTransition[]): string[] =>
  rows.filter(({ foldedUnder }) => foldedUnder === null).map(({ alarm }) => alarm);

/** The source of S4 and N4 rests between its cycles, so that it is not seen to stop: the power of the unit tells. Common practice, no source. */
test.for(['N3', 'S4', 'N4'])('the power of %s fails and comes back: one alarm, told by the pump', (unit) => {
  const rows = raisedOf([unit], { fault: 'powerFailure', unit, size: 'usual' }, 115);
  expect(alone(rows)).toEqual([`${unit}:PUMP-1`]);
  expect(rows.map(({ entry }) => entry)).toContain('FLOW-2');
});

test('a pump that feeds the loop itself stops: the lost flow is the same event', () => {
  const rows = raisedOf(['S7'], { fault: 'pumpTrip', unit: 'S7', size: 'usual' }, 60);
  expect(rows.map(({ entry, foldedUnder }) => [entry, foldedUnder])).toEqual([
    ['PUMP-1', null],
    ['FLOW-2', 'S7:PUMP-1'],
  ]);
});

test('a hose cut on one of two units of a loop is one opening, told by the unit that names the rack', () => {
  const rows = raisedOf(['N8', 'N9'], { fault: 'cutServerHose', unit: 'N8', branch: 'r1' }, 60);
  const air = rows.filter(({ entry }) => entry === 'AIR-1');
  expect(air.map(({ alarm, foldedUnder, where }) => [alarm, foldedUnder, where])).toEqual([
    ['N8:AIR-1', null, 'Rack 1'],
    ['N9:AIR-1', 'N8:AIR-1', null],
  ]);
});
