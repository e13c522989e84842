import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';
import { secondsUntil, settled } from './settled-plant';

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
    expect(plant.standing('BOIL-1')).toMatchObject({ priority: 2, limit: 1000, where: 'pump inlet' });
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
  // A low manifold, so that the nodes are far from boiling; at 20 kPa the pump inlet's NPSH is within its guard of 1 kPa.
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
  it('is raised within 2 s of the reading that is wet, latches, and leaves by a second acknowledgement', () => {
    const plant = settled();
    plant.m1.water = true;
    expect(secondsUntil(plant, 'WATER-1', 10)).toBe(2);
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
