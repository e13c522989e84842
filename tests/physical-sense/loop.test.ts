import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { buildSite, runUnitM, type BuiltSite } from '../helpers/compiled-site-builder';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const share = between(0, 1.2);

function unitM(): BuiltSite {
  const built = buildSite();
  runUnitM(built);
  return built;
}
const derived = (built: BuiltSite, point: string, stopped = false): number => {
  deriveUnit(built.site, built.state, 0, 0, stopped);
  return built.value(point);
};

describe('a loop, physically', () => {
  it('loses just as much vacuum margin as its supply tank or a falling barometer takes', () => {
    fc.assert(
      fc.property(between(-5_000, 5_000), between(-3_000, 3_000), (tank, weather) => {
        const built = unitM();
        const before = derived(built, 'vacuumMargin');
        built.set('supplyTank.pressure', 74_000 + tank);
        built.set('ambient.pressure', 101_300 + weather);
        expect(derived(built, 'vacuumMargin')).toBeCloseTo(before - tank + weather, 6);
      }),
    );
  });

  it('is never safer at its worst than now, nor at its worst than stopped', () => {
    fc.assert(
      fc.property(share, between(20_000, 101_000), (flow, separator) => {
        const built = unitM();
        built.set('loop.flow', (flow * 346) / 60_000);
        built.set('separator.pressure', separator);
        const worst = derived(built, 'vacuumMarginWorst');
        expect(worst).toBeLessThanOrEqual(derived(built, 'vacuumMargin'));
        expect(worst).toBeLessThanOrEqual(derived(built, 'vacuumMargin', true));
      }),
    );
  });

  it('comes nearer to boiling as its return warms and as its separator is drawn lower', () => {
    fc.assert(
      fc.property(
        between(38, 60),
        between(0.1, 5),
        between(18_000, 40_000),
        between(100, 5_000),
        (t, warmer, p, lower) => {
          const built = unitM();
          built.set('return.temperature', t);
          built.set('separator.pressure', p);
          const before = derived(built, 'lowerWallMargin');
          built.set('return.temperature', t + warmer);
          const warm = derived(built, 'lowerWallMargin');
          expect(warm).toBeLessThan(before);
          built.set('separator.pressure', p - lower);
          expect(derived(built, 'lowerWallMargin')).toBeLessThan(warm);
        },
      ),
    );
  });

  it('removes as much heat as its branches together, where they carry all its flow', () => {
    fc.assert(
      fc.property(between(0.1, 0.9), between(37, 55), (split, t) => {
        const built = unitM();
        built.set('return.temperature', t);
        for (const [branch, part] of [
          ['r1', split],
          ['r2', 1 - split],
        ] as const) {
          built.set(`branch.${branch}.flow`, (part * 346) / 60_000);
          built.set(`branch.${branch}.return.temperature`, t);
        }
        const whole = derived(built, 'heatRemoved');
        const parts = built.value('branch.r1.heatRemoved') + built.value('branch.r2.heatRemoved');
        expect(parts / whole - 1).toBeCloseTo(0, 9);
      }),
    );
  });

  it('stands ρ g h above ambient low in the return once a cut main has let the separator come to ambient: 1.7 m, 16 kPa (parameter set, computed)', () => {
    const built = unitM();
    built.set('separator.pressure', 101_300);
    built.set('loop.flow', 0);
    const margin = derived(built, 'vacuumMargin');
    expect(Math.abs(margin / (-990.2 * 9.80665 * 1.7) - 1)).toBeLessThan(0.01);
    expect(built.where('vacuumMargin')).toBe('Floor return main');
  });
});
