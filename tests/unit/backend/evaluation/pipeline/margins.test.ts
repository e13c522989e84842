import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';

/** A plant that has run well for long enough that every window is full. */
const settled = (): Plant => new Plant().run(40);

/** Seconds from now until the entry is raised; −1 where it is not within `within`. */
function secondsUntil(plant: Plant, entry: string, within: number): number {
  for (let second = 1; second <= within; second += 1) {
    plant.run(1);
    if (plant.standing(entry)?.active === true) return second;
  }
  return -1;
}

const states = (plant: Plant, entry: string): string[] =>
  plant.transitions.filter((t) => t.entry === entry).map((t) => t.to);

describe('MARGIN-1', () => {
  it('is raised 10 s after the worst margin less its uncertainty is below 5 kPa, and says where', () => {
    const plant = settled();
    plant.m1.pTank = 82;
    expect(secondsUntil(plant, 'MARGIN-1', 20)).toBe(11);
    expect(plant.standing('MARGIN-1')).toMatchObject({
      priority: 2,
      limit: 5000,
      where: 'Supply main under the floor',
    });
    expect(plant.standing('MARGIN-1')?.value).toBeLessThan(5000);
    expect(plant.standing('MARGIN-1')?.sinceMs).toBeLessThan(plant.nowMs - 9999);
  });

  it('takes the expanded uncertainty off: 5.4 kPa known to ± 0.75 kPa is too little', () => {
    // Tank ± 0.4 kPa, barometer ± 0.1 kPa, height ± 0.05 m, each a/√3: U = 0.75 kPa with k = 2 (GUM 4.3.7, 6.2.1).
    const plant = settled();
    plant.m1.pTank = 101.3 - 14.6 - 5.4;
    plant.run(15);
    expect(plant.standing('MARGIN-1')?.value).toBeLessThan(5000);
  });

  it('does not clear within its deadband, and clears 15 s after it is left', () => {
    const plant = settled();
    plant.m1.pTank = 82;
    plant.run(20);
    plant.m1.pTank = 81;
    plant.run(60);
    expect(plant.standing('MARGIN-1')?.active).toBe(true);
    plant.m1.pTank = 79;
    plant.run(15);
    expect(plant.standing('MARGIN-1')?.active).toBe(true);
    plant.run(1);
    expect(plant.standing('MARGIN-1')?.state).toBe('returnedUnacknowledged');
  });

  it('is raised in a stopped and vented loop too: never suppressed by mode', () => {
    const plant = new Plant(plantSite({ modePoint: true })).run(40);
    Object.assign(plant.m1, { mode: 'vented', flow: 0, pTank: 101.3, pSeparator: 101.3, pumpRunning: false });
    plant.run(15);
    expect(plant.entries()).toContain('MARGIN-2');
    expect(plant.standing('MARGIN-1')?.foldedUnder).toBe('m1:MARGIN-2');
  });

  it('takes limit and delay from the site file', () => {
    const limits = { 'MARGIN-1': { limit: '14 kPa', onDelay: '3 s' } };
    const plant = new Plant(plantSite({ unit: { limits } }));
    expect(secondsUntil(plant, 'MARGIN-1', 10)).toBeLessThanOrEqual(5);
    expect(plant.standing('MARGIN-1')?.limit).toBe(14_000);
  });

  it('is not judged where the site file switches it off', () => {
    const plant = new Plant(plantSite({ unit: { limits: { 'MARGIN-1': { enabled: false } } } })).run(10);
    plant.m1.pTank = 82;
    expect(plant.run(30).entries()).toEqual([]);
  });
});

describe('the margins of a main with much loss', () => {
  // Standing, 1.5 m of water alone stands between tank and floor (14.6 kPa); running, 9 kPa of loss are taken off it.
  const nodes = {
    floorSupply: { name: 'Floor', main: 'supply', elevation: '-0.5 m', loss: '9 kPa' },
    floorReturn: { name: 'Floor return', main: 'return', elevation: '-0.5 m', loss: '3 kPa' },
  };

  it('raise MARGIN-1 by what a stop would leave, and MARGIN-2 by what is now', () => {
    const plant = new Plant(plantSite({ unit: { nodes } })).run(40);
    plant.m1.pTank = 88;
    plant.run(20);
    // Standing: 88 + 14.6 = 102.6 kPa against 101.3 outside; running 93.6 kPa.
    expect(plant.entries()).toEqual(['MARGIN-1']);
    expect(plant.standing('MARGIN-1')?.value).toBeLessThan(-1000);
    Object.assign(plant.m1, { flow: 0, pumpRunning: false });
    plant.run(6);
    expect(plant.standing('MARGIN-2')?.value).toBeLessThan(-1000);
  });

  it('leave MARGIN-1 alone while the worst of both is good', () => {
    const plant = new Plant(plantSite({ unit: { nodes } })).run(40);
    plant.m1.pTank = 80;
    expect(plant.run(20).entries()).toEqual([]);
  });
});

describe('MARGIN-2', () => {
  it('is raised 3 s after the actual margin is below zero, no milder than MARGIN-1 that it hides', () => {
    const plant = settled();
    plant.m1.pTank = 90;
    expect(secondsUntil(plant, 'MARGIN-2', 10)).toBe(4);
    expect(plant.standing('MARGIN-2')?.priority).toBe(2);
    plant.run(10);
    expect(plant.standing('MARGIN-1')).toMatchObject({ priority: 2, foldedUnder: 'm1:MARGIN-2' });
  });

  it('is priority 1 where water is found, and is said anew when that comes later', () => {
    const plant = settled();
    plant.m1.pTank = 90;
    plant.run(10);
    plant.pipeline.act(
      { kind: 'acknowledge', alarm: 'm1:MARGIN-2', operator: 'Ada', station: 's', comment: '' },
      plant.nowMs,
    );
    plant.m1.water = true;
    plant.run(5);
    expect(plant.standing('MARGIN-2')).toMatchObject({ state: 'unacknowledged', priority: 1, acknowledgedBy: null });
    plant.run(10);
    expect(states(plant, 'MARGIN-2')).toEqual(['unacknowledged', 'unacknowledged']);
  });

  it('becomes priority 1 by water that is found while the margin itself is not known', () => {
    const plant = settled();
    plant.m1.pTank = 90;
    plant.run(10);
    plant.m1.tSupply = null;
    plant.run(20);
    expect(plant.standing('MARGIN-2')).toMatchObject({ active: true, priority: 2 });
    plant.m1.water = true;
    plant.run(5);
    expect(plant.standing('MARGIN-2')).toMatchObject({ active: true, priority: 1 });
    plant.m1.water = false;
    plant.run(60);
    expect(plant.standing('MARGIN-2')).toMatchObject({ active: true, priority: 1 });
  });

  it('sends nobody to a branch where the water is in the unit’s own tray', () => {
    const plant = new Plant(plantSite({ points: { 'tray.water.found': { path: 'tray' } } }));
    Object.assign(plant.m1, { tray: false });
    plant.run(40);
    Object.assign(plant.m1, { pTank: 90, tray: true });
    plant.run(10);
    expect(plant.pipeline.detailOf('m1:MARGIN-2')).toMatch(/own tray: no branch stands above it/);
    Object.assign(plant.m1, { water: true });
    plant.run(10);
    expect(plant.pipeline.detailOf('m1:MARGIN-2')).toMatch(/the branch above it and isolate it/);
  });

  it('hides MARGIN-1, which comes out again when it clears', () => {
    const plant = settled();
    plant.m1.pTank = 90;
    plant.run(15);
    expect(plant.standing('MARGIN-1')?.foldedUnder).toBe('m1:MARGIN-2');
    plant.m1.pTank = 82;
    plant.run(10);
    expect(plant.standing('MARGIN-2')?.active).toBe(false);
    expect(plant.standing('MARGIN-1')).toMatchObject({ active: true, foldedUnder: null });
  });
});

describe('margins that alarms judge', () => {
  const raw = (plant: Plant, point: string): { readonly value: number; readonly u: number } => {
    const slot = plant.site.holders.find(({ id }) => id === 'm1')?.slotOf.get(point) ?? -1;
    const { state } = plant.pipeline;
    return { value: state.value[slot] ?? Number.NaN, u: state.expandedUncertainty[slot] ?? Number.NaN };
  };

  it('are less their expanded uncertainty: BOIL-1 is raised while the wall may be within its guard', () => {
    const plant = settled();
    let last = Number.NaN;
    // The wall comes nearer by 0.1 kPa at a time, slowly enough for the delay of 15 s.
    while (plant.standing('BOIL-1')?.active !== true && plant.m1.pSeparator > 10) {
      plant.m1.pSeparator -= 0.1;
      plant.run(20);
      last = raw(plant, 'lowerWallMargin').value;
    }
    const { value, limit } = plant.standing('BOIL-1') ?? {};
    const { u } = raw(plant, 'lowerWallMargin');
    expect(u).toBeGreaterThan(200);
    expect(value).toBeLessThan(limit ?? Number.NaN);
    expect(last).toBeGreaterThan(limit ?? Number.NaN);
    expect(value).toBeCloseTo(last - u, 6);
  });

  it('are what they are where the words say that one is gone: MARGIN-2 waits for ambient itself', () => {
    const plant = settled();
    while (plant.standing('MARGIN-2')?.active !== true && plant.m1.pTank < 101) {
      plant.m1.pTank += 0.1;
      plant.run(6);
    }
    expect(raw(plant, 'vacuumMargin').value).toBeLessThan(0);
    expect(raw(plant, 'vacuumMargin').value).toBeGreaterThan(-150);
  });
});
