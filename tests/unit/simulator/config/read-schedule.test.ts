import { expect, test } from 'vitest';
import { readSchedule } from '../../../../simulator/src/config/read-schedule';
import { commandableOf } from '../../../../simulator/src/scenario/commandable';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import { Schedule } from '../../../../simulator/src/scenario/schedule';

const read = (text: string) => readSchedule(text, commandableOf(demoFleet));
const faultsOf = (text: string): string[] => {
  const schedule = read(text);
  return schedule.ok ? [] : schedule.fault.map(({ message }) => message);
};

test('a schedule file gives commands with the seconds from the start', () => {
  const schedule = read(`# two faults at once
- { at: 00:02:00, fault: slowInLeak, unit: N3, size: small }
- at: 01:00:05
  fault: cutServerHose
  unit: N3
  branch: r5
`);
  expect(schedule.ok && schedule.value).toEqual([
    { atS: 120, command: { fault: 'slowInLeak', unit: 'N3', size: 'small' } },
    { atS: 3605, command: { fault: 'cutServerHose', unit: 'N3', branch: 'r5' } },
  ]);
});

test('all faults of a schedule file are told at once, each with its line', () => {
  const faults = faultsOf(`- { at: 2 min, fault: slowInLeak, unit: N3 }
- { at: 00:00:10, fault: slowInLeak, unit: N99 }
- { at: 00:00:20, fault: loadStep, unit: N3 }
- wait
`);
  expect(faults).toHaveLength(3);
  expect(faults[0]).toMatch(/^line 1: at: expected hours:minutes:seconds/);
  expect(faults[1]).toMatch(/^line 2: no such unit/);
  expect(faults[2]).toMatch(/^line 4: expected a row/);
});

test('a file that is no list or no YAML is refused with its line', () => {
  expect(faultsOf('at: 00:00:10')).toEqual([expect.stringMatching(/^line 1: expected a list of rows/)]);
  expect(faultsOf('- { at: "00:00:10"\n- }')[0]).toMatch(/^line \d: this is not YAML/);
  expect(faultsOf('')).toHaveLength(1);
});

test('a schedule gives each command once, in order of time', () => {
  const schedule = new Schedule([
    { atS: 20, command: { n: 2 } },
    { atS: 5, command: { n: 1 } },
    { atS: 20, command: { n: 3 } },
  ]);
  expect(schedule.due(4)).toEqual([]);
  expect(schedule.due(20).map(({ command }) => command['n'])).toEqual([1, 2, 3]);
  expect(schedule.due(100)).toEqual([]);
});
