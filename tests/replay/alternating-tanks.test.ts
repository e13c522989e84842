import { describe, expect, test } from 'vitest';
import { demoFleet } from '../../simulator/src/scenario/demo-fleet';
import type { SettledPlants } from '../../simulator/src/scenario/unit-plant';
import { judgeRecording, type Judged } from './judge-recording';

const startMs = Date.UTC(2026, 2, 3, 9);
const units = demoFleet.filter(({ id }) => id === 'S6');
const settled: SettledPlants = new Map();
const cut = { fault: 'cutServerHose', unit: 'S6', branch: 'r3' };
/** A cycle of the tanks takes some 49 s: in the rest between change-overs, at one, and while the emptied tank is evacuated. */
const moments = [165, 185, 200];

const airOf = ({ transitions }: Judged, entry = 'AIR-1') =>
  transitions
    .filter(({ alarm }) => alarm.startsWith(`S6:${entry}`))
    .map(({ from, to, where, atMs }) => ({ from, to, where, atS: (atMs - startMs) / 1000 }));

/** Gas chokes the return hose of one rack within a second or two, at any moment of the cycle: common practice, no source. */
describe('a hose that is cut in a loop of alternating tanks', () => {
  test.for(
    moments.flatMap((beginsS) => [
      // A slit that opens just with a change-over shows once the neighbours stand higher again, a second later.
      { size: 'small', beginsS, withinS: 7 },
      { size: 'usual', beginsS, withinS: 5 },
      { size: 'large', beginsS, withinS: 5 },
    ]),
  )('raises AIR-1 for its rack within $withinS s: $size, at $beginsS s', ({ size, beginsS, withinS }) => {
    const schedule = [{ atS: beginsS, command: { ...cut, size, action: 'start' } }];
    const air = airOf(judgeRecording({ seed: 1, startMs, seconds: beginsS + 90, units, settled, schedule }));
    expect(air).toMatchObject([{ from: 'normal', to: 'unacknowledged', where: 'Rack 3' }]);
    expect(air[0]?.atS).toBeGreaterThan(beginsS);
    expect(air[0]?.atS).toBeLessThanOrEqual(beginsS + withinS);
  });

  test.for([
    { ends: 'is repaired', command: { ...cut, size: 'usual', action: 'repair' } },
    { ends: 'is isolated with its rack', command: { operation: 'isolateBranch', unit: 'S6', branch: 'r3' } },
  ])('holds AIR-1 through the cycles until it $ends', ({ command }) => {
    const beginsS = 200;
    const endsS = 500;
    const schedule = [
      { atS: beginsS, command: { ...cut, size: 'usual', action: 'start' } },
      { atS: endsS, command },
    ];
    const air = airOf(judgeRecording({ seed: 1, startMs, seconds: 900, units, settled, schedule }));
    expect(air.map(({ to }) => to)).toEqual(['unacknowledged', 'returnedUnacknowledged']);
    expect(air[1]?.atS).toBeGreaterThan(endsS);
  });
});

describe('a sound loop of alternating tanks', () => {
  test.for([1, 2])('raises nothing in twenty minutes of its change-overs, seed %s', (seed) => {
    const { transitions, refused } = judgeRecording({ seed, startMs, seconds: 1200, units });
    expect(refused).toEqual({});
    expect(transitions.filter(({ alarm }) => alarm.startsWith('S6:'))).toEqual([]);
  });

  test.for([
    { step: 'a rise of load by 40 %', command: { fault: 'loadStep', direction: 'rise', size: 'usual' } },
    { step: 'a fall of load by 40 %', command: { fault: 'loadStep', direction: 'fall', size: 'usual' } },
    { step: 'a rack that is isolated', command: { operation: 'isolateBranch', branch: 'r3' } },
  ])('takes $step for no opening', ({ command }) => {
    const schedule = [{ atS: 200, command: { unit: 'S6', action: 'start', ...command } }];
    expect(airOf(judgeRecording({ seed: 1, startMs, seconds: 600, units, settled, schedule }))).toEqual([]);
  });
});

/** A permit for rack 3 is opened five seconds before the hose is: 30 free L/min are expected. */
function underPermit(
  beginsS: number,
  schedule: NonNullable<Parameters<typeof judgeRecording>[0]['schedule']>,
  lastsS = 100,
): Judged {
  let opened = false;
  return judgeRecording(
    { seed: 1, startMs, seconds: beginsS + lastsS, units, settled, schedule },
    (pipeline, nowMs) => {
      if (opened || nowMs < startMs + 1000 * (beginsS - 5)) return;
      opened = true;
      const who = { operator: 'Ada', station: 's', comment: '' };
      const permit = { unit: 'S6', branch: 'r3', untilMs: nowMs + 3_600_000, expectedInLeakM3PerS: 30 / 60_000 };
      expect(pipeline.actOnPermit({ kind: 'openPermit', ...permit, ...who }, nowMs).ok).toBe(true);
    },
  );
}

describe('a hose change by permit in a loop of alternating tanks', () => {
  const hose = { operation: 'openHose', unit: 'S6', branch: 'r3', freeLPerMin: '30', action: 'start' };

  test.for(moments)('raises nothing at any moment of the cycle: %i s', (beginsS) => {
    const judged = underPermit(beginsS, [{ atS: beginsS, command: hose }]);
    expect([...airOf(judged), ...airOf(judged, 'PERMIT-1')]).toEqual([]);
  });

  test.for(moments)(
    'tells far more air than it expects within two cycles of the tanks, and its step at once: %i s',
    (beginsS) => {
      const judged = underPermit(beginsS, [{ atS: beginsS, command: { ...hose, freeLPerMin: '100' } }], 125);
      expect(airOf(judged)[0]?.atS).toBeLessThanOrEqual(beginsS + 7);
      const told = airOf(judged, 'PERMIT-1');
      expect(told).toMatchObject([{ from: 'normal', to: 'unacknowledged' }]);
      // Two spans of 1.2 cycles of 49 s, and the delay of the entry.
      expect(told[0]?.atS).toBeLessThanOrEqual(beginsS + 2 * 59 + 4);
    },
  );

  test('hides no hose that is cut in another rack meanwhile', () => {
    const second = { ...cut, branch: 'r1', size: 'usual', action: 'start' };
    const judged = underPermit(185, [
      { atS: 185, command: hose },
      { atS: 240, command: second },
    ]);
    expect(airOf(judged)).toMatchObject([{ to: 'unacknowledged', where: 'Rack 1' }]);
  });
});
