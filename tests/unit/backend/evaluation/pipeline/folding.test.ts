import { describe, expect, it } from 'vitest';
import { foldsUnder, foldsUnderEarlier } from '../../../../../backend/src/evaluation/alarm-rules/folding';
import { Plant, plantSite } from './plant';

const units = ['m1', 'm2', 'm3'];
const facility = { 'facility.flow': { path: 'facilityFlow', unit: 'L/min' } };

const hall = (): Plant => {
  const plant = new Plant(plantSite({ units, points: facility }));
  for (const id of units) Object.assign(plant.telemetry[id] ?? {}, { facilityFlow: 600 });
  return plant.run(60);
};
const each = (plant: Plant, change: object): void => {
  for (const id of units) Object.assign(plant.telemetry[id] ?? {}, change);
};
const parents = (plant: Plant, entry: string): (string | null)[] =>
  plant.pipeline
    .standing()
    .filter((record) => record.entry === entry)
    .map(({ foldedUnder }) => foldedUnder);
/** The alarm of an entry that is folded under nothing; the first unit of the hall to be judged, so any of them. */
const firstOut = (plant: Plant, entry: string): string =>
  plant.pipeline.standing().find((record) => record.entry === entry && record.foldedUnder === null)?.alarm ?? 'none';

describe('facility water lost in a whole hall', () => {
  it('is one first-out: that of the other units and all supply temperatures fold under it', () => {
    const plant = hall();
    each(plant, { facilityFlow: 0 });
    plant.run(5);
    const first = firstOut(plant, 'FAC-1');
    expect(parents(plant, 'FAC-1')).toEqual([null, first, first]);
    plant.run(60, (second) => each(plant, { tSupply: 36.3 + second * 0.15 }));
    expect(parents(plant, 'TSUP-1')).toEqual([first, first, first]);
    expect(plant.pipeline.standing().filter(({ foldedUnder }) => foldedUnder === null)).toHaveLength(1);
  });

  it('leaves the others to stand for themselves once the first is well', () => {
    const plant = hall();
    each(plant, { facilityFlow: 0 });
    plant.run(10);
    const first = firstOut(plant, 'FAC-1');
    Object.assign(plant.telemetry[first.slice(0, 2)] ?? {}, { facilityFlow: 600 });
    plant.run(15);
    const active = plant.pipeline.standing().filter(({ entry, active: now }) => entry === 'FAC-1' && now);
    expect(active).toHaveLength(2);
    const next = active.find(({ foldedUnder }) => foldedUnder === null)?.alarm;
    expect(next).not.toBe(first);
    expect(active.map(({ foldedUnder }) => foldedUnder ?? next)).toEqual([next, next]);
  });
});

describe('power lost with the gateway alive', () => {
  it('is one event: source, flow and the other units fold under the first pump', () => {
    const plant = hall();
    each(plant, { pumpRunning: false, vacuumRunning: false, vacuumSpeed: 0, flow: 0 });
    plant.run(8);
    const first = firstOut(plant, 'PUMP-1');
    expect(parents(plant, 'PUMP-1')).toEqual([null, first, first]);
    expect(parents(plant, 'VSRC-1')).toEqual([first, first, first]);
    expect(parents(plant, 'FLOW-2')).toEqual([first, first, first]);
    expect(plant.pipeline.detailOf('m1:PUMP-1')).toMatch(/power of the unit lost/);
  });

  it('stays one event while the loop comes back, and what is still missing a minute later stands for itself', () => {
    const plant = new Plant(plantSite({ units: ['m1'] })).run(60);
    Object.assign(plant.m1, { pumpRunning: false, vacuumRunning: false, vacuumSpeed: 0 });
    plant.run(8);
    Object.assign(plant.m1, { pumpRunning: true, vacuumRunning: true, vacuumSpeed: 0.4, flow: 0 });
    plant.run(10);
    expect(plant.pipeline.standing().find(({ entry }) => entry === 'PUMP-1')?.active).toBe(false);
    expect(parents(plant, 'FLOW-2')).toEqual(['m1:PUMP-1']);
    plant.run(40);
    expect(parents(plant, 'FLOW-2')).toEqual(['m1:PUMP-1']);
    plant.run(15);
    expect(parents(plant, 'FLOW-2')).toEqual([null]);
  });

  it('leaves what is still missing to stand for itself once its first-out was acknowledged away', () => {
    const plant = new Plant(plantSite({ units: ['m1'] })).run(60);
    Object.assign(plant.m1, { pumpRunning: false, vacuumRunning: false, vacuumSpeed: 0 });
    plant.run(8);
    Object.assign(plant.m1, { pumpRunning: true, vacuumRunning: true, vacuumSpeed: 0.4, flow: 0 });
    plant.run(10);
    expect(parents(plant, 'FLOW-2')).toEqual(['m1:PUMP-1']);
    const who = { operator: 'Ada', station: 'desk', comment: '' };
    const done = plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:PUMP-1', ...who }, plant.nowMs);
    expect(done).toMatchObject({ ok: true, transition: { to: 'normal' } });
    expect(parents(plant, 'FLOW-2')).toEqual([null]);
  });

  it('takes the standby that helps to draw the loop down again into the event, until it has run on for five minutes', () => {
    const points = { 'vacuum.standby.running': { path: 'standbyRunning' } };
    const plant = new Plant(plantSite({ units: ['m1'], points }));
    Object.assign(plant.m1, { standbyRunning: false });
    plant.run(60);
    Object.assign(plant.m1, { pumpRunning: false, vacuumRunning: false, vacuumSpeed: 0 });
    plant.run(8);
    Object.assign(plant.m1, { pumpRunning: true, vacuumRunning: true, vacuumSpeed: 0.4, standbyRunning: true });
    plant.run(20);
    expect(parents(plant, 'VSRC-2')).toEqual(['m1:PUMP-1']);
    plant.run(250);
    expect(parents(plant, 'VSRC-2')).toEqual(['m1:VSRC-1']);
    plant.run(50);
    expect(parents(plant, 'VSRC-2')).toEqual([null]);
  });

  it('is another thing than the trip of one pump, which leaves the lost flow to speak for itself', () => {
    const plant = hall();
    Object.assign(plant.m1, { pumpRunning: false, flow: 0 });
    plant.run(8);
    expect(parents(plant, 'FLOW-2')).toEqual([null]);
  });
});

describe('two pumps of a hall that trip within seconds', () => {
  it('are two alarms: their vacuum sources go on, so that no power has failed', () => {
    const plant = hall();
    each(plant, { pumpRunning: false });
    plant.run(8);
    expect(parents(plant, 'PUMP-1')).toEqual([null, null, null]);
  });
});

describe('a falling barometer', () => {
  // 12.7 kPa of margin with 74 kPa in the supply tank; 80.5 kPa leaves 5.9 kPa, known to 0.8 kPa: 5.1 kPa.
  const small = (pTank = 80.5): Plant => {
    const plant = new Plant(plantSite({ units }));
    each(plant, { pTank });
    return plant.run(60);
  };
  const falls = (plant: Plant, kPa: number): Plant =>
    plant.run(120, (second) => (plant.air.p = 101.3 - Math.min(kPa, 0.01 * second)));

  it('folds the small margins of the hall under the first', () => {
    const [first, ...others] = parents(falls(small(), 0.9), 'MARGIN-1');
    expect(first).toBeNull();
    expect(others).toEqual([expect.stringMatching(/^m\d:MARGIN-1$/), others[0]]);
  });

  it('folds none of an ordinary day', () => {
    expect(parents(falls(small(80.9), 0.4), 'MARGIN-1')).toEqual([null, null, null]);
  });

  it('folds none that a unit’s own supply tank has taken, though the barometer falls beside', () => {
    const plant = small();
    plant.run(60, (second) => (plant.air.p = 101.3 - 0.006 * second));
    Object.assign(plant.m1, { pTank: 82.5 });
    plant.run(30);
    expect(parents(plant, 'MARGIN-1')[0]).toBeNull();
    falls(plant, 0.9);
    const own = plant.pipeline.standing().find(({ alarm }) => alarm === 'm1:MARGIN-1');
    expect(own?.foldedUnder).toBeNull();
    for (const parent of parents(plant, 'MARGIN-1')) expect(parent).not.toBe('m1:MARGIN-1');
  });

  it('keeps the family together when the first is well again', () => {
    const plant = falls(small(), 0.9);
    const first = firstOut(plant, 'MARGIN-1');
    Object.assign(plant.telemetry[first.slice(0, 2)] ?? {}, { pTank: 74 });
    plant.run(30);
    const active = plant.pipeline.standing().filter(({ entry, active: now }) => entry === 'MARGIN-1' && now);
    expect(active).toHaveLength(2);
    expect(active.filter(({ foldedUnder }) => foldedUnder === null)).toHaveLength(1);
  });

  it('counts as none where the other hall’s barometer stands: then it is the barometer', () => {
    const air = (topic: string): object => ({
      name: topic,
      points: {
        'ambient.pressure': { topic, path: 'p', unit: 'kPa', reference: 'absolute', accuracy: '±0.1 kPa' },
        'hall.temperature': { topic, path: 't', unit: '°C' },
        'hall.humidity': { topic, path: 'rh', unit: '%' },
      },
    });
    const plant = new Plant(plantSite({ units, document: { halls: { h: air('hall/air'), other: air('other/air') } } }));
    each(plant, { pTank: 80.5 });
    const stands = (): void => plant.send('other/air', { p: 101.3, t: 27, rh: 40 });
    plant.run(60, stands).run(120, (second) => {
      stands();
      plant.air.p = 101.3 - Math.min(0.9, 0.01 * second);
    });
    expect(parents(plant, 'MARGIN-1')).toEqual([null, null, null]);
  });
});

describe('surfaces at the dew point', () => {
  const cold = (): Plant => {
    const plant = new Plant(plantSite({ units }));
    each(plant, { tFacility: 27 });
    return plant.run(60);
  };

  it('are one event where the hall’s air has become humid', () => {
    const plant = cold();
    // 27 °C and 95 %: a dew point of 26.1 °C (WMO-No. 8, annex 4.B).
    plant.run(200, () => (plant.air.rh = 95));
    const first = firstOut(plant, 'DEW-1');
    expect(parents(plant, 'DEW-1')).toEqual([null, first, first]);
  });

  it('are two events where two units have become cold by themselves', () => {
    const plant = cold();
    for (const id of ['m1', 'm2']) Object.assign(plant.telemetry[id] ?? {}, { tFacility: 13 });
    plant.run(200);
    expect(parents(plant, 'DEW-1')).toEqual([null, null]);
  });
});

describe('a supply tank that runs empty', () => {
  it('folds its own low level: nothing is to be topped up', () => {
    expect(foldsUnder['TANK-3']).toContain('TANK-1');
    expect(foldsUnderEarlier['TANK-3']).toContain('PUMP-1');
  });
});

describe('hot water that comes back without facility water', () => {
  it('boils as its consequence: both steps fold under the lost flow', () => {
    expect(foldsUnder['BOIL-1']).toEqual(['BOIL-2', 'FAC-1']);
    expect(foldsUnder['BOIL-2']).toEqual(['FAC-1']);
  });
});

describe('water that walks between two units of a loop', () => {
  const twoUnits = (): Plant => {
    const volumes = {
      volumes: { water: '488 L', supplyTankUsable: '80 L', separatorRoom: '90 L' },
      tanks: {
        separatorArea: '0.25 m2',
        supplyArea: '0.3 m2',
        supplyUsualLevel: '0.5 m',
        separatorUsualLevel: '0.6 m',
      },
    };
    const document = { loops: { l: { units: ['m1', 'm2'] } } };
    return new Plant(plantSite({ units: ['m1', 'm2'], unit: volumes, document })).run(90);
  };
  const walking = (): Plant => {
    const plant = twoUnits();
    const [a, b] = [plant.m1, plant.telemetry['m2'] as Plant['m1']];
    // 54 L/min is 0.0036 m a second in 0.25 m².
    return plant.run(100, () => {
      a.levelSeparator -= 0.0036;
      b.levelSeparator += 0.0036;
    });
  };

  it('is told within two minutes as one: sum constant, from where to where, and nobody is sent to top up', () => {
    const plant = walking();
    expect(plant.standing('TANK-2')).toMatchObject({ alarm: 'm2:TANK-2', active: true, foldedUnder: null });
    expect(plant.pipeline.detailOf('m2:TANK-2')).toMatch(
      /^Sum constant: water is moving from Unit to Unit, 5\d L\/min/,
    );
    // The low level of the other one is an alert, or folds under it: never an alarm of its own.
    const low = plant.pipeline.standing().filter(({ entry }) => entry === 'TANK-3');
    for (const { foldedUnder } of low) expect(foldedUnder).toBe('m2:TANK-2');
    expect(plant.pipeline.alerts().filter(({ entry }) => entry === 'TANK-3')).toEqual([]);
  });

  it('hides no loss: where the sum falls, a low level stands for itself beside the high one of the other unit', () => {
    const plant = twoUnits();
    const [a, b] = [plant.m1, plant.telemetry['m2'] as Plant['m1']];
    plant.run(100, () => void (b.levelSeparator += 0.0036)).run(30);
    expect(plant.standing('TANK-2')).toMatchObject({ alarm: 'm2:TANK-2', active: true });
    plant.run(190, () => void (a.levelSeparator -= 0.0024));
    const low = plant.pipeline.standing().find(({ alarm }) => alarm === 'm1:TANK-3');
    expect(low).toMatchObject({ active: true, foldedUnder: null });
    expect(plant.pipeline.detailOf('m1:TANK-3')).toMatch(/the loop loses water/);
    expect(plant.standing('TANK-2')?.active).toBe(true);
  });
});
