import { describe, expect, test } from 'vitest';
import { Pace } from '../../../../simulator/src/publish/pace';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import { FleetSimulation } from '../../../../simulator/src/scenario/fleet-simulation';

const units = demoFleet.filter(({ id }) => ['N7', 'S1'].includes(id));
const startMs = Date.UTC(2026, 2, 1);

function paced(speed: number) {
  const fleet = new FleetSimulation({ seed: 1, startMs, units });
  let nowMs = 0;
  const pace = new Pace(fleet, speed, { now: () => nowMs });
  let slots = 0;
  return {
    fleet,
    run(ms: number): number {
      nowMs += ms;
      slots = 0;
      pace.runDue(() => (slots += 1));
      return slots;
    },
  };
}

describe('the pace', () => {
  test('gives each unit one slot a second at real speed', () => {
    const { run } = paced(1);
    run(0);
    expect([run(499), run(1), run(500), run(500)]).toEqual([0, 1, 1, 1]);
  });

  test('gives sixty a second when sixty times as fast', () => {
    const { run } = paced(60);
    run(0);
    expect(run(1000)).toBe(120);
  });

  test('stands still while nothing is taken, and goes on from there', () => {
    const fleet = new FleetSimulation({ seed: 1, startMs, units });
    let nowMs = 0;
    const pace = new Pace(fleet, 60, { now: () => nowMs });
    for (let i = 0; i < 10; i += 1) {
      nowMs += 1000;
      pace.runDue(
        () => undefined,
        () => false,
      );
    }
    expect(fleet.nextMs).toBe(startMs);
    pace.runDue(() => undefined);
    // at most three seconds of the wall are made up for
    expect(fleet.nextMs - startMs).toBeLessThanOrEqual(3 * 60_000 + 1000);
    expect(fleet.nextMs).toBeGreaterThan(startMs);
  });

  test('makes up for the time that the fleet took to settle', () => {
    const fleet = new FleetSimulation({ seed: 1, startMs, units });
    const pace = new Pace(fleet, 1, { now: () => 2000 }, 0);
    pace.runDue(() => undefined);
    expect(fleet.nextMs - startMs).toBeGreaterThan(2000);
  });

  test('leaves out the time that the machine slept, so that source times stay those of the wall', () => {
    const { fleet, run } = paced(1);
    run(3_600_000);
    expect(fleet.nextMs - startMs).toBeGreaterThan(3_598_000);
    expect(fleet.nextMs - startMs).toBeLessThanOrEqual(3_601_000);
  });
});
