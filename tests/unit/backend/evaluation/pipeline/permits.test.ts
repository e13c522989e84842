import { describe, expect, it } from 'vitest';
import type { PermitOutcome } from '../../../../../backend/src/evaluation/pipeline/permit-record';
import { Plant, plantSite } from './plant';

const lpm = 1 / 60_000;
const curve = { 'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min', accuracy: '3 % of reading' } };
const hour = 3600_000;

/** Runs well: 2 free L/min. */
const plantWithMeter = (modePoint = false): Plant => {
  const plant = new Plant(plantSite({ points: curve, modePoint }));
  exhaust(plant, 2);
  return plant.run(40);
};
const exhaust = (plant: Plant, freeLpm: number): void => void Object.assign(plant.m1, { exhaust: freeLpm });
const open = (plant: Plant, more: object = {}): PermitOutcome =>
  plant.pipeline.actOnPermit(
    {
      kind: 'openPermit',
      unit: 'm1',
      branch: 'r4',
      untilMs: plant.nowMs + hour,
      expectedInLeakM3PerS: 30 * lpm,
      operator: 'Ada',
      station: 's',
      comment: '',
      ...more,
    },
    plant.nowMs,
  );

describe('opening a permit', () => {
  it.each([
    ['PERMIT_UNIT_UNKNOWN', { unit: 'x' }],
    ['PERMIT_BRANCH_UNKNOWN', { branch: 'x' }],
    ['PERMIT_TIME', { untilMs: 0 }],
    ['PERMIT_TIME', { untilMs: Number.NaN }],
    ['PERMIT_TIME', { untilMs: Number.MAX_SAFE_INTEGER }],
  ])('is refused with %s for %o, and changes nothing', (code, more) => {
    const plant = plantWithMeter();
    expect(open(plant, more)).toMatchObject({ ok: false, code });
    expect(plant.pipeline.permits()).toEqual([]);
  });

  it('is refused where one is open for that branch or for the whole loop', () => {
    const plant = plantWithMeter();
    expect(open(plant).ok).toBe(true);
    expect(open(plant)).toMatchObject({ ok: false, code: 'PERMIT_OPEN_ALREADY' });
    expect(open(plant, { branch: 'r1' }).ok).toBe(true);
    expect(open(plant, { branch: null }).ok).toBe(true);
    expect(open(plant, { branch: 'r2' })).toMatchObject({ ok: false, code: 'PERMIT_OPEN_ALREADY' });
  });

  it('keeps what stood before the work, and waits for what was known', () => {
    const plant = plantWithMeter();
    const outcome = open(plant);
    expect(outcome.ok && outcome.change.permit.waitsFor).toEqual(['branchFlow', 'gasLoad', 'level']);
    expect(outcome.ok && outcome.change.permit.baseline.gasLoadM3PerS).toBeCloseTo(2 * lpm, 9);
  });

  it('has not happened where it can not be recorded', () => {
    const plant = plantWithMeter();
    const action = { kind: 'openPermit', unit: 'm1', branch: null, untilMs: plant.nowMs + hour } as const;
    const who = { operator: 'Ada', station: 's', comment: '', expectedInLeakM3PerS: 0 };
    const outcome = plant.pipeline.actOnPermit({ ...action, ...who }, plant.nowMs, () => false);
    expect(outcome).toMatchObject({ ok: false, code: 'ACTION_NOT_RECORDED' });
    expect(plant.pipeline.permits()).toEqual([]);
  });
});

describe('a permit for rack 4, expected 30 free L/min', () => {
  it('lets that much in without an alarm, and tells within ten seconds of 75: 45 more than the permit', () => {
    const plant = plantWithMeter();
    open(plant);
    exhaust(plant, 32);
    plant.run(60);
    expect(plant.entries()).toEqual([]);
    exhaust(plant, 77);
    plant.run(10);
    expect(plant.standing('PERMIT-1')).toMatchObject({ active: true, priority: 3 });
    expect(plant.pipeline.detailOf('m1:PERMIT-1')).toContain('45 free L/min more than the permit');
  });

  it('does not excuse an opening that shows on another rack', () => {
    const plant = plantWithMeter();
    open(plant);
    exhaust(plant, 32);
    Object.assign(plant.m1.racks['r2'] ?? {}, { flow: 20, p: 65 });
    plant.run(6);
    expect(plant.standing('AIR-1')).toMatchObject({ where: 'Rack 2' });
  });

  it('closes by itself two minutes after flow, gas load and level are back, once the opening was seen', () => {
    const plant = plantWithMeter();
    open(plant);
    plant.run(300);
    expect(plant.pipeline.permits()).toHaveLength(1);
    exhaust(plant, 32);
    plant.run(30);
    exhaust(plant, 2);
    plant.run(110);
    expect(plant.pipeline.permits()).toHaveLength(1);
    plant.run(20);
    expect(plant.pipeline.permits()).toEqual([]);
    const changes = plant.pipeline.takePermitChanges();
    expect(changes).toMatchObject([{ what: 'closed', actor: null, permit: { closedBy: null } }]);
    expect(plant.pipeline.takePermitChanges()).toEqual([]);
  });

  it('stays open while a sign is not back, or is not known', () => {
    const plant = plantWithMeter();
    open(plant);
    exhaust(plant, 32);
    plant.run(30);
    exhaust(plant, 2);
    plant.m1.levelSeparator = 0.75;
    plant.run(200);
    expect(plant.pipeline.permits()).toHaveLength(1);
    plant.m1.levelSeparator = 0.6;
    plant.m1.levelTank = Number.NaN;
    plant.run(200);
    expect(plant.pipeline.permits()).toHaveLength(1);
  });

  it('is overdue once its time is over: an alarm, told once to the journal', () => {
    const plant = plantWithMeter();
    open(plant, { untilMs: plant.nowMs + 60_000 });
    plant.run(66);
    expect(plant.standing('PERMIT-1')?.active).toBe(true);
    expect(plant.pipeline.detailOf('m1:PERMIT-1')).toBe('A permit is overdue since 00:01 UTC.');
    expect(plant.pipeline.takePermitChanges().map(({ what }) => what)).toEqual(['overdue']);
    const [permit] = plant.pipeline.permits();
    const close = { kind: 'closePermit', permit: permit?.id ?? '', operator: 'Bo', station: 's', comment: '' } as const;
    expect(plant.pipeline.actOnPermit(close, plant.nowMs)).toMatchObject({ ok: true, change: { actor: 'Bo' } });
    expect(plant.pipeline.actOnPermit(close, plant.nowMs)).toMatchObject({ ok: false, code: 'PERMIT_UNKNOWN' });
    expect(plant.run(40).standing('PERMIT-1')?.active).toBe(false);
  });

  it('counts no more once it is overdue: what it expected is not allowed any longer', () => {
    const plant = plantWithMeter();
    open(plant, { untilMs: plant.nowMs + 60_000 });
    exhaust(plant, 32);
    plant.run(50);
    expect(plant.entries()).toEqual([]);
    plant.run(20);
    expect(plant.pipeline.detailOf('m1:PERMIT-1')).toBe(
      'A permit is overdue since 00:01 UTC. 30 free L/min more than the permit: 32 free L/min come in.',
    );
    // Another one may be opened beside it: then that one counts, and the first does not.
    open(plant, { branch: 'r1', expectedInLeakM3PerS: 20 * lpm });
    plant.run(5);
    expect(plant.pipeline.detailOf('m1:PERMIT-1')).toContain('10 free L/min more than the permit');
  });

  it('tells of 15 free L/min beyond it, and not of 5', () => {
    const plant = plantWithMeter();
    open(plant);
    exhaust(plant, 37);
    expect(plant.run(60).standing('PERMIT-1')).toBeUndefined();
    exhaust(plant, 47);
    expect(plant.run(10).standing('PERMIT-1')?.active).toBe(true);
  });

  it('closes by itself on a branch that was shut when the work began, as no meter reads zero for ever', () => {
    const plant = plantWithMeter();
    const rack = plant.m1.racks['r4'] as { flow: number };
    rack.flow = 0;
    plant.run(40);
    open(plant);
    exhaust(plant, 32);
    plant.run(30);
    exhaust(plant, 2);
    plant.run(140, (second) => void (rack.flow = second % 2 === 0 ? 0.3 : 0));
    expect(plant.pipeline.permits()).toEqual([]);
  });

  it('goes on after a restart', () => {
    const before = plantWithMeter();
    open(before);
    const after = plantWithMeter();
    after.pipeline.restorePermits(before.pipeline.permits());
    expect(after.pipeline.permits()).toEqual(before.pipeline.permits());
    exhaust(after, 77);
    expect(after.run(20).standing('PERMIT-1')?.active).toBe(true);
  });
});

describe('a loop that is stopped and vented', () => {
  const vented = (permit: object | null): Plant => {
    const plant = plantWithMeter(true);
    if (permit !== null) open(plant, permit);
    Object.assign(plant.m1, { mode: 'vented', pumpRunning: false, flow: 0, pTank: 101.3, pSeparator: 101.3 });
    return plant.run(20);
  };

  it('says vented, not protected in place of the alarm under a permit for the whole of it', () => {
    const plant = vented({ branch: null });
    expect(plant.standing('MARGIN-2')).toBeUndefined();
    const alert = plant.pipeline.alerts().find(({ entry }) => entry === 'MARGIN-2');
    expect(alert?.detail).toMatch(/^Vented, not protected/);
  });

  it('is in alarm without one, and under one for a branch', () => {
    expect(vented(null).standing('MARGIN-2')?.active).toBe(true);
    expect(vented({}).standing('MARGIN-2')).toMatchObject({ active: true, priority: 1 });
  });

  it('is in alarm where nobody told the mode: a loop that stands by its feedback may have tripped', () => {
    const plant = plantWithMeter(false);
    open(plant, { branch: null });
    Object.assign(plant.m1, {
      pumpRunning: false,
      vacuumRunning: false,
      vacuumSpeed: 0,
      flow: 0,
      pTank: 101.3,
      pSeparator: 101.3,
    });
    expect(plant.run(20).standing('MARGIN-2')?.active).toBe(true);
  });

  it('is in alarm while it is filled, as water is moved', () => {
    const plant = plantWithMeter(true);
    open(plant, { branch: null });
    Object.assign(plant.m1, { mode: 'filling', pumpRunning: false, flow: 0, pTank: 101.3, pSeparator: 101.3 });
    expect(plant.run(20).standing('MARGIN-2')?.active).toBe(true);
  });

  it('is in alarm as soon as the permit is over', () => {
    const plant = vented({ branch: null, untilMs: Number.POSITIVE_INFINITY });
    expect(plant.standing('MARGIN-2')?.active).toBe(true);
    const due = plantWithMeter(true);
    open(due, { branch: null, untilMs: due.nowMs + 30_000 });
    Object.assign(due.m1, { mode: 'vented', pumpRunning: false, flow: 0, pTank: 101.3, pSeparator: 101.3 });
    expect(due.run(20).standing('MARGIN-2')).toBeUndefined();
    expect(due.run(15).standing('MARGIN-2')?.active).toBe(true);
  });
});
