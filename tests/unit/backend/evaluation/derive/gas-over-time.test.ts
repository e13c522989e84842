import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { deriveMemoryOf } from '../../../../../backend/src/evaluation/derive/memory/memory-of-state';
import type { BuiltSite, SiteOptions } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, runRichUnitM } from '../../../../helpers/rich-unit-m';

/** Free m³/s of so many free L/min. */
const free = (litresPerMinute: number): number => litresPerMinute / 60_000;
/** Pa/s by which 510 L of dry gas at 45 °C rise of a free-air flow, of which `taken` is removed. */
const rise = (coming: number, taken: number): number => ((coming - taken) * 101_325 * (318.15 / 293.15)) / 0.51;

interface Second {
  readonly coming: number;
  readonly taken: number;
}

/** Runs a separator at 45 °C in which gas collects or goes; its level stands. Deterministic noise of ± 30 Pa. */
function run(built: BuiltSite, seconds: number, at: (s: number) => Second, from = 0): void {
  const pressureSlot = built.slot('separator.pressure');
  let pressure = from === 0 ? 32_000 : (built.state.value[pressureSlot] ?? Number.NaN);
  for (let s = from + 1; s <= from + seconds; s += 1) {
    const { coming, taken } = at(s);
    pressure += rise(free(coming), free(taken));
    runRichUnitM(built, s * 1000);
    built.set('separator.pressure', pressure + 30 * Math.sin(s * 2.4), s * 1000);
    built.set('vacuum.running', taken > 0 ? 1 : 0, s * 1000);
    built.set('vacuum.exhaustFlow', free(taken), s * 1000);
    deriveHall(built.site, built.state, 0, s * 1000);
    deriveUnit(built.site, built.state, 0, s * 1000, false);
  }
}
const litres = (built: BuiltSite, point: string): number => built.value(point) * 60_000;
/** Seconds of rest and of work of a source that takes 60 free L/min while it works. */
const cycle =
  (coming: number, rest: number, work: number) =>
  (s: number): Second => ({ coming, taken: s % (rest + work) < rest ? 0 : 60 });

describe('in-leak of a source that rests and works', () => {
  it('is what comes in, the same in every phase of the cycle', () => {
    const built = buildRichUnitM();
    run(built, 400, cycle(8, 120, 18));
    for (let s = 400; s < 700; s += 1) {
      run(built, 1, cycle(8, 120, 18), s);
      // Baseline 0.5 free L/min is water's own gas.
      expect(Math.abs(litres(built, 'inLeak') - 7.5)).toBeLessThan(1.5);
    }
  });

  it('shows a step of 45 free L/min within ten seconds, although the source has not answered yet', () => {
    const built = buildRichUnitM();
    run(built, 300, cycle(8, 1000, 1));
    run(built, 10, () => ({ coming: 53, taken: 0 }), 300);
    expect(litres(built, 'inLeak')).toBeGreaterThan(40);
  });

  it('counts rising water as squeezed gas, not as gas that comes in', () => {
    const built = buildRichUnitM();
    const dry = 32_000 - saturationPressure(celsius(45));
    for (let s = 1; s <= 60; s += 1) {
      const rising = s < 30 ? 0 : (s - 30) * 0.01;
      runRichUnitM(built, s * 1000);
      built.set('separator.level', 0.6 + rising, s * 1000);
      built.set('separator.pressure', 32_000 + dry * (0.51 / (0.51 - 0.17 * rising) - 1), s * 1000);
      built.set('vacuum.exhaustFlow', 0, s * 1000);
      built.set('vacuum.running', 0, s * 1000);
      deriveUnit(built.site, built.state, 0, s * 1000, false);
      if (s > 10) expect(Math.abs(litres(built, 'inLeak') + 0.5)).toBeLessThan(0.1);
    }
  });

  it('leaves a reserve below zero while more comes in than all of one source takes', () => {
    const built = buildRichUnitM();
    const capacity = 259;
    run(built, 10, () => ({ coming: capacity + 100, taken: capacity }));
    expect(litres(built, 'vacuumReserve')).toBeLessThan(-30);
    expect(built.value('openingsCarried')).toBe(0);
    expect(litres(built, 'vacuumReserveAll')).toBeGreaterThan(0);
  });
});

describe('gas load of a source that starts and stops', () => {
  const startStop: SiteOptions = {
    vacuumSource: {
      count: 1,
      control: 'startStop',
      sealWaterC: null,
      pressurePa: [10_000, 101_300],
      suctionM3PerS: [0.0212, 0.0212],
    },
  };

  it('is the rate of its pauses, not nothing or everything', () => {
    const built = buildRichUnitM(startStop);
    run(built, 600, cycle(12, 200, 20));
    expect(Math.abs(litres(built, 'gasLoad') - 12)).toBeLessThan(1);
  });
});

describe('gas allowance', () => {
  it('is baseline, permits and what the last fill still holds', () => {
    const built = buildRichUnitM();
    run(built, 5, () => ({ coming: 1, taken: 1 }));
    expect(litres(built, 'gasAllowance')).toBeCloseTo(0.5, 9);
    const memory = deriveMemoryOf(built.site, built.state);
    memory.gas.setPermits(0, free(30));
    memory.gas.addFill(0, 0.009);
    run(built, 1, () => ({ coming: 1, taken: 1 }), 5);
    expect(litres(built, 'gasAllowance')).toBeCloseTo(0.5 + 30 + 0.3, 2);
  });

  it('takes permits as in-leak all the same, as it is room air', () => {
    const built = buildRichUnitM();
    deriveMemoryOf(built.site, built.state).gas.setPermits(0, free(30));
    run(built, 60, () => ({ coming: 31, taken: 31 }));
    expect(litres(built, 'inLeak')).toBeGreaterThan(28);
  });

  it('grows by what fresh water will give off: 5 L make some 50 mL of free air', () => {
    const built = buildRichUnitM();
    run(built, 5, () => ({ coming: 0.5, taken: 0.5 }));
    for (let s = 6; s <= 7; s += 1) {
      runRichUnitM(built, s * 1000);
      built.set('topUp.volume', 1.255, s * 1000);
      deriveUnit(built.site, built.state, 0, s * 1000, false);
    }
    const budget = deriveMemoryOf(built.site, built.state).gas.budgetM3[0] ?? 0;
    expect(budget).toBeGreaterThan(25e-6);
    expect(budget).toBeLessThan(80e-6);
  });

  it('opens a whole budget when the mode leaves filling and no counter tells what went in', () => {
    const built = buildRichUnitM({ without: ['supply.pressure', 'return.pressure', 'topUp.volume'] });
    for (let s = 1; s <= 20; s += 1) {
      runRichUnitM(built, s * 1000);
      built.set('mode', s < 10 ? 3 : 4, s * 1000);
      deriveUnit(built.site, built.state, 0, s * 1000, false);
    }
    // 488 L × some 10 mL/L.
    expect(deriveMemoryOf(built.site, built.state).gas.budgetM3[0]).toBeGreaterThan(0.003);
  });
});
