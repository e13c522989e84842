import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSchedule } from '../../../../simulator/src/config/read-schedule';
import { commandableOf } from '../../../../simulator/src/scenario/commandable';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import { FleetSimulation } from '../../../../simulator/src/scenario/fleet-simulation';
import type { SettledPlants } from '../../../../simulator/src/scenario/unit-plant';

const startMs = Date.UTC(2026, 2, 1, 12);
const settled: SettledPlants = new Map();

/** One unit, second by second; what its newest telemetry says. */
function running(...ids: string[]) {
  const units = demoFleet.filter(({ id }) => ids.includes(id));
  const fleet = new FleetSimulation({ seed: 1, startMs, units, settled });
  let newest: Record<string, unknown> = {};
  const other: { topic: string; payload: string }[] = [];
  const run = (seconds: number): void => {
    for (let slot = 0; slot < seconds * units.length; slot += 1) {
      for (const { topic, payload } of fleet.next()) {
        if (topic.includes(ids[0] ?? '')) newest = JSON.parse(payload) as Record<string, unknown>;
        else other.push({ topic, payload });
      }
    }
  };
  const tell = (command: object) => {
    const outcome = fleet.command(JSON.stringify(command));
    return outcome.ok ? null : outcome.fault.code;
  };
  const at = (...path: string[]): unknown =>
    path.reduce<unknown>((place, key) => (place as Record<string, unknown> | undefined)?.[key], newest);
  return { fleet, run, tell, at, other };
}

describe('an operation by command', () => {
  test('stops a unit under vacuum and starts it again, and says its mode meanwhile', () => {
    const { run, tell, at, fleet } = running('N7');
    expect(tell({ operation: 'standby', unit: 'N7' })).toBeNull();
    run(30);
    expect(at('mode')).toBe('STANDBY');
    expect(at('pump', 'run')).toBe(false);
    expect(Number(at('tank', 'p'))).toBeLessThan(90);
    expect(tell({ operation: 'standby', unit: 'N7', action: 'repair' })).toBeNull();
    expect(fleet.active().map(({ id }) => id)).toEqual(['start']);
    run(400);
    expect(at('mode')).toBe('RUN');
    expect(fleet.active()).toEqual([]);
  });

  test('opens a hose under a permit and lists it until it is closed', () => {
    const { run, tell, fleet } = running('S1');
    expect(tell({ operation: 'openHose', unit: 'S1', branch: 'r2' })).toBeNull();
    run(2);
    expect(fleet.active()).toMatchObject([{ id: 'openHose', branch: 'r2' }]);
    expect(tell({ operation: 'closeHose', unit: 'S1', branch: 'r2' })).toBeNull();
    run(2);
    expect(fleet.active()).toEqual([]);
  });

  test('sets a set point within its range and refuses one beyond it', () => {
    const { run, tell, at } = running('S1');
    expect(tell({ operation: 'setSupplyTemperature', unit: 'S1', value: 33.5 })).toBeNull();
    expect(tell({ operation: 'setSupplyTemperature', unit: 'S1', value: 80 })).toBe('COMMAND_SHAPE');
    run(1);
    expect(at('values', 'supply.setPoint')).toBe(33.5);
  });

  test('sends a reading by hand as a bare number on its own topic', () => {
    const { run, tell, other } = running('N7');
    expect(tell({ operation: 'handEntry', unit: 'N7', point: 'water.conductivity', value: 18.4 })).toBeNull();
    run(1);
    expect(other).toContainEqual(expect.objectContaining({ topic: 'quillmere/bench/conductivity', payload: '18.4' }));
  });

  test('ages a part as fast as wanted, and renews it', () => {
    const { run, tell, at } = running('N7');
    run(10);
    const clean = Number(at('filter', 'dp'));
    // 60 days in 10 s: the filter's resistance doubles
    expect(tell({ operation: 'age', unit: 'N7', part: 'filter', timesAsFast: 518_400 })).toBeNull();
    run(11);
    expect(Number(at('filter', 'dp')) / clean).toBeGreaterThan(1.7);
    expect(tell({ operation: 'renew', unit: 'N7', part: 'filter' })).toBeNull();
    run(10);
    expect(Number(at('filter', 'dp')) / clean).toBeLessThan(1.2);
  });
});

describe('a sensor that drifts', () => {
  test('tells the set point while the regulator moves the true pressure the other way', () => {
    const { run, tell, at } = running('N3');
    run(5);
    const inlet = Number(at('pump', 'inlet'));
    expect(tell({ fault: 'sensorDrift', unit: 'N3', point: 'separator.pressure', size: 'usual' })).toBeNull();
    run(120);
    expect(Math.abs(Number(at('separator', 'p')) - 32)).toBeLessThan(0.9);
    // 2 kPa at full strength; the pump's own inlet sensor sees the truth
    expect(Number(at('pump', 'inlet')) - inlet).toBeLessThan(-1);
  });

  test('needs a sensor that the unit has', () => {
    const { tell } = running('N7', 'S1');
    expect(tell({ fault: 'sensorDrift', unit: 'N7', point: 'branch.r2.flow' })).toBe('COMMAND_POINT');
  });
});

test('two faults act at once on one unit, and each is repaired by itself', () => {
  const { run, tell, fleet } = running('S1');
  expect(tell({ fault: 'slowInLeak', unit: 'S1' })).toBeNull();
  expect(tell({ fault: 'filterLoading', unit: 'S1', size: 'small' })).toBeNull();
  run(2);
  expect(fleet.active().map(({ id }) => id)).toEqual(['slowInLeak', 'filterLoading']);
  expect(tell({ fault: 'slowInLeak', unit: 'S1', action: 'repair' })).toBeNull();
  run(2);
  expect(fleet.active().map(({ id }) => id)).toEqual(['filterLoading']);
});

test('the example of a schedule file holds only what can be commanded', () => {
  const file = new URL('../../../../simulator/demo-site/schedule-example.yaml', import.meta.url);
  const schedule = readSchedule(readFileSync(file, 'utf8'), commandableOf(demoFleet));
  expect(schedule.ok ? [] : schedule.fault).toEqual([]);
  expect(schedule.ok && schedule.value.length).toBeGreaterThan(10);
});
