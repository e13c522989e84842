import { describe, expect, it } from 'vitest';
import type { AlertChange } from '../../../../../backend/src/evaluation/pipeline/alert-record';
import type { OpenPermit } from '../../../../../backend/src/evaluation/pipeline/permit-record';
import { Plant, plantSite, type PlantOptions } from './plant';

const lpm = 1 / 60_000;
const exhaust = { 'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min', accuracy: '3 % of reading' } };
const rack = (id: string): object => ({ [id]: { name: `Rack ${id.slice(1)}`, ratedFlow: '43 L/min' } });
const branches = (...ids: string[]): object => Object.assign({}, ...ids.map(rack)) as object;
const site = (racks: object, more: PlantOptions = {}) =>
  plantSite({ units: ['m1', 'm2'], points: exhaust, unit: { branches: racks }, ...more });
const allFour = branches('r1', 'r2', 'r3', 'r4');

const plantInAir = (): Plant => {
  const plant = new Plant(site(allFour));
  for (const telemetry of Object.values(plant.telemetry)) Object.assign(telemetry, { exhaust: 2 });
  return plant.run(40);
};
const leak = (plant: Plant, freeLpm: number): void => void Object.assign(plant.m1, { exhaust: freeLpm });
function open(plant: Plant, branch: string | null, freeLpm: number, minutes = 60): string {
  const permit: OpenPermit = {
    kind: 'openPermit',
    unit: 'm1',
    branch,
    untilMs: plant.nowMs + minutes * 60_000,
    expectedInLeakM3PerS: freeLpm * lpm,
    operator: 'Ada',
    station: 's',
    comment: '',
  };
  const outcome = plant.pipeline.actOnPermit(permit, plant.nowMs);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.change.permit.id;
}

describe('a reload that removes the branch of a permit', () => {
  it('closes that permit by configuration, and leaves nothing of what it allowed', () => {
    const plant = plantInAir();
    const closed = open(plant, 'r4', 30);
    leak(plant, 32);
    plant.run(30);
    expect(plant.entries()).toEqual([]);
    plant.reload(site(branches('r1', 'r2', 'r3')));
    expect(plant.pipeline.permits()).toEqual([]);
    expect(plant.pipeline.takePermitChanges()).toEqual([
      expect.objectContaining({
        what: 'closed',
        actor: null,
        comment: expect.stringMatching(/^configuration: /) as string,
        permit: expect.objectContaining({ id: closed, closedBy: null, closedMs: plant.nowMs }) as object,
      }),
    ]);
    // Air that comes in now is no more judged by what that permit expected.
    leak(plant, 77);
    plant.run(20);
    expect(plant.entries()).toContain('AIR-1');
    expect(plant.standing('PERMIT-1')).toBeUndefined();
  });

  it('keeps what the other permits of the unit allow, and no more', () => {
    const plant = plantInAir();
    const kept = open(plant, 'r1', 20);
    open(plant, 'r4', 30);
    plant.reload(site(branches('r1', 'r2', 'r3')));
    expect(plant.pipeline.permits().map(({ id }) => id)).toEqual([kept]);
    leak(plant, 22);
    plant.run(40);
    expect(plant.entries()).toEqual([]);
    leak(plant, 77);
    plant.run(20);
    // 2 free L/min stood before; 20 of the 75 more are expected.
    expect(plant.pipeline.detailOf('m1:PERMIT-1')).toContain('55 free L/min more than the permit');
  });

  it('is overdue no more where only the permit that is gone was', () => {
    const plant = plantInAir();
    open(plant, 'r1', 30, 60);
    open(plant, 'r4', 30, 1);
    plant.run(70);
    expect(plant.standing('PERMIT-1')?.active).toBe(true);
    plant.reload(site(branches('r1', 'r2', 'r3'))).run(60);
    expect(plant.standing('PERMIT-1')?.active).toBe(false);
  });
});

describe('a reload that leaves the place of a permit alone', () => {
  it('lets it stand, with its branch found by its id wherever that is now', () => {
    const plant = plantInAir();
    open(plant, 'r4', 30);
    const before = plant.pipeline.permits();
    plant.reload(site(branches('r4', 'r3', 'r2', 'r1')));
    expect(plant.pipeline.permits()).toEqual(before);
    expect(plant.pipeline.takePermitChanges()).toEqual([]);
    // Air that the permit expects does not excuse an opening that shows on the rack that now stands last.
    leak(plant, 32);
    Object.assign(plant.m1.racks['r1'] ?? {}, { flow: 20, p: 65 });
    expect(plant.run(6).standing('AIR-1')).toMatchObject({ where: 'Rack 1' });
  });

  it('closes one for a whole loop where the unit is gone', () => {
    const plant = plantInAir();
    open(plant, null, 30);
    plant.reload(plantSite({ units: ['m2'], points: exhaust }));
    expect(plant.pipeline.permits()).toEqual([]);
    expect(plant.pipeline.takePermitChanges().map(({ what }) => what)).toEqual(['closed']);
  });

  it('tells what was to be told of permits before it, first', () => {
    const plant = plantInAir();
    open(plant, 'r4', 30, 1);
    plant.run(70);
    plant.reload(site(branches('r1', 'r2', 'r3')));
    expect(plant.pipeline.takePermitChanges().map(({ what }) => what)).toEqual(['overdue', 'closed']);
  });
});

describe('alerts over a reload', () => {
  /** A unit in hand is an alert. */
  const local = { 'control.manual': { path: 'local' } };
  const withLocal = (units: readonly string[], more: PlantOptions = {}) => plantSite({ units, points: local, ...more });
  const shown = (plant: Plant): string[] => plant.pipeline.alerts().map(({ unit, entry }) => `${unit}:${entry}`);
  const told = (plant: Plant): string[] =>
    plant.pipeline.takeAlertChanges().map(({ what, alert }: AlertChange) => `${what} ${alert.unit}:${alert.entry}`);
  const inHand = (): Plant => {
    const plant = new Plant(withLocal(['m1', 'm2']));
    plant.run(40);
    for (const id of ['m1', 'm2']) Object.assign(plant.telemetry[id] ?? {}, { local: true });
    return plant.run(120);
  };

  it('stay where the unit stays, and go with the unit that goes, told once', () => {
    const plant = inHand();
    expect(shown(plant).sort()).toEqual(['m1:SET-1', 'm2:SET-1']);
    told(plant);
    const [kept] = plant.pipeline.alerts().filter(({ unit }) => unit === 'm2');
    plant.reload(withLocal(['m2']));
    expect(plant.pipeline.alerts()).toEqual([kept]);
    expect(told(plant)).toEqual(['went m1:SET-1']);
    plant.run(60);
    expect(shown(plant)).toEqual(['m2:SET-1']);
    expect(told(plant)).toEqual([]);
  });

  it('go where their entry is switched off', () => {
    const plant = inHand();
    told(plant);
    plant.reload(withLocal(['m1', 'm2'], { unit: { limits: { 'SET-1': { enabled: false } } } }));
    plant.run(60);
    expect(shown(plant)).toEqual([]);
    expect(told(plant).sort()).toEqual(['went m1:SET-1', 'went m2:SET-1']);
  });
});

describe('slots over a reload', () => {
  it('are kept where id and unit of measure are unchanged, whatever else is said anew of the point', () => {
    const plant = new Plant(site(allFour)).run(40);
    const accuracy = {
      'supply.temperature': { path: 'tSupply', unit: '°C', accuracy: 'Pt100 B', range: '0 to 95 °C' },
    };
    const value = (p: Plant): number | undefined => {
      const { site: now, state } = p.pipeline;
      const holder = now.holders.find(({ id }) => id === 'm1');
      return state.value[holder?.slotOf.get('supply.temperature') ?? -1];
    };
    const before = value(plant);
    expect(before).toBeCloseTo(36.3, 6);
    plant.reload(site(allFour, { points: { ...exhaust, ...accuracy } }));
    expect(value(plant)).toBe(before);
    plant.reload(site(allFour, { points: { ...exhaust, 'supply.temperature': { path: 'tSupply', unit: '°F' } } }));
    expect(value(plant)).toBeNaN();
  });
});
