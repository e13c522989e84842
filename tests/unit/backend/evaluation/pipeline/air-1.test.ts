import { describe, expect, it } from 'vitest';
import { atRest, Plant, plantSite, type Telemetry } from './plant';
import { seeded, withNoise } from './sensor-noise';

/** Runs the plant with noise on every sensor; `truth` is what would be measured without. */
function run(plant: Plant, random: () => number, seconds: number, truth: (second: number) => Telemetry): void {
  plant.run(seconds, (second) => {
    plant.telemetry['m1'] = withNoise(truth(second), random);
  });
}

const ramp = (from: number, to: number, second: number, seconds: number): number =>
  from + (to - from) * Math.min(1, Math.max(0, second / seconds));

/**
 * A server hose cut in one rack, check valve good, `second` after it: rack flow −53 % and rack return +22 kPa at 1 s,
 * separator level +48 L and vacuum speed 0 → 50 % in 5 s. Computed with a model of
 * the demo plant (no published source; signs and size dependable, digits ± 30 %).
 */
function cutIn(rack: string, second: number, share = 1): Telemetry {
  const t = atRest();
  const racks = { ...t.racks };
  const cut = racks[rack] ?? { flow: 0, p: 0, power: 0 };
  racks[rack] = { ...cut, flow: ramp(43, 43 * (1 - 0.53 * share), second, 1), p: ramp(43, 43 + 22 * share, second, 1) };
  return {
    ...t,
    racks,
    levelSeparator: ramp(0.6, 0.6 + (0.048 * share) / 0.25, second, 5),
    vacuumSpeed: ramp(0, 50 * share, second, 5),
    pSeparator: ramp(32, 32.4, second, 5),
  };
}

const idle = (): Telemetry => ({ ...atRest(), vacuumSpeed: 0 });

describe('AIR-1 on a cut server hose', () => {
  it.each(['r1', 'r2', 'r3', 'r4'])('is raised within five seconds and names the rack, cut in %s', (rack) => {
    const plant = new Plant();
    const random = seeded(rack.charCodeAt(1));
    run(plant, random, 60, idle);
    expect(plant.entries()).toEqual([]);
    run(plant, random, 5, (second) => cutIn(rack, second + 1));
    expect(plant.standing('AIR-1')).toMatchObject({
      state: 'unacknowledged',
      where: `Rack ${rack.slice(1)}`,
      priority: 2,
      unitOfMeasure: 'm3/s',
    });
    expect(plant.standing('AIR-1')?.value).toBeGreaterThan(20 / 60_000);
  });

  it('stays while the air still comes, and clears a minute after the gas load is back', () => {
    const plant = new Plant();
    const random = seeded(1);
    run(plant, random, 60, idle);
    run(plant, random, 300, (second) => cutIn('r2', second + 1));
    expect(plant.standing('AIR-1')?.active).toBe(true);
    run(plant, random, 59, idle);
    expect(plant.standing('AIR-1')?.active).toBe(true);
    run(plant, random, 10, idle);
    expect(plant.standing('AIR-1')?.state).toBe('returnedUnacknowledged');
    expect(plant.transitions.filter((t) => t.entry === 'AIR-1').map((t) => t.to)).toEqual([
      'unacknowledged',
      'returnedUnacknowledged',
    ]);
  });

  it('is found by the levels alone where the source tells no speed', () => {
    const plant = new Plant();
    const random = seeded(2);
    run(plant, random, 60, idle);
    run(plant, random, 6, (second) => ({ ...cutIn('r4', second + 1), vacuumSpeed: 0 }));
    expect(plant.standing('AIR-1')?.where).toBe('Rack 4');
  });

  it('names no rack where none stands out', () => {
    const plant = new Plant();
    const random = seeded(3);
    run(plant, random, 60, idle);
    run(plant, random, 6, (second) => ({ ...cutIn('r4', second + 1), racks: atRest().racks }));
    expect(plant.standing('AIR-1')).toMatchObject({ state: 'unacknowledged', where: null });
  });

  it('is raised in a loop that stands stopped as well', () => {
    const plant = new Plant();
    const stopped = (t: Telemetry): Telemetry => ({ ...t, flow: 0, pumpRunning: false });
    run(plant, seeded(4), 60, () => stopped(idle()));
    run(plant, seeded(5), 8, (second) => stopped(cutIn('r1', second + 1)));
    expect(plant.standing('AIR-1')?.active).toBe(true);
  });
});

describe('AIR-1 stays silent', () => {
  it.each([40, -40])(
    'on a load step of %i percent (return temperature after 14 s dead time and 25 s lag)',
    (percent) => {
      const plant = new Plant();
      const random = seeded(6);
      run(plant, random, 60, idle);
      run(plant, random, 300, (second) => {
        const t = idle();
        const share = 1 + (percent / 100) * (1 - Math.exp(-second / 19));
        const lagged = second < 14 ? 0 : (percent / 100) * (1 - Math.exp(-(second - 14) / 25));
        return {
          ...t,
          tReturn: 45 + 8.7 * lagged,
          tSupply: 36.3 + 0.8 * Math.sign(percent) * Math.sin((Math.PI * Math.min(second, 240)) / 240),
          vacuumSpeed: Math.max(0, 4 * lagged),
          racks: Object.fromEntries(Object.entries(t.racks).map(([id, rack]) => [id, { ...rack, power: 30 * share }])),
        };
      });
      expect(plant.entries()).toEqual([]);
    },
  );

  it('on sensor noise and slosh for half an hour', () => {
    const plant = new Plant();
    const random = seeded(7);
    run(plant, random, 1800, atRest);
    expect(plant.transitions).toEqual([]);
  });

  it('on the usual cycle of a vacuum source: off while the pressure creeps up, then on with a ramp of 5 s', () => {
    const plant = new Plant();
    const random = seeded(8);
    let pressure = 32;
    let on = false;
    let speed = 0;
    run(plant, random, 1200, () => {
      if (pressure > 33) on = true;
      if (pressure < 31) on = false;
      speed = on ? Math.min(50, speed + 10) : Math.max(0, speed - 10);
      // 510 L of gas, 295 free L/min at full speed (parameter set of the demo plant); 10 free L/min come in.
      pressure += ((10 - 295 * (speed / 100)) / 60 / 510) * 101.3;
      return { ...atRest(), pSeparator: pressure, vacuumSpeed: speed, vacuumRunning: speed > 0 };
    });
    expect(plant.transitions).toEqual([]);
  });

  it('on a start of the source while a slow in-leak of 60 free L/min pushes the pressure up: that leak is no step', () => {
    const plant = new Plant();
    const random = seeded(12);
    let pressure = 32;
    let speed = 0;
    run(plant, random, 120, (second) => {
      const leak = second < 40 ? 0 : ramp(0, 60, second - 40, 60);
      speed = pressure > 33 ? Math.min(22, speed + 11) : speed;
      pressure += ((leak - 295 * (speed / 100)) / 60 / 510) * 101.3;
      return { ...atRest(), pSeparator: pressure, vacuumSpeed: speed, vacuumRunning: speed > 0 };
    });
    expect(speed).toBe(22);
    expect(plant.transitions).toEqual([]);
  });

  it('on a start: vacuum is drawn from ambient, then the flow comes', () => {
    const plant = new Plant();
    const random = seeded(9);
    const start = (second: number): Telemetry => {
      const flow = ramp(0, 346, second - 200, 10);
      return {
        ...atRest(),
        flow,
        pumpRunning: second > 200,
        vacuumSpeed: second < 10 ? 0 : second < 190 ? ramp(0, 100, second - 10, 5) : 20,
        pSeparator: second < 10 ? 101 : Math.max(32, 101 * Math.exp(-(second - 10) / 60)),
        pTank: second < 10 ? 101 : Math.max(74, 101 * Math.exp(-(second - 10) / 120)),
        levelSeparator: second < 200 ? 0.62 : ramp(0.62, 0.6, second - 200, 10),
        levelTank: second < 200 ? 0.5 : ramp(0.5, 0.48, second - 200, 10),
        racks: Object.fromEntries(
          Object.entries(atRest().racks).map(([id, rack]) => [id, { ...rack, flow: flow / 8, power: 0.1 }]),
        ),
      };
    };
    run(plant, random, 400, start);
    expect(plant.transitions.filter((t) => t.entry === 'AIR-1')).toEqual([]);
  });

  it('on a trip of the transfer pump: as much water comes to the separator as leaves the supply tank', () => {
    const plant = new Plant();
    const random = seeded(10);
    run(plant, random, 60, idle);
    run(plant, random, 12, (second) => ({
      ...idle(),
      levelTank: 0.5 - (0.0056 * (second + 1)) / 0.3,
      levelSeparator: 0.6 + (0.0056 * (second + 1)) / 0.25,
    }));
    expect(plant.standing('AIR-1')).toBeUndefined();
  });

  // At 97 kPa the estimate by altitude (101.3 kPa) moves every gauge reading up by 4.3 kPa, and so speed × curve.
  it.each(['is lost', 'comes back'])('on a barometer that %s, with a gauge sensor on the separator', (what) => {
    const points = { 'separator.pressure': { path: 'pSeparator', unit: 'kPa', reference: 'gauge' } };
    const plant = new Plant(plantSite({ points }));
    const truth = (): Telemetry => ({ ...atRest(), vacuumSpeed: 90, pSeparator: 32 - 97, pTank: 74 });
    const random = seeded(6);
    plant.air.p = 97;
    plant.hallSilent = what === 'comes back';
    run(plant, random, 60, truth);
    plant.hallSilent = !plant.hallSilent;
    run(plant, random, 60, truth);
    expect(plant.transitions.filter((t) => t.entry === 'AIR-1')).toEqual([]);
  });

  it('on a stop whose pipes run empty into the tanks: 30 L in five seconds', () => {
    const plant = new Plant();
    const random = seeded(9);
    run(plant, random, 40, atRest);
    run(plant, random, 20, (second) => ({
      ...atRest(),
      flow: ramp(346, 0, second, 2),
      levelSeparator: ramp(0.6, 0.72, second - 2, 5),
    }));
    expect(plant.standing('AIR-1')).toBeUndefined();
  });

  // The transfer pump takes 5.8 L/s out of the separator; the flow goes on until the supply tank is empty.
  it('on a trip of the transfer pump where the supply tank tells no level', () => {
    const plant = new Plant(plantSite({ points: { 'supplyTank.level': null } }));
    const random = seeded(10);
    run(plant, random, 40, atRest);
    run(plant, random, 14, (second) => ({
      ...atRest(),
      pumpRunning: false,
      levelSeparator: 0.6 + (0.0058 * (second + 1)) / 0.25,
    }));
    expect(plant.standing('AIR-1')).toBeUndefined();
  });

  it('on a level that sloshes by 4 cm, second by second, for ten minutes', () => {
    const plant = new Plant();
    const random = seeded(7);
    run(plant, random, 600, () => ({ ...idle(), levelSeparator: 0.6 + 0.08 * (random() - 0.5) }));
    expect(plant.transitions).toEqual([]);
  });

  it('on a source that speeds up while the separator is being drawn down at an even rate', () => {
    const plant = new Plant();
    const random = seeded(8);
    const drawnDown = (second: number): Telemetry => ({ ...idle(), pSeparator: 36 - 0.06 * second });
    run(plant, random, 40, drawnDown);
    run(plant, random, 20, (second) => ({ ...drawnDown(40 + second), vacuumSpeed: ramp(0, 40, second, 5) }));
    expect(plant.entries()).toEqual([]);
  });

  it('on a lowered set point of the separator: the source speeds up and draws the pressure down', () => {
    const plant = new Plant();
    const random = seeded(11);
    run(plant, random, 60, atRest);
    run(plant, random, 20, (second) => ({
      ...atRest(),
      vacuumSpeed: ramp(20, 100, second + 1, 5),
      pSeparator: ramp(32, 24, second + 1, 15),
    }));
    expect(plant.standing('AIR-1')).toBeUndefined();
  });
});
