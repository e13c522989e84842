import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';
import { settled } from './settled-plant';
import { annunciations, putAside, restartedPlant, who } from './set-aside-plant';

const wet = (plant: Plant, is: boolean): Plant => {
  plant.m1.water = is;
  return plant;
};

describe('a shelved alarm', () => {
  it('that stands is told no more, comes back by itself, and is then told once', () => {
    const plant = wet(settled(), true).run(10);
    expect(putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 })).toMatchObject({ ok: true });
    expect(plant.standing('WATER-1')).toBeUndefined();
    const before = annunciations(plant, 'WATER-1');
    plant.run(599);
    expect(plant.standing('WATER-1')).toBeUndefined();
    plant.run(2);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'unacknowledged', active: true });
    plant.run(60);
    expect(annunciations(plant, 'WATER-1') - before).toBe(1);
    expect(plant.transitions.at(-1)).toMatchObject({
      cause: 'shelvingOver',
      modeFrom: 'shelved',
      mode: 'inService',
      modeBy: 'Ada',
      modeReason: who.comment,
      actor: null,
    });
  });

  it('goes on being judged: what came while it was shelved is known when it comes back, and sounded nowhere before', () => {
    const plant = settled();
    expect(putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 })).toMatchObject({ ok: true });
    wet(plant, true).run(10);
    expect(plant.entries()).toEqual([]);
    expect(annunciations(plant, 'WATER-1')).toBe(0);
    expect(plant.pipeline.setAside()).toMatchObject([{ alarm: 'm1:WATER-1', mode: 'shelved', active: true }]);
    expect(plant.pipeline.act({ kind: 'unshelve', alarm: 'm1:WATER-1', ...who }, plant.nowMs)).toMatchObject({
      ok: true,
      transition: { cause: 'unshelve', to: 'unacknowledged', actor: 'Ada' },
    });
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
  });

  it('that never came leaves nothing behind when its time is over', () => {
    const plant = settled();
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 60_000 });
    plant.run(70);
    expect(plant.pipeline.setAside()).toEqual([]);
    expect(plant.transitions.at(-1)).toMatchObject({ cause: 'shelvingOver', from: 'normal', to: 'normal' });
  });

  it('latches while it is shelved, and waits to be seen', () => {
    const plant = settled();
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 });
    wet(plant, true).run(10);
    wet(plant, false).run(60);
    plant.run(600);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'latchedUnacknowledged' });
  });

  it('is no first-out: what folded under it is told, the lower step of a pair too', () => {
    const plant = settled();
    plant.m1.pTank = 103;
    plant.run(60);
    expect(plant.standing('MARGIN-2')).toMatchObject({ active: true });
    expect(plant.standing('MARGIN-1')).toMatchObject({ active: true, foldedUnder: 'm1:MARGIN-2' });
    putAside(plant, 'm1:MARGIN-2', { kind: 'shelve', forMs: 600_000 });
    expect(plant.standing('MARGIN-1')).toMatchObject({ foldedUnder: null });
    plant.run(600);
    expect(plant.standing('MARGIN-1')).toMatchObject({ foldedUnder: 'm1:MARGIN-2' });
  });

  it('may be one that never stood, of a part, a point, a gateway or the program; none that there is not, and no alert', () => {
    const plant = settled();
    const known = ['m1:FLOW-3:r2', 'm1:INS-1:separator.pressure', 'g:COM-1', 'program:SYS-1'];
    for (const alarm of known)
      expect(putAside(plant, alarm, { kind: 'shelve', forMs: 60_000 }), alarm).toMatchObject({ ok: true });
    for (const alarm of ['m1:FLOW-3', 'm1:FLOW-3:r9', 'm9:WATER-1', 'm1', ''])
      expect(putAside(plant, alarm, { kind: 'shelve', forMs: 60_000 }), alarm).toMatchObject({
        code: 'ALARM_UNKNOWN',
      });
    for (const alert of ['m1:HX-1', 'h:AMB-1'])
      expect(putAside(plant, alert, { kind: 'shelve', forMs: 60_000 }), alert).toMatchObject({
        code: 'ALERT_NOT_SET_ASIDE',
        message: expect.stringContaining('as an alert') as string,
      });
    expect(plant.pipeline.setAside()).toHaveLength(known.length);
    expect(plant.pipeline.setAside().map(({ where }) => where)).toEqual(
      expect.arrayContaining(['Rack 2', 'separator.pressure', 'g', 'this program']),
    );
  });

  it('may be shelved for an hour where it can have priority 1, else for eight', () => {
    const plant = settled();
    const [minute, hour] = [60_000, 3_600_000];
    const shelved = (alarm: string, forMs: number) => putAside(plant, alarm, { kind: 'shelve', forMs });
    expect(shelved('m1:WATER-1', hour + minute)).toMatchObject({ code: 'SHELVING_TOO_LONG' });
    expect(shelved('m1:WATER-1', 0)).toMatchObject({ code: 'SHELVING_TOO_LONG' });
    expect(shelved('m1:WATER-1', hour)).toMatchObject({ ok: true });
    expect(shelved('m1:FIL-2', 8 * hour + minute)).toMatchObject({ code: 'ALARM_UNKNOWN' });
    expect(shelved('m1:MARGIN-1', 8 * hour + minute)).toMatchObject({ code: 'SHELVING_TOO_LONG' });
    expect(shelved('m1:MARGIN-1', 8 * hour)).toMatchObject({ ok: true });
    expect(shelved('m1:MARGIN-1', hour)).toMatchObject({
      code: 'ALARM_SHELVED_ALREADY',
      message: expect.stringContaining('Ada') as string,
    });
  });
});

describe('an alarm out of service', () => {
  it('comes back by a person only, whatever end was planned', () => {
    const plant = wet(settled(), true).run(10);
    const asked = {
      kind: 'takeOut',
      interimMeasures: 'a round every hour',
      plannedEndMs: plant.nowMs + 60_000,
    } as const;
    expect(putAside(plant, 'm1:WATER-1', asked)).toMatchObject({ ok: true });
    plant.run(600);
    expect(plant.standing('WATER-1')).toBeUndefined();
    expect(plant.pipeline.setAside()).toMatchObject([
      { mode: 'outOfService', interimMeasures: 'a round every hour', modeBy: 'Ada' },
    ]);
    plant.pipeline.act({ kind: 'returnToService', alarm: 'm1:WATER-1', ...who }, plant.nowMs);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
  });

  it('has no planned end in the past', () => {
    const plant = settled();
    const asked = { kind: 'takeOut', interimMeasures: 'none needed', plannedEndMs: plant.nowMs } as const;
    expect(putAside(plant, 'm1:WATER-1', asked)).toMatchObject({ code: 'PLANNED_END_PAST' });
  });
});

describe('an alarm suppressed by design', () => {
  const stopped = (): Plant => {
    const plant = new Plant(plantSite({ modePoint: true })).run(40);
    plant.m1.flow = 100;
    plant.run(10);
    expect(plant.standing('FLOW-2')).toMatchObject({ active: true });
    return plant;
  };

  it('leaves the list once it was acknowledged and its unit is stopped, and comes to nothing as the stop ends it', () => {
    const plant = stopped();
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:FLOW-2', ...who }, plant.nowMs);
    plant.m1.mode = 'standby';
    plant.run(1);
    expect(plant.standing('FLOW-2')).toBeUndefined();
    expect(plant.pipeline.setAside()).toMatchObject([{ alarm: 'm1:FLOW-2', mode: 'suppressedByDesign', modeBy: null }]);
    plant.run(600);
    expect(plant.pipeline.setAside()).toEqual([]);
    expect(plant.entries()).not.toContain('FLOW-2');
  });

  it('stays in the list until someone has seen it', () => {
    const plant = stopped();
    plant.m1.mode = 'standby';
    plant.run(120);
    expect(plant.standing('FLOW-2')).toMatchObject({ state: 'returnedUnacknowledged' });
  });

  it('is told anew where the unit runs again before it ended', () => {
    const plant = stopped();
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:FLOW-2', ...who }, plant.nowMs);
    plant.m1.mode = 'standby';
    plant.run(3);
    plant.m1.mode = 'running';
    plant.run(3);
    expect(plant.standing('FLOW-2')).toMatchObject({ state: 'unacknowledged' });
    expect(plant.transitions.at(-1)).toMatchObject({ cause: 'unsuppress', modeFrom: 'suppressedByDesign' });
  });

  it('is listed by unit and entry where it never stood, since the mode began; none that is never off', () => {
    const plant = new Plant(plantSite({ modePoint: true })).run(40);
    expect(plant.pipeline.offByMode()).toEqual([]);
    plant.m1.mode = 'standby';
    plant.run(10);
    const off = plant.pipeline.offByMode();
    expect(off.map(({ entry }) => entry)).toEqual(expect.arrayContaining(['FLOW-2']));
    const never = /^(MARGIN|WATER|DEW|ISOL)-|^TANK-2/;
    expect(off.filter(({ entry }) => never.test(entry))).toEqual([]);
    expect(off[0]).toMatchObject({ mode: 'suppressedByDesign', state: 'normal' });
    expect(plant.nowMs - (off[0]?.modeSinceMs ?? 0)).toBeLessThan(11_000);
  });
});

describe('what was set aside', () => {
  it('stays so when another site takes the place of this one', () => {
    const plant = settled();
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 });
    putAside(plant, 'm1:MARGIN-1', { kind: 'takeOut', interimMeasures: 'a round every hour', plannedEndMs: null });
    const before = plant.pipeline.setAside();
    plant.reload(plantSite({ units: ['m1', 'm2'] })).run(10);
    expect(plant.pipeline.setAside()).toEqual(before);
    wet(plant, true).run(10);
    expect(plant.entries()).not.toContain('WATER-1');
  });

  it('ends by configuration where its unit is gone', () => {
    const plant = new Plant(plantSite({ units: ['m1', 'm2'] })).run(40);
    putAside(plant, 'm2:WATER-1', { kind: 'shelve', forMs: 600_000 });
    plant.reload(plantSite()).run(2);
    expect(plant.pipeline.setAside()).toEqual([]);
    expect(plant.transitions.at(-1)).toMatchObject({ alarm: 'm2:WATER-1', to: 'normal', cause: 'configuration' });
    expect(plant.transitions.at(-1)).toMatchObject({ modeFrom: 'shelved', mode: 'inService', modeBy: 'Ada' });
  });
});

describe('a restart', () => {
  it('keeps what is set aside, and the time that is left', () => {
    const plant = wet(settled(), true).run(10);
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 });
    const after = restartedPlant(plant, 100);
    wet(after, true).run(10);
    expect(after.entries()).toEqual([]);
    after.run(480);
    expect(after.entries()).toEqual([]);
    after.run(15);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
    expect(annunciations(after, 'WATER-1')).toBe(1);
  });

  it('ends at once what ran out while the program was down, and tells what still stands', () => {
    const plant = wet(settled(), true).run(10);
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 60_000 });
    const after = restartedPlant(plant, 3600);
    wet(after, true).run(2);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
    expect(after.transitions).toMatchObject([{ cause: 'shelvingOver', to: 'unacknowledged' }]);
  });

  it('after which the clock is an hour behind lets the shelving last no longer than was granted, and does not lose it', () => {
    const plant = wet(settled(), true).run(10);
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 });
    const after = restartedPlant(plant, -3600);
    wet(after, true).run(590);
    expect(after.entries()).toEqual([]);
    after.run(20);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
  });

  it('tells nothing anew of what its unit’s mode has off, before anything was heard of the unit', () => {
    const plant = new Plant(plantSite({ modePoint: true })).run(40);
    plant.m1.flow = 100;
    plant.run(10);
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:FLOW-2', ...who }, plant.nowMs);
    plant.m1.mode = 'standby';
    plant.run(1);
    const after = restartedPlant(plant, 10);
    Object.assign(after.m1, plant.m1);
    after.silent.add('m1');
    after.run(5);
    expect(after.pipeline.setAside()).toMatchObject([{ alarm: 'm1:FLOW-2', mode: 'suppressedByDesign' }]);
    after.silent.clear();
    after.run(20);
    expect(annunciations(after, 'FLOW-2')).toBe(0);
    expect(after.pipeline.setAside()).toEqual([]);
    expect(after.entries()).not.toContain('FLOW-2');
  });

  it('after which nothing is heard of a unit for a minute tells what its mode had off', () => {
    const plant = new Plant(plantSite({ modePoint: true })).run(40);
    plant.m1.flow = 100;
    plant.run(10);
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:FLOW-2', ...who }, plant.nowMs);
    plant.m1.mode = 'standby';
    plant.run(1);
    const after = restartedPlant(plant, 10);
    after.silent.add('m1');
    after.run(70);
    expect(after.standing('FLOW-2')).toMatchObject({ state: 'unacknowledged' });
  });

  it('takes back what an earlier version wrote: without a mode it is in service', () => {
    const plant = wet(settled(), true).run(10);
    const records = plant.pipeline.standing();
    expect(records.every((record) => !('mode' in record))).toBe(true);
    const after = restartedPlant(plant, 10);
    expect(after.pipeline.standing()).toEqual(records);
    expect(after.pipeline.setAside()).toEqual([]);
  });
});
