import { describe, expect, it } from 'vitest';
import { Plant, plantSite, startMs } from './plant';
import { secondsUntil, settled } from './settled-plant';

describe('INS-1', () => {
  it('is raised once for a point out of range, and the alarm that it feeds is held', () => {
    const plant = settled();
    plant.m1.pTank = 82;
    plant.run(20);
    plant.m1.pTank = 500;
    plant.run(60);
    expect(plant.standing('MARGIN-1')?.active).toBe(true);
    const lost = plant.pipeline.standing().filter((record) => record.entry === 'INS-1');
    expect(lost.map(({ alarm, priority, where }) => ({ alarm, priority, where }))).toEqual([
      { alarm: 'm1:INS-1:supplyTank.pressure', priority: 3, where: 'supplyTank.pressure' },
    ]);
    plant.m1.pTank = 74;
    plant.run(20);
    expect(plant.pipeline.standing().filter((record) => record.active)).toEqual([]);
  });

  it('is raised for a point that goes stale while its gateway still speaks: after 5 s and 2 s', () => {
    const plant = settled();
    plant.m1.tReturn = null;
    expect(secondsUntil(plant, 'INS-1', 20)).toBeGreaterThanOrEqual(7);
    expect(plant.pipeline.standing().map((record) => record.alarm)).toEqual(['m1:INS-1:return.temperature']);
  });

  it('is not raised for a point whose loss is only an alert: it feeds nothing of priority 1', () => {
    const plant = settled();
    plant.air.rh = Number.NaN;
    plant.run(60);
    expect(plant.entries()).toEqual([]);
  });

  it('is raised for a point of a hall', () => {
    const plant = settled();
    plant.air.p = Number.NaN;
    plant.run(15);
    expect(plant.pipeline.standing().map((record) => [record.alarm, record.unit, record.hall])).toEqual([
      ['h:INS-1:ambient.pressure', null, 'h'],
    ]);
  });

  it('is not raised within the start grace for a point that was never heard, and is after it', () => {
    const plant = new Plant();
    plant.m1.tReturn = null;
    plant.run(59);
    expect(plant.entries()).toEqual([]);
    plant.run(10);
    expect(plant.pipeline.standing().map((record) => record.alarm)).toEqual(['m1:INS-1:return.temperature']);
  });
});

describe('a stand of the program', () => {
  it('calls no point lost that is told once a minute while its gateway speaks each second', () => {
    const slow = { topic: 'plant/slow', path: 't', unit: '°C', period: '60 s' };
    const plant = new Plant(plantSite({ points: { 'return.temperature': slow } }));
    const tell = (): void => plant.send('plant/slow', { time: plant.nowMs, t: 43 });
    tell();
    plant.run(50);
    plant.second += 240;
    plant.run(30);
    tell();
    plant.run(20);
    expect(plant.transitions).toEqual([]);
  });
});

describe('a point not yet heard', () => {
  it('has its grace again after a stand that took the grace of the start away', () => {
    const slow = { topic: 'plant/slow', path: 't', unit: '°C', period: '5 s' };
    const plant = new Plant(plantSite({ points: { 'return.temperature': slow } }));
    plant.run(20);
    plant.second += 50;
    plant.run(20);
    expect(plant.entries()).toEqual([]);
    plant.run(60);
    expect(plant.entries()).toEqual(['INS-1']);
  });
});

describe('COM-1', () => {
  const two = () => new Plant(plantSite({ units: ['m1', 'm2'] })).run(40);

  it('is one alarm for a silent gateway of two units, without a single INS-1', () => {
    const plant = two();
    plant.silent.add('m1').add('m2');
    const silentFrom = plant.nowMs;
    plant.run(120);
    expect(
      plant.transitions.map(({ alarm, unit, hall, priority, where }) => ({ alarm, unit, hall, priority, where })),
    ).toEqual([{ alarm: 'g:COM-1', unit: null, hall: 'h', priority: 2, where: 'g' }]);
    const afterMs = (plant.transitions[0]?.atMs ?? 0) - silentFrom;
    expect(afterMs).toBeGreaterThan(4000);
    expect(afterMs).toBeLessThanOrEqual(6000);
  });

  it('is not raised for a gateway that sends on, where it was this program that stood still', () => {
    const plant = two();
    plant.second += 240;
    // Its first tick finds everything as it was left.
    plant.transitions.push(...plant.pipeline.advance(plant.nowMs));
    plant.run(30);
    expect(plant.transitions).toEqual([]);
  });

  it('does not clear over such a stand', () => {
    const plant = two();
    plant.silent.add('m1').add('m2');
    plant.run(20);
    plant.second += 240;
    plant.run(4);
    expect(plant.transitions.map(({ alarm, to }) => `${alarm} ${to}`)).toEqual(['g:COM-1 unacknowledged']);
  });

  it('is raised after it for what stays silent, once its time has passed again', () => {
    const plant = two();
    plant.silent.add('m1').add('m2');
    plant.second += 240;
    const seconds = secondsUntil(plant, 'COM-1', 20);
    expect(seconds).toBeGreaterThan(4);
    expect(seconds).toBeLessThanOrEqual(8);
  });

  it('is raised for a silent gateway however often this program stands still', () => {
    const plant = two();
    plant.silent.add('m1').add('m2');
    for (let stand = 0; stand < 4; stand += 1) {
      plant.second += 4;
      plant.run(1);
    }
    expect(plant.entries()).toEqual(['COM-1']);
  });

  it('is not raised for a gateway not yet heard where this program stood still from its start on', () => {
    const plant = new Plant(plantSite());
    plant.silent.add('m1');
    plant.run(1);
    plant.second += 240;
    plant.transitions.push(...plant.pipeline.advance(plant.nowMs));
    plant.silent.clear();
    plant.run(30);
    expect(plant.transitions).toEqual([]);
  });

  it('clears when the gateway speaks again', () => {
    const plant = two();
    plant.silent.add('m1').add('m2');
    plant.run(20);
    plant.silent.clear();
    plant.run(6);
    expect(plant.standing('COM-1')?.state).toBe('returnedUnacknowledged');
  });

  it('is raised within two seconds of a last will', () => {
    const plant = two();
    plant.silent.add('m1').add('m2');
    plant.send('gateway/g', 'offline');
    expect(secondsUntil(plant, 'COM-1', 2)).toBeGreaterThan(0);
  });

  it('folds an INS-1 that stood before, and lets it out again', () => {
    const plant = two();
    plant.m1.pSeparator = 500;
    plant.run(10);
    expect(plant.standing('INS-1')?.foldedUnder).toBeNull();
    plant.silent.add('m1').add('m2');
    plant.run(10);
    expect(plant.standing('INS-1')?.foldedUnder).toBe('g:COM-1');
    plant.silent.clear();
    plant.run(10);
    expect(plant.standing('INS-1')?.foldedUnder).toBeNull();
  });

  it('waits for three periods of a gateway whose points are told once a minute', () => {
    const site = plantSite();
    site.slots.periodMs.fill(60_000);
    const plant = new Plant(site);
    plant.hallSilent = true;
    for (let minute = 0; minute < 8; minute += 1) {
      plant.silent.delete('m1');
      plant.run(1).silent.add('m1');
      plant.run(59);
    }
    expect(plant.standing('COM-1')).toBeUndefined();
    // The last message was 59 s ago.
    expect(secondsUntil(plant, 'COM-1', 150)).toBeGreaterThanOrEqual(120);
    expect(plant.standing('COM-1')?.active).toBe(true);
  });

  it('waits for the start grace where the gateway was never heard', () => {
    const plant = new Plant();
    plant.silent.add('m1');
    plant.run(59);
    expect(plant.entries()).toEqual([]);
    plant.run(3);
    expect(plant.entries()).toEqual(['COM-1']);
    expect(plant.standing('COM-1')?.sinceMs).toBeGreaterThanOrEqual(startMs + 60_000);
  });

  it('does not take what the broker kept of the time before the start for a gateway that is lost now', () => {
    const plant = new Plant();
    plant.silent.add('m1');
    plant.send('gateway/g', 'offline');
    plant.run(40);
    expect(plant.entries()).toEqual([]);
    plant.silent.clear();
    plant.run(40);
    expect(plant.entries()).toEqual([]);
  });

  it('is raised after the start grace for a gateway that was gone before the start and stays so', () => {
    const plant = new Plant();
    plant.silent.add('m1');
    plant.send('gateway/g', 'offline');
    plant.run(59);
    expect(plant.entries()).toEqual([]);
    plant.run(3);
    expect(plant.entries()).toEqual(['COM-1']);
  });
});
