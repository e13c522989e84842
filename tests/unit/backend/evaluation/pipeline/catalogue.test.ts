import { describe, expect, it } from 'vitest';
import { Plant, plantSite, startMs } from './plant';

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

describe('a plant that runs well', () => {
  it('raises nothing in ten minutes', () => {
    expect(new Plant().run(600).transitions).toEqual([]);
  });
});

describe('BOIL-1', () => {
  it('is raised 15 s after the nearest lower wall is within its guard and names the wall', () => {
    const plant = settled();
    plant.m1.pSeparator = 29.5;
    expect(secondsUntil(plant, 'BOIL-1', 30)).toBe(16);
    expect(plant.standing('BOIL-1')).toMatchObject({ priority: 2, limit: 2000, where: 'pump inlet' });
  });

  it('clears 15 s after the separator pressure is back', () => {
    const plant = settled();
    plant.m1.pSeparator = 29.5;
    plant.run(20);
    plant.m1.pSeparator = 32;
    plant.run(17);
    expect(plant.standing('BOIL-1')?.state).toBe('returnedUnacknowledged');
  });
});

describe('BOIL-1 of a loop whose pump stands', () => {
  // A low manifold, so that the nodes are far from boiling; at 20 kPa the pump inlet's NPSH is within its guard of 2 kPa.
  const nodes = {
    supply: { name: 'Supply', main: 'supply', elevation: '1.0 m', loss: '0 kPa' },
    return: { name: 'Return', main: 'return', elevation: '1.2 m', loss: '0 kPa' },
  };
  const drawnTo20kPa = (mode: string): Plant => {
    const plant = new Plant(plantSite({ modePoint: true, unit: { nodes } })).run(40);
    const stopped = { pumpRunning: false, flow: 0, tSupply: 20, tReturn: 20 };
    Object.assign(plant.m1, { ...stopped, mode, pTank: 20, pSeparator: 20 });
    return plant.run(60);
  };

  it('is not raised by the pump inlet in a tightness test at 20 kPa', () => {
    expect(drawnTo20kPa('tightnessTest').standing('BOIL-1')).toBeUndefined();
  });

  it('is raised by it in the same state with the pump running', () => {
    expect(drawnTo20kPa('running').standing('BOIL-1')).toMatchObject({ active: true, where: 'pump inlet' });
  });

  it('is still raised by boiling at a node', () => {
    const plant = drawnTo20kPa('tightnessTest');
    plant.m1.tReturn = 50;
    plant.run(20);
    expect(plant.standing('BOIL-1')).toMatchObject({ active: true, where: 'Return', limit: 10_000 });
  });
});

describe('FLOW-2', () => {
  it('is raised 3 s after the flow is below half with chips loaded', () => {
    const plant = settled();
    plant.m1.flow = 172;
    expect(secondsUntil(plant, 'FLOW-2', 10)).toBe(4);
    expect(plant.standing('FLOW-2')?.priority).toBe(1);
  });

  it('is not raised at just above half, nor with chips idle', () => {
    const plant = settled();
    plant.m1.flow = 174;
    expect(plant.run(10).entries()).toEqual([]);
    plant.m1.flow = 0;
    for (const rack of Object.values(plant.m1.racks)) rack.power = 1;
    expect(plant.run(10).standing('FLOW-2')).toBeUndefined();
  });

  it('counts chips as loaded where their power is not known', () => {
    const points = { 'branch.*.power': null };
    const plant = new Plant(plantSite({ points })).run(40);
    plant.m1.flow = 100;
    expect(plant.run(6).standing('FLOW-2')?.active).toBe(true);
  });

  it('is raised on a pump trip although feedback then looks like a stop', () => {
    const plant = settled();
    Object.assign(plant.m1, { pumpRunning: false, flow: 0 });
    expect(plant.run(5).standing('FLOW-2')?.active).toBe(true);
  });

  it.each(['off', 'filling', 'standby'])('is off where a mode point says %s', (mode) => {
    const plant = new Plant(plantSite({ modePoint: true })).run(10);
    Object.assign(plant.m1, { mode, flow: 0, pumpRunning: false });
    expect(plant.run(10).standing('FLOW-2')).toBeUndefined();
  });
});

describe('TSUP-1', () => {
  it('is raised 10 s after supply is 2 K above its set point', () => {
    const plant = settled();
    for (let t = 36.3; t < 38.4; t += 0.02) plant.run(1, () => (plant.m1.tSupply = t));
    expect(plant.standing('TSUP-1')).toBeUndefined();
    plant.m1.tSupply = 38.4;
    expect(secondsUntil(plant, 'TSUP-1', 20)).toBeLessThanOrEqual(11);
    expect(plant.standing('TSUP-1')).toMatchObject({ priority: 2, limit: 38.3, unitOfMeasure: 'Cel' });
  });

  it('is raised by its rise before that where facility water is lost: +3.9 K in 20 s', () => {
    const plant = settled();
    plant.run(20, (second) => (plant.m1.tSupply = 36.3 + (3.9 * (second + 1)) / 20));
    expect(plant.standing('TSUP-1')?.active).toBe(true);
  });

  it('shows the rise against 2 K/min where that raised it, and the temperature where that did', () => {
    const rising = settled();
    // 4 K/min from 32 °C on: still below 38.3 °C when the on-delay is over.
    rising.m1.tSupply = 32;
    rising.run(60);
    rising.run(30, (second) => (rising.m1.tSupply = 32 + (4 * (second + 1)) / 60));
    const shown = rising.standing('TSUP-1');
    expect(shown).toMatchObject({ active: true, unitOfMeasure: 'K/s', limit: 2 / 60 });
    expect(shown?.value).toBeGreaterThan(2 / 60);
    expect(shown?.value).toBeLessThan(4 / 60 + 1e-9);
    const warm = settled();
    warm.m1.tSupply = 39;
    warm.run(15);
    expect(warm.standing('TSUP-1')).toMatchObject({ value: 39, limit: 38.3, unitOfMeasure: 'Cel' });
  });

  it('shows the rise of a plant without a set point', () => {
    const plant = new Plant(plantSite({ unit: { supplySetPoint: undefined } })).run(40);
    plant.run(30, (second) => (plant.m1.tSupply = 36.3 + (4 * (second + 1)) / 60));
    expect(plant.standing('TSUP-1')).toMatchObject({ unitOfMeasure: 'K/s', limit: 2 / 60 });
  });

  it('is not raised by the swing of a load step: 0.8 K within two minutes', () => {
    const plant = settled();
    plant.run(240, (second) => (plant.m1.tSupply = 36.3 + 0.8 * Math.sin((Math.PI * second) / 240)));
    expect(plant.entries()).toEqual([]);
  });

  it('folds under FLOW-2', () => {
    const plant = settled();
    plant.m1.tSupply = 39;
    plant.run(15);
    expect(plant.standing('TSUP-1')?.foldedUnder).toBeNull();
    plant.m1.flow = 0;
    plant.run(5);
    expect(plant.standing('TSUP-1')?.foldedUnder).toBe('m1:FLOW-2');
    plant.m1.flow = 346;
    plant.run(10);
    expect(plant.standing('TSUP-1')?.foldedUnder).toBeNull();
  });
});

describe('DEW-1', () => {
  it('is raised two minutes after the coldest surface is within 2 K of the dew point', () => {
    const plant = settled();
    plant.air.rh = 76;
    plant.air.t = 33.5;
    expect(secondsUntil(plant, 'DEW-1', 130)).toBe(121);
    expect(plant.standing('DEW-1')?.priority).toBe(3);
    plant.air.rh = 40;
    plant.run(65);
    expect(plant.standing('DEW-1')?.active).toBe(false);
  });
});

describe('WATER-1', () => {
  it('is raised 2 s after water is found, latches, and leaves by a second acknowledgement', () => {
    const plant = settled();
    plant.m1.water = true;
    expect(secondsUntil(plant, 'WATER-1', 10)).toBe(3);
    expect(plant.standing('WATER-1')?.priority).toBe(1);
    plant.m1.water = false;
    plant.run(10);
    expect(plant.standing('WATER-1')?.state).toBe('latchedUnacknowledged');
    const acknowledge = () =>
      plant.pipeline.act(
        { kind: 'acknowledge', alarm: 'm1:WATER-1', operator: 'Ada', station: 's', comment: '' },
        plant.nowMs,
      );
    expect(acknowledge()).toMatchObject({ ok: true, record: { state: 'latchedAcknowledged' } });
    expect(acknowledge()).toMatchObject({ ok: false, code: 'ALARM_ALREADY_ACKNOWLEDGED', acknowledgedBy: 'Ada' });
    plant.run(10);
    expect(acknowledge()).toMatchObject({ ok: true, record: { state: 'normal' } });
    expect(plant.entries()).toEqual([]);
  });

  it('is not raised by one wet sample', () => {
    const plant = settled();
    plant.run(1, () => (plant.m1.water = true));
    plant.m1.water = false;
    expect(plant.run(10).transitions).toEqual([]);
  });
});

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

  it('waits for the start grace where the gateway was never heard', () => {
    const plant = new Plant();
    plant.silent.add('m1');
    plant.run(59);
    expect(plant.entries()).toEqual([]);
    plant.run(3);
    expect(plant.entries()).toEqual(['COM-1']);
    expect(plant.standing('COM-1')?.sinceMs).toBeGreaterThanOrEqual(startMs + 60_000);
  });
});
