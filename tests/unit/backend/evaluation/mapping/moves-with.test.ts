import { describe, expect, it } from 'vitest';
import { movesWith } from '../../../../../backend/src/evaluation/mapping/moves-with';
import { rankPlace } from '../../../../../backend/src/evaluation/mapping/rank-place';
import { heard, siteWithNewUnits } from './plant-of-strangers';

/** A wave with a drift; `late` shifts it. */
const wave = (size: number, drift = 0, late = 0): Float64Array =>
  Float64Array.from({ length: 60 }, (_, i) => 30 + size * Math.sin((i - late) / 4) + drift * i);

describe('how two series move', () => {
  it('is the rank correlation without the straight line of each', () => {
    expect(movesWith(wave(2), wave(30))).toBeCloseTo(1, 6);
    expect(movesWith(wave(2), wave(-30))).toBeCloseTo(-1, 6);
    expect(Math.abs(movesWith(wave(2), wave(2, 0, 2 * Math.PI)) ?? 1)).toBeLessThan(0.3);
  });

  it('is not told by two that merely drift the same way, as far as a proposal counts it', () => {
    const [rising, other] = [3, 5].map((step) =>
      Float64Array.from({ length: 60 }, (_, i) => i / 10 + ((i * step) % 7) / 20),
    );
    expect(Math.abs(movesWith(rising as Float64Array, other as Float64Array) ?? 1)).toBeLessThan(0.7);
  });

  it('is not told of fewer than two dozen moments', () => {
    expect(movesWith(wave(1).slice(0, 20), wave(1).slice(0, 20))).toBeNull();
  });

  it('is not known of what stands still or was hardly heard at the same moments', () => {
    expect(movesWith(wave(0), wave(2))).toBeNull();
    const gaps = wave(2).map((value, i) => (i % 3 === 0 ? value : Number.NaN));
    expect(movesWith(gaps, wave(2))).toBeNull();
  });
});

describe('a place that moves', () => {
  const site = siteWithNewUnits();
  const anyUnit = { unit: null, hall: null };
  const speed = (holder: string, size: number) => ({
    ...({ holder, kind: 'unit', point: 'pump.speed' } as const),
    series: wave(size),
  });

  it('is taken for the unit with whose known points it moves, where no name tells', () => {
    const place = { ...heard('works/bay/x', ['flow_lpm'], 320, 350), series: wave(8) };
    const known = [speed('m3', 0.1), { ...speed('m4', 0.1), series: wave(0.1, 0, 7) }];
    const [best] = rankPlace(place, site, known, anyUnit).filter(({ point }) => point === 'loop.flow');
    expect(best?.holder).toBe('m3');
    expect(best?.reasons.map(({ text }) => text)).toContain(
      'it moves with pump speed of m3, as it should (rank correlation 1.00)',
    );
    const [other] = rankPlace(place, site, known.reverse(), anyUnit).filter(({ point }) => point === 'loop.flow');
    expect(other?.holder).toBe('m3');
  });

  it('that tells what arrives already is said to', () => {
    const place = { ...heard('works/m1/again', ['SupplyTemp_degC'], 31, 33), series: wave(1) };
    const known = [{ holder: 'm1', kind: 'unit', point: 'supply.temperature', series: wave(1) } as const];
    const best = rankPlace(place, site, known, anyUnit).find(({ point }) => point === 'supply.temperature');
    expect(best?.reasons.map(({ text }) => text)).toContain('it moves just as supply temperature that arrives already');
  });
});
