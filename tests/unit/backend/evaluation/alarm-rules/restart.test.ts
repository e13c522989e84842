import { describe, expect, it } from 'vitest';
import { restoreAlarms } from '../../../../../backend/src/evaluation/pipeline/restore';
import type { VacuumSource } from '../../../../../backend/src/evaluation/site/compiled-site';
import { designOfUnitM } from '../../../../helpers/unit-m';
import { RuleBench, type BenchOptions } from './rule-bench';

const startStop: VacuumSource = {
  count: 2,
  control: 'startStop',
  controlStated: true,
  sealWaterC: 25,
  pressurePa: [5000, 101_000],
  suctionM3PerS: [0.01, 0.02],
};

const litres = (perMinute: number): number => perMinute / 60_000;

/** A program that has just started beside a plant in this state, with this alarm standing in its journal. */
function afterRestart(entry: string, options: BenchOptions): RuleBench {
  const bench = new RuleBench(options);
  restoreAlarms(bench.pipeline, [
    {
      alarm: `m1:${entry}`,
      entry,
      unit: 'm1',
      hall: 'hall1',
      state: 'acknowledged',
      active: true,
      priority: 2,
      sinceMs: bench.nowMs - 600_000,
      stateSinceMs: bench.nowMs - 500_000,
      value: null,
      limit: null,
      unitOfMeasure: null,
      where: null,
      foldedUnder: null,
      acknowledgedBy: 'A. Shift',
      acknowledgedAtMs: bench.nowMs - 500_000,
    },
  ]);
  return bench;
}

describe('after a restart', () => {
  it('AIR-1 of a unit that can not tell its gas load stands until the water has gone back', () => {
    const without = ['pump.inlet.pressure', 'supply.pressure', 'return.pressure', 'gasLoad'];
    const bench = afterRestart('AIR-1', { without, design: { separatorAreaM2: 0.25, supplyTankAreaM2: 0.3 } });
    bench.set('separator.level', 0.8).run(600);
    expect(bench.active('AIR-1')).toBe(true);
    bench.set('separator.level', 0.6).run(90);
    expect(bench.active('AIR-1')).toBe(false);
  });

  it('VSRC-1 stands while its source stands and nobody saw it stop, and ends when it runs', () => {
    const bench = afterRestart('VSRC-1', { vacuumSource: startStop, values: { 'vacuum.running': 0 } }).run(600);
    expect(bench.active('VSRC-1')).toBe(true);
    expect(bench.set('vacuum.running', 1).run(10).active('VSRC-1')).toBe(false);
  });

  it('PUMP-1 of a power failure stands while the pump stands, and ends when it runs', () => {
    const values = { 'pump.running': 0, 'vacuum.running': 0 };
    const bench = afterRestart('PUMP-1', { modeInferred: true, values }).run(600);
    expect(bench.active('PUMP-1')).toBe(true);
    expect(bench.set('pump.running', 1).run(10).active('PUMP-1')).toBe(false);
  });

  it('PUMP-2 stands until its standby is seen to run: to have forgotten since when proves nothing', () => {
    const also = ['pump.standby.running'];
    const bench = afterRestart('PUMP-2', { also, values: { 'pump.standby.running': 0 } }).run(3600);
    expect(bench.active('PUMP-2')).toBe(true);
    expect(bench.detail('PUMP-2')).toMatch(/not been seen to run since Ebbline began to watch/);
    bench.set('pump.standby.running', 1).run(10);
    expect(bench.set('pump.standby.running', 0).run(70).active('PUMP-2')).toBe(false);
  });

  it('FAC-1 stands while little flows, does not learn that little, and ends with half of what commissioning found', () => {
    const also = ['facility.flow', 'valve.command'];
    const values = { 'facility.flow': litres(70), 'valve.command': 0.9 };
    const bench = afterRestart('FAC-1', { also, values }).run(3600);
    expect(bench.active('FAC-1')).toBe(true);
    expect(bench.set('facility.flow', litres(240)).run(15).active('FAC-1')).toBe(false);
  });

  it('PUMP-3 and HX-1 stand while the mean of a day is not known yet', () => {
    for (const entry of ['HX-1', 'PUMP-3']) {
      const also = ['valve.command', 'pump.power', 'pump.discharge.pressure'];
      const values = { 'valve.command': 0.5, uaRatio: 1, pumpEfficiency: 0.5 };
      const commissioned = { ...designOfUnitM.commissioned, pumpEfficiency: 0.5 };
      const bench = afterRestart(entry, { also, values, design: { commissioned } });
      expect(bench.hours(6).alarm(entry)?.active, entry).toBe(true);
    }
  });

  it('an alert of a changed set point stands for its hour, and ends then', () => {
    const also = ['supply.setPoint'];
    const bench = afterRestart('SET-1', { also, values: { 'supply.setPoint': 38 } }).run(3500);
    expect(bench.active('SET-1')).toBe(true);
    expect(bench.run(200).active('SET-1')).toBe(false);
  });
});

describe('power lost', () => {
  const trippedWhileItRests = (more: BenchOptions): RuleBench => {
    const bench = new RuleBench({ modeInferred: true, vacuumSource: startStop, ...more }).run(60);
    return bench.set('vacuum.running', 0).run(1).set('pump.running', 0).run(10);
  };

  it('is not said where a source that starts and stops begins its rest as the pump trips', () => {
    const also = ['chipPower', 'unit.power'];
    const bench = trippedWhileItRests({ also, values: { chipPower: 240_000, 'unit.power': 300 } });
    expect(bench.active('PUMP-1')).toBe(true);
    expect(bench.detail('PUMP-1')).not.toMatch(/power/);
    expect(bench.active('VSRC-1')).toBe(false);
  });

  it('is said of it where the unit draws nothing any more, or its source is ordered to run', () => {
    const also = ['chipPower', 'unit.power'];
    const dead = trippedWhileItRests({ also, values: { chipPower: 240_000, 'unit.power': 0 } });
    expect(dead.detail('PUMP-1')).toMatch(/power of the unit lost/);
    const ordered = trippedWhileItRests({ also: ['chipPower', 'vacuum.command'], values: { 'vacuum.command': 1 } });
    expect(ordered.detail('PUMP-1')).toMatch(/power of the unit lost/);
  });

  it('is not said where the pump was ordered to stand', () => {
    const also = ['pump.command', 'chipPower'];
    const bench = new RuleBench({ also, values: { 'pump.command': 1, chipPower: 240_000 } }).run(30);
    bench.set('pump.command', 0).set('pump.running', 0).set('vacuum.running', 0).run(30);
    expect(bench.active('PUMP-1')).toBe(false);
  });
});
