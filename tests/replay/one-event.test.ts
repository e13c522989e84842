import { expect, test } from 'vitest';
import type { AlarmRecord, AlarmTransition } from '../../backend/src/evaluation/pipeline/outputs';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import type { FaultCase } from './fault-cases';
import { judgeRecording } from './judge-recording';

const startMs = Date.UTC(2026, 2, 3, 9);
const beginsS = 60;

type Look = Parameters<typeof judgeRecording>[1];

/** What was raised of these units, in order, with the alarm that it was folded under as it came. */
function raisedOf(ids: readonly string[], command: FaultCase['command'], lastsS: number, look?: Look) {
  const recording = {
    seed: 1,
    startMs,
    seconds: beginsS + lastsS,
    units: demoFleet.filter(({ id }) => ids.includes(id)),
    schedule: [{ atS: beginsS, command: { ...command, action: 'start' } as Readonly<Record<string, string>> }],
  };
  const { transitions } = judgeRecording(recording, look);
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

/** Gas of a large opening reaches the other unit's racks too, and moves one of them a little more than its neighbours. */
test.for([
  { unit: 'N8', other: 'N9', branch: 'r1', size: 'usual', where: 'Rack 1' },
  { unit: 'N8', other: 'N9', branch: 'r1', size: 'large', where: 'Rack 1' },
  { unit: 'N9', other: 'N8', branch: 'r3', size: 'large', where: 'Rack 3' },
  { unit: 'N8', other: 'N9', branch: 'r4', size: 'usual', checkValve: 'stuckOpen', where: 'Rack 4' },
] as const)(
  'a hose cut on one of two units of a loop is one opening, told by the unit that names the rack: $unit $branch $size',
  ({ where, other, ...command }) => {
    let standing: readonly AlarmRecord[] = [];
    const rows = raisedOf(['N8', 'N9'], { fault: 'cutServerHose', ...command }, 60, (pipeline) => {
      standing = pipeline.standing();
    });
    const told = `${command.unit}:AIR-1`;
    const air = standing.filter(({ entry }) => entry === 'AIR-1');
    expect(new Map(air.map(({ alarm, foldedUnder }) => [alarm, foldedUnder]))).toEqual(
      new Map([
        [told, null],
        [`${other}:AIR-1`, told],
      ]),
    );
    const places = rows.filter(({ entry }) => entry === 'AIR-1').map(({ unit, where: named }) => [unit, named]);
    expect(new Map(places as [string, string | null][])).toEqual(
      new Map([
        [command.unit, where],
        [other, null],
      ]),
    );
  },
);
