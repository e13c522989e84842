import { describe, expect, test } from 'vitest';
import { demoFleet, type FleetUnit } from '../../simulator/src/scenario/demo-fleet';
import { judgeRecording, raised } from './judge-recording';

const hour = 3600;
/** In the morning, when load rises fastest in the demo's day. */
const startMs = Date.UTC(2026, 2, 3, 6);

const unitsOf = (...ids: readonly string[]): FleetUnit[] => demoFleet.filter(({ id }) => ids.includes(id));

/** What tells an engineer of a sensor or of a change; values that people type may well be due. */
const ofSensorsAndChange = (alerted: readonly string[]): string[] =>
  alerted.filter((id) => /:(INS|CHANGE)-\d/.test(id));

describe('the demo site in good order', () => {
  test('raises no alarm anywhere in twenty minutes of all its units', () => {
    const judged = judgeRecording({ seed: 1, startMs, seconds: hour / 3 });
    expect(judged.messages).toBeGreaterThan(demoFleet.length * (hour / 3 - 1));
    expect(judged.refused).toEqual({});
    expect(raised(judged)).toEqual([]);
    expect(ofSensorsAndChange(judged.alerted)).toEqual([]);
  });

  test.for([
    { id: 'N4', seed: 2, hours: 1 },
    { id: 'S2', seed: 3, hours: 1 },
    { id: 'N7', seed: 4, hours: 1 },
  ])('raises none in $hours h of $id', ({ id, seed, hours }) => {
    const judged = judgeRecording({ seed, startMs, seconds: hours * hour, units: unitsOf(id) });
    expect(judged.refused).toEqual({});
    const gateways = unitsOf(id).map(({ gateway }) => gateway);
    const mine = judged.transitions.filter(({ alarm }) =>
      [id, ...gateways].some((name) => alarm.startsWith(`${name}:`)),
    );
    expect(ofSensorsAndChange(judged.alerted).filter((alert) => alert.startsWith(`${id}:`))).toEqual([]);
    expect(mine.map(({ alarm, to, atMs }) => `${alarm} ${to} after ${(atMs - startMs) / 1000} s`)).toEqual([]);
  });
});

describe('a recording', () => {
  test('is judged the same twice, to the millisecond', () => {
    const recording = {
      seed: 5,
      startMs,
      seconds: 90,
      units: unitsOf('N3'),
      schedule: [
        { atS: 30, command: { fault: 'cutServerHose', unit: 'N3', branch: 'r2', size: 'usual', action: 'start' } },
      ],
    };
    const first = judgeRecording(recording).transitions;
    expect(first.some(({ entry }) => entry === 'AIR-1')).toBe(true);
    expect(judgeRecording(recording).transitions).toEqual(first);
  });
});
